using System.Globalization;

namespace Heaveline.Press.Scales;

/// <summary>
/// Numbers as printed: decimal point, a true minus (U+2212), a narrow space between thousands from 10 000 on, powers of ten written out.
/// </summary>
internal static class Numeral
{
    /// <summary>The numbers of an axis, all in one manner: plain, or all as powers of ten where one of them would be too long.</summary>
    public static string[] Of(Ticks ticks)
    {
        var largest = ticks.Values.Select(Math.Abs).DefaultIfEmpty(0.0).Max();
        if (ticks.Step > 0.0)
        {
            return [.. ticks.Values.Select(value => value != 0.0 && (largest >= 1e6 || ticks.Step < 1e-4) ? Power(value) : Of(value, ticks.Step))];
        }

        var plain = largest < 1e5 && ticks.Values.All(value => value >= 1e-3);
        return [.. ticks.Values.Select(value => plain ? Plain(value, Math.Max(0, (int)-Math.Floor(Math.Log10(value) + 1e-9))) : Power(value))];
    }

    /// <summary>A number among others that differ by steps of a size: as many decimals as the step needs.</summary>
    public static string Of(double value, double step)
    {
        // The step is 1, 2 or 5 times a power of ten: its decimals are those of the power.
        var decimals = Math.Max(0, (int)-Math.Floor(Math.Log10(step) + 1e-9));
        return Plain(value, decimals);
    }

    private static string Plain(double value, int decimals)
    {
        var digits = Math.Abs(value).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        var whole = decimals == 0 ? digits.Length : digits.IndexOf('.', StringComparison.Ordinal);
        if (whole > 4)
        {
            for (var at = whole - 3; at > 0; at -= 3)
            {
                digits = digits.Insert(at, "\u202f");
            }
        }

        // A value that rounds to nothing carries no sign.
        return value < 0.0 && digits.AsSpan().ContainsAnyExcept("0.") ? "\u2212" + digits : digits;
    }

    private static string Power(double value)
    {
        var exponent = (int)Math.Floor(Math.Log10(Math.Abs(value)) + 1e-9);
        var mantissa = Math.Abs(value) / Math.Pow(10.0, exponent);
        var front = Math.Abs(mantissa - 1.0) < 1e-9 ? "" : mantissa.ToString("0.###", CultureInfo.InvariantCulture) + "×";
        return (value < 0.0 ? "\u2212" : "") + front + "10" + Raised(exponent);
    }

    private static string Raised(int exponent) => string.Concat(exponent.ToString(CultureInfo.InvariantCulture).Select(c => c switch
    {
        '-' => '⁻',
        '1' => '¹',
        '2' => '²',
        '3' => '³',
        _ => (char)('⁰' + (c - '0')),
    }));
}
