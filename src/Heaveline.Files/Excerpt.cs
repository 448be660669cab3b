using System.Globalization;

namespace Heaveline.Files;

/// <summary>A message with the line it is about, the part marked below.</summary>
internal static class Excerpt
{
    private const int Widest = 120;

    /// <summary>Four lines of text, joined with line feeds, without one at the end.</summary>
    public static string Of(string file, string line, Place place, string word, string message, string advice)
    {
        var from = Math.Clamp(place.Column - 1, 0, line.Length);
        var marks = Math.Clamp(place.Length, 1, Math.Max(1, line.Length - from));

        // A very long line is shown around the marked part only.
        var cut = line.Length <= Widest ? 0 : Math.Max(0, from - 20);
        var shown = line[cut..Math.Min(line.Length, cut + Widest)];
        marks = Math.Min(marks, Math.Max(1, shown.Length - (from - cut)));
        if (line.Length == 0 && place is { Line: 1, Column: 1 })
        {
            // About the file as a whole: there is no line to mark.
            return string.Join('\n', Clean($"{file}: {word}: {message}"), Clean($"   = {advice}"));
        }

        var number = place.Line.ToString(CultureInfo.InvariantCulture);
        var gap = new string(' ', number.Length + 2);
        return string.Join(
            '\n',
            Clean($"{file}:{number}:{place.Column}: {word}: {message}"),
            $" {number} | {Clean(shown)}".TrimEnd(),
            $"{gap}| {Gap(shown[..Math.Min(from - cut, shown.Length)])}{new string('^', marks)}",
            Clean($"{gap}= {advice}"));
    }

    // A tab before the part keeps its width only as a tab.
    private static string Gap(string before) => string.Concat(before.Select(c => c == '\t' ? c : ' '));

    // One sign for one sign, so that the marks stay below their part; control characters of a file must not reach a terminal.
    private static string Clean(string text) => string.Concat(text.Select(c => char.IsControl(c) && c != '\t' ? '\uFFFD' : c));
}
