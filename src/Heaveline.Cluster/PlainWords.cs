namespace Heaveline.Cluster;

/// <summary>Words that came from another machine, as they may stand in a terminal: without signs that would steer it, and cut.</summary>
internal static class PlainWords
{
    private const int Longest = 64;
    private const int LongestSentence = 1000;

    /// <summary>A name.</summary>
    public static string Name(string words) => Of(words, Longest);

    /// <summary>A sentence.</summary>
    public static string Sentence(string words) => Of(words, LongestSentence);

    private static string Of(string words, int longest)
    {
        var plain = string.Concat(words.Take(longest).Select(c => char.IsControl(c) || char.IsSurrogate(c) || IsUnseen(c) ? '?' : c));
        return words.Length > longest ? plain + "…" : plain;
    }

    // What turns the direction of writing, and what parts lines without being a control character (Unicode Standard, general categories).
    private static bool IsUnseen(char c) => char.GetUnicodeCategory(c) is System.Globalization.UnicodeCategory.Format
        or System.Globalization.UnicodeCategory.LineSeparator or System.Globalization.UnicodeCategory.ParagraphSeparator;
}
