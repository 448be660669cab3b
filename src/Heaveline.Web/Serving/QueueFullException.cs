using Heaveline.Quantities;

namespace Heaveline.Web.Serving;

/// <summary>Too many wait already for what takes long.</summary>
internal sealed class QueueFullException() : NoAnswerException("Too many computations wait already.", "Ask again in a while.");
