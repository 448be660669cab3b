using Heaveline.Quantities;

namespace Heaveline.Camera.Frames;

/// <summary>A film, or a mark in it, of which nothing can be made.</summary>
/// <param name="reason">Why, one sentence.</param>
/// <param name="advice">What to do instead, one sentence.</param>
internal sealed class FilmRefusedException(string reason, string advice) : NoAnswerException(reason, advice);
