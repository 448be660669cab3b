using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>A run that could not be finished: what happened and when, and what to do instead.</summary>
/// <param name="reason">What happened and at what time, one sentence.</param>
/// <param name="advice">What to do, one sentence.</param>
public sealed class RunFailedException(string reason, string advice) : NoAnswerException(reason, advice);
