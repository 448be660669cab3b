using System.Globalization;

namespace Heaveline.Quantities;

/// <summary>
/// Numbers as a person writes them into a file, and the same numbers to compute with: page and file must not differ by what was rounded away.
/// </summary>
internal static class Rounded
{
    private const double Long = 1e12;

    /// <summary>A number with so many significant digits.</summary>
    public static double Significant(double value, int digits)
    {
        if (value == 0.0 || !double.IsFinite(value))
        {
            return value;
        }

        var decimals = digits - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return decimals >= 0 ? Math.Round(value, Math.Min(decimals, 15)) : Math.Round(value / Math.Pow(10.0, -decimals)) * Math.Pow(10.0, -decimals);
    }

    /// <summary>A number in SI units, rounded in a unit so many times as large.</summary>
    /// <param name="si">The number.</param>
    /// <param name="unit">The unit in SI units: 0.001 for mm.</param>
    /// <param name="decimals">Decimals kept in that unit.</param>
    public static double In(double si, double unit, int decimals) => Math.Round(si / unit, decimals) * unit;

    /// <summary>A number as typed into a box: bare in the unit beside it, or with a unit of its own that is turned into that one.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="unit">The unit beside the box; empty for a plain number.</param>
    /// <exception cref="RefusedValueException">It is no such number.</exception>
    public static double Typed(string text, string unit)
    {
        var (value, refusal) = QuantityText.InBox(text, unit);
        if (value is { } number)
        {
            return Significant(number, 12);
        }

        var limit = QuantityText.NumberOf(text).Length == 0 ? "a number" : "a number alone, or with a unit that fits";
        throw new RefusedValueException("The value", $"“{text.Trim()}”", limit, refusal!.Advice);
    }

    /// <summary>A number that is refused, as it stands in a sentence: hundreds of digits tell nobody anything.</summary>
    public static string Refused(double value) => !double.IsFinite(value) ? "no number"
        : Math.Abs(value) > Long ? value.ToString("G6", CultureInfo.InvariantCulture)
        : Text(value);

    /// <summary>A number without an exponent and without zeros that say nothing.</summary>
    public static string Text(double value) => (value == 0.0 ? 0.0 : value).ToString("0.##########", CultureInfo.InvariantCulture);
}
