using System.Globalization;
using Heaveline.Measures;

namespace Heaveline.Web.Pages.Cars;

/// <summary>One number of a car at rest, as the page shows it.</summary>
/// <param name="Key">Name for machines, kebab-case.</param>
/// <param name="Label">Name for people.</param>
/// <param name="Unit">Unit as shown, "–" for a plain number.</param>
/// <param name="Digits">Digits behind the point.</param>
/// <param name="Factor">Shown units per SI unit.</param>
/// <param name="Output">The number, SI.</param>
public sealed record NumberRow(string Key, string Label, string Unit, int Digits, double Factor, StaticOutput Output)
{
    /// <summary>A value as shown: the digits of the row, a true minus sign, no minus before zeros.</summary>
    public string Text(double shown)
    {
        var text = shown.ToString("F" + Digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.StartsWith('-') && text.All(c => c is '-' or '0' or '.') ? text[1..] : text.Replace('-', '−');
    }

    /// <summary>A doubt as shown; null when it rounds to nothing.</summary>
    public string? Doubt(double shown) => Text(Math.Abs(shown)) is var text && text.All(c => c is '0' or '.') ? null : text;
}
