using System.Globalization;
using System.Text.RegularExpressions;

namespace Heaveline.Quantities;

/// <summary>Numbers as they are written for people: a decimal point, a true minus (U+2212), no sign on a number that rounds to nothing.</summary>
public static partial class Numeral
{
    /// <summary>A number.</summary>
    /// <param name="value">The number.</param>
    /// <param name="format">
    /// .NET number format; with "&lt;" before "F3" or the like, what is above nothing and would be written as nothing is "&lt; 0.001".
    /// </param>
    public static string Of(double value, string format)
    {
        ArgumentNullException.ThrowIfNull(format);
        if (format is ['<', 'F', .. var decimals])
        {
            var least = Math.Pow(10.0, -int.Parse(decimals, NumberStyles.None, CultureInfo.InvariantCulture));
            return value > 0.0 && value < least ? $"< {Of(least, format[1..])}" : Of(value, format[1..]);
        }

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

    /// <summary>
    /// A value and its doubt to the same decimals, the doubt with two digits; the value as usual, and no doubt, where that is below its last digit.
    /// </summary>
    /// <param name="value">The value; one that is not finite is a dash.</param>
    /// <param name="doubt">Its doubt in the same unit, 0 or above.</param>
    /// <param name="digits">The value's usual decimals; it has one more at most.</param>
    internal static (string Value, string? Doubt) Of(double value, double doubt, int digits)
    {
        if (!double.IsFinite(value))
        {
            return ("–", null);
        }

        if (!double.IsFinite(doubt) || doubt < 0.5 * Math.Pow(10.0, -digits))
        {
            return (Of(value, digits), null);
        }

        var decimals = Decimals(doubt, digits + 1);
        return (Of(value, decimals), Of(doubt, decimals));
    }

    /// <summary>An end of a range to three digits, rounded towards the inside, so that what is named is allowed.</summary>
    /// <param name="value">The end; finite.</param>
    /// <param name="isLeast">Whether it is the lower end.</param>
    internal static string Inside(double value, bool isLeast)
    {
        if (value == 0.0)
        {
            return "0";
        }

        var step = Math.Pow(10.0, Math.Floor(Math.Log10(Math.Abs(value))) - 2.0);
        var steps = isLeast ? Math.Ceiling((value / step) - 1e-9) : Math.Floor((value / step) + 1e-9);
        return (steps * step).ToString(step < 1e-6 ? "G3" : "0.######", CultureInfo.InvariantCulture);
    }

    /// <summary>
    /// The text with powers of ten as numbers are written beside it ("1.5E+04 kg" is 15000 kg); what is longer than 15 digits stays.
    /// </summary>
    internal static string WithoutPowers(string text) => !text.Contains("E+", StringComparison.Ordinal)
        ? text
        : Power().Replace(text, found => double.Parse(found.Value, CultureInfo.InvariantCulture) is var value && Math.Abs(value) < 1e15
            ? value.ToString("0.######", CultureInfo.InvariantCulture)
            : found.Value);

    [GeneratedRegex(@"[0-9]+(\.[0-9]+)?E\+[0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex Power();

    /// <summary>Decimals that write a doubt with two digits.</summary>
    /// <param name="doubt">The doubt, above 0.</param>
    /// <param name="most">The most decimals.</param>
    internal static int Decimals(double doubt, int most) => Math.Clamp(1 - (int)Math.Floor(Math.Log10(doubt)), 0, most);
}
