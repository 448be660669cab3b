using System.Globalization;

namespace Heaveline.Quantities;

/// <summary>Numbers as they are written for people: a decimal point, a true minus (U+2212), no sign on a number that rounds to nothing.</summary>
public static class Numeral
{
    /// <summary>A number.</summary>
    /// <param name="value">The number.</param>
    /// <param name="format">.NET number format.</param>
    public static string Of(double value, string format)
    {
        var digits = Math.Abs(value).ToString(format, CultureInfo.InvariantCulture).Replace('-', '−');
        return value < 0.0 && digits.AsSpan().ContainsAnyInRange('1', '9') ? "−" + digits : digits;
    }

    /// <summary>A number with a fixed count of decimals.</summary>
    /// <param name="value">The number.</param>
    /// <param name="decimals">How many.</param>
    public static string Of(double value, int decimals) => Of(value, "F" + decimals.ToString(CultureInfo.InvariantCulture));

    /// <summary>The same with its sign always shown, but on nothing: a change.</summary>
    /// <param name="value">The number.</param>
    /// <param name="decimals">How many decimals.</param>
    public static string Change(double value, int decimals)
    {
        var text = Of(value, decimals);
        return value > 0.0 && text.AsSpan().ContainsAnyInRange('1', '9') ? "+" + text : text;
    }
}
