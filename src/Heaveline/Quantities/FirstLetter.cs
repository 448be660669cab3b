namespace Heaveline.Quantities;

/// <summary>The first letter of words that stand at the start of a sentence, or within one.</summary>
public static class FirstLetter
{
    /// <summary>The words with a great first letter.</summary>
    public static string Raised(string words) => string.IsNullOrEmpty(words) ? "" : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>The words with a small first letter.</summary>
    public static string Lowered(string words) => string.IsNullOrEmpty(words) ? "" : char.ToLowerInvariant(words[0]) + words[1..];
}
