namespace Heaveline.Drives;

/// <summary>One decision that was made about a log, with its reason.</summary>
/// <param name="About">What it is about, kebab-case, never changed ("separator", "time", "acceleration").</param>
/// <param name="Text">The decision and its reason, a sentence.</param>
/// <param name="IsDoubtful">Whether the user should look at it: what was found goes against what was said, or was guessed.</param>
public sealed record StoryLine(string About, string Text, bool IsDoubtful = false);
