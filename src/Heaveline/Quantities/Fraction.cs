using System.Globalization;
using System.Text.RegularExpressions;

namespace Heaveline.Quantities;

/// <summary>
/// Fractions as they stand on tapes and in parts lists, 2 3/4 and 2-3/4 and 5/8 and 2¾, as the decimal numbers that they are. One that no decimal
/// number is equal to (2 1/3) stays as it is written, and so do units (1/m).
/// </summary>
internal static partial class Fraction
{
    private const int MostDigits = 10;

    private static readonly (string Sign, string Words)[] Signs =
        [("½", "1/2"), ("¼", "1/4"), ("¾", "3/4"), ("⅛", "1/8"), ("⅜", "3/8"), ("⅝", "5/8"), ("⅞", "7/8")];

    /// <summary>A text with its fractions as decimal numbers.</summary>
    /// <param name="text">A quantity as typed.</param>
    public static string ToDecimal(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        foreach (var (sign, words) in Signs)
        {
            text = text.Replace(sign, " " + words, StringComparison.Ordinal);
        }

        return text.Contains('/', StringComparison.Ordinal) ? Written().Replace(text, ToDecimal) : text;
    }

    private static string ToDecimal(Match written)
    {
        decimal Part(string name) => decimal.Parse(written.Groups[name].Value, NumberStyles.None, CultureInfo.InvariantCulture);
        var hasWhole = written.Groups["whole"].Success;
        var (whole, over, under) = (hasWhole ? Part("whole") : 0m, Part("over"), Part("under"));
        if (under == 0m || (hasWhole && over >= under) || decimal.Round(over / under, MostDigits) * under != over)
        {
            return written.Value;
        }

        return (whole + (over / under)).ToString("0.##########", CultureInfo.InvariantCulture);
    }

    // At most six digits each: a decimal holds their sum and quotient exactly.
    [GeneratedRegex(
        @"(?<![\w.,/])(?:(?<whole>[0-9]{1,6})(?:\s+|-))?(?<over>[0-9]{1,6})\s*/\s*(?<under>[0-9]{1,6})(?![0-9.,/])",
        RegexOptions.CultureInvariant)]
    private static partial Regex Written();
}
