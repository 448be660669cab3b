namespace Heaveline.Answers;

/// <summary>Where a method comes from.</summary>
/// <param name="Key">Short name, kebab-case, never changed.</param>
/// <param name="Citation">The text, with its clause or chapter where one is meant.</param>
/// <param name="For">What is computed by it.</param>
/// <param name="Known">How it is known: read, second-hand (transcriptions that agree), from memory, or worked out here.</param>
public sealed record Source(string Key, string Citation, string For, string Known);
