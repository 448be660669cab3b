using System.Text.RegularExpressions;

namespace Heaveline.Files.Cars;

/// <summary>
/// What of a car file a worksheet gave, told at the end of its line: <c># worked out from 4 pairs of length and force</c>. A comment and no key; it
/// goes when the value is written anew.
/// </summary>
public static partial class WorkedOutLines
{
    private const string Begins = " # worked out from ";
    private const int Longest = 80;

    /// <summary>What stands behind such a value.</summary>
    /// <param name="from">The readings, in words; of several lines one is made.</param>
    public static string Comment(string from)
    {
        ArgumentNullException.ThrowIfNull(from);
        var line = string.Join(' ', from.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)
            .Select(word => string.Concat(word.Where(c => !char.IsControl(c) && c is not ('#' or '\u2028' or '\u2029')))));
        return Begins + (line.Length > Longest ? line[..Longest].TrimEnd() : line);
    }

    /// <summary>A text with one of its lines told to be worked out; one that has a comment of its own, or several values, stays as it is.</summary>
    /// <param name="text">The text of a car file.</param>
    /// <param name="line">The line, counted from 1.</param>
    /// <param name="from">The readings, in words.</param>
    public static string Mark(string text, int line, string from) => OnLines(
        text, [line], one => one.Contains(" #", StringComparison.Ordinal) || (one.Contains(',') && one.TrimEnd() is [.., '}' or ']'])
            ? one : one.TrimEnd() + Comment(from));

    /// <summary>A text without what some of its lines say so.</summary>
    /// <param name="text">The text of a car file.</param>
    /// <param name="lines">The lines, counted from 1.</param>
    public static string Without(string text, IEnumerable<int> lines)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.Contains(Begins, StringComparison.Ordinal) ? OnLines(text, lines, one => Said().Replace(one, "")) : text;
    }

    private static string OnLines(string text, IEnumerable<int> lines, Func<string, string> change)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(lines);
        var all = text.Split('\n');
        foreach (var line in lines.Where(line => line >= 1 && line <= all.Length).Distinct())
        {
            var end = all[line - 1].EndsWith('\r') ? "\r" : "";
            all[line - 1] = change(all[line - 1][..^end.Length]) + end;
        }

        return string.Join('\n', all);
    }

    [GeneratedRegex(@"\s+# worked out from [^#]*$", RegexOptions.CultureInvariant)]
    private static partial Regex Said();
}
