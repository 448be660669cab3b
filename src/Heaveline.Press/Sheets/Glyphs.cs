using System.Collections.Concurrent;
using Heaveline.Press.Type;

namespace Heaveline.Press.Sheets;

/// <summary>Texts made fit for the faces the press carries.</summary>
internal static class Glyphs
{
    // Shown for a character that no face has, so that a reader sees that something stands there.
    private const string Unknown = "□";

    private static readonly ConcurrentDictionary<(int Rune, Face Face), bool> Known = new();

    /// <summary>The text with a box for every character that the face lacks; a tab is four blanks.</summary>
    public static string Shown(string text, Face face) => text.All(c => c is >= ' ' and <= '~')
        ? text
        : string.Concat(text.Replace("\t", "    ", StringComparison.Ordinal).EnumerateRunes().Select(rune =>
            Known.GetOrAdd((rune.Value, face), key => Typefaces.Missing(rune.ToString(), key.Face).Length == 0) ? rune.ToString() : Unknown));

    /// <summary>The text cut with an ellipsis to a width.</summary>
    public static string Fitted(string text, Lettering lettering, double width)
    {
        var shown = Shown(text, lettering.Face);
        if (lettering.WidthOf(shown) <= width)
        {
            return shown;
        }

        var most = Enumerable.Range(1, shown.Length).LastOrDefault(n => lettering.WidthOf(shown[..n] + "…") <= width);
        return shown[..most].TrimEnd() + "…";
    }

    /// <summary>A line broken to a width with all its blanks kept, after a blank where there is one, else anywhere.</summary>
    public static IEnumerable<string> Broken(string line, Lettering lettering, double width)
    {
        var rest = Shown(line, lettering.Face);
        while (lettering.WidthOf(rest) > width)
        {
            var (low, high) = (1, rest.Length);
            while (high - low > 1)
            {
                var middle = (low + high) / 2;
                (low, high) = lettering.WidthOf(rest[..middle]) <= width ? (middle, high) : (low, middle);
            }

            var blank = rest.LastIndexOf(' ', low - 1);
            var cut = blank > 0 && rest[..blank].Trim().Length > 0 ? blank + 1 : low;
            yield return rest[..cut];
            rest = rest[cut..];
        }

        yield return rest;
    }
}
