using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Heaveline.Ordeal;

/// <summary>Spoils a sound text in one to four places: signs, lines, numbers, words of other files.</summary>
internal static partial class Mutation
{
    private static readonly string[] Numbers =
    [
        "0", "-0", "1", "-1", "1e308", "-1e308", "1e-308", "5e-324", "NaN", "Infinity", "-Infinity", "2147483648", "9223372036854775808", "0x10",
        "1e999999", "00012", "1.", ".5", "1,5", "1 000", "+7", "1e", "٣", "1e-999999", "123456789012345678901234567890",
    ];

    private static readonly string[] Snippets =
    [
        "{}[]:,", "- ", "&a ", "*a", "!tag ", "|", ">", "'", "\"", "%", "@", "`", "#", "\t", "\n", "\r", "\0", "\u0085", "\u2028", "\uFEFF", "é",
        "\uD800",
        "<~", "?", "---\n", "...\n", " ± ", " ± 5 %", " ± -1 m", " kg", " m", " N/mm", " km/h", " furlong", "null", "true", "~", "../", "/dev/zero",
        "of: ",
        "profile: ", "change: {", "=1+1", "𝔽", ", , ,", ";", "[[", "]]", ": : :", "   ",
    ];

    /// <summary>A spoilt text.</summary>
    /// <param name="sound">The texts that are sound.</param>
    /// <param name="at">Which of them.</param>
    /// <param name="chance">The chance.</param>
    public static string Of(IReadOnlyList<string> sound, int at, Random chance)
    {
        var text = sound[at];
        for (var n = 1 + chance.Next(4); n > 0; n--)
        {
            text = Once(text, sound, chance);
        }

        return text;
    }

    private static string Once(string text, IReadOnlyList<string> sound, Random chance)
    {
        if (text.Length == 0)
        {
            return Snippets[chance.Next(Snippets.Length)];
        }

        var at = chance.Next(text.Length);
        var lines = text.Split('\n');
        var line = chance.Next(lines.Length);
        switch (chance.Next(11))
        {
            case 0:
                return text[..at] + Snippets[chance.Next(Snippets.Length)] + text[at..];
            case 1:
                return text.Remove(at, Math.Min(text.Length - at, 1 + chance.Next(12)));
            case 2:
                return text[..at];
            case 3:
                return text[..at] + (char)chance.Next(1, 0xFFFF) + text[(at + 1)..];
            case 4:
                // Another number in place of one.
                var found = Number().Matches(text);
                return found.Count == 0 || found[chance.Next(found.Count)] is not { } number ? text
                    : text[..number.Index] + Numbers[chance.Next(Numbers.Length)] + text[(number.Index + number.Length)..];
            case 5:
                return string.Join('\n', lines.Where((_, n) => n != line));
            case 6:
                return string.Join('\n', lines.Take(line).Append(lines[line]).Concat(lines.Skip(line)));
            case 7:
                var other = chance.Next(lines.Length);
                (lines[line], lines[other]) = (lines[other], lines[line]);
                return string.Join('\n', lines);
            case 8:
                lines[line] = new string(' ', chance.Next(9)) + lines[line].TrimStart();
                return string.Join('\n', lines);
            case 9:
                // A piece of another file.
                var source = sound[chance.Next(sound.Count)];
                var from = chance.Next(source.Length);
                return string.Concat(text.AsSpan(..at), source.AsSpan(from, Math.Min(source.Length - from, chance.Next(200))), text.AsSpan(at));
            default:
                // Much of something small.
                var many = new StringBuilder();
                var piece = chance.Next(2) == 0 ? Snippets[chance.Next(Snippets.Length)] : lines[line] + "\n";
                for (var k = chance.Next(3) == 0 ? chance.Next(20_000 / piece.Length) : chance.Next(40); k > 0; k--)
                {
                    many.Append(CultureInfo.InvariantCulture, $"{piece}");
                }

                return text[..at] + many + text[at..];
        }
    }

    [GeneratedRegex(@"[-+]?\d+(\.\d+)?(e[-+]?\d+)?", RegexOptions.CultureInvariant)]
    private static partial Regex Number();
}
