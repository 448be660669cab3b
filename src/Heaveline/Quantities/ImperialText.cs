using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace Heaveline.Quantities;

/// <summary>
/// Turns the amounts of a metric sentence into imperial ones: "from 20 to 30 km/h", "76.2 mm", "24.5 N/mm ± 0.5". Each number keeps what it said,
/// to its last digit (<see cref="ImperialUnit.Decimals"/>).
/// </summary>
internal static partial class ImperialText
{
    private const string Number = @"[+−-]?\d+(?:\.\d+)?";

    // Longest first: N/mm before N. A unit ends where no letter, power or further factor of a compound unit follows.
    private static readonly string Units =
        string.Join('|', ImperialUnits.All.Select(unit => Regex.Escape(unit.Metric)).OrderByDescending(symbol => symbol.Length));

    private const string End = @"(?![\w/²³⁴·^°*]|[ ](?:m|mm|s|rad)[/²³°])";

    // What numbers of one unit are joined by, before it: a range, a list, a doubt; or whole ranges ("from 20 to 30, at 50 and from 70 to 80 km/h").
    private const string Numbers =
        $"(?:{Number}, )+{Number}(?: and | or ){Number}|{Number}(?:(?: to | and | or | by |–| ± | × ){Number})*";

    private const string Ranges =
        $"(?:from {Number} to {Number}|at {Number})(?:(?:, | and )(?:from {Number} to {Number}|at {Number}))+";

    private static readonly Regex Amounts = new(
        $@"(?<![\w.,^])(?<numbers>{Ranges}|{Numbers})(?<gap>[ \u00a0\u202f])(?<unit>{Units}){End}"
        + $@"(?<doubt> ± {Number}(?![\d.])(?![ ]?%)(?!(?:[ \u00a0](?:{Units}){End})))?",
        RegexOptions.CultureInvariant);

    /// <summary>The text with every amount turned.</summary>
    public static string Of(string metric) => Amounts.Replace(metric, match =>
    {
        var unit = ImperialUnits.For(match.Groups["unit"].Value)!;
        string Turned(string numbers) => SingleNumber().Replace(numbers, number => Of(number.Value, unit));
        return new StringBuilder(Turned(match.Groups["numbers"].Value))
            .Append(match.Groups["gap"].Value).Append(unit.Symbol).Append(Turned(match.Groups["doubt"].Value)).ToString();
    });

    /// <summary>A number as printed in a metric unit, in the unit that stands in its place. What is no number comes back as it is.</summary>
    public static string Of(string number, ImperialUnit unit)
    {
        var sign = number.Length > 0 && number[0] is '+' or '−' or '-' ? number[..1] : "";
        var digits = number[sign.Length..];
        if (!digits.All(c => char.IsAsciiDigit(c) || c == '.')
            || !double.TryParse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
        {
            return number;
        }

        var point = digits.IndexOf('.', StringComparison.Ordinal);
        var text = Numeral.Of(value * unit.Factor, unit.Decimals(point < 0 ? 0 : digits.Length - point - 1));
        var told = unit.IsSpeed && text.EndsWith(".0", StringComparison.Ordinal) ? text[..^2] : text;
        return told.AsSpan().ContainsAnyInRange('1', '9') ? sign + told : told;
    }

    [GeneratedRegex(@"[+−-]?\d+(?:\.\d+)?", RegexOptions.CultureInvariant)]
    private static partial Regex SingleNumber();
}
