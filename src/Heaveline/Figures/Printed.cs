using System.Globalization;

namespace Heaveline.Figures;

/// <summary>Numbers as they stand in captions, labels and tables: decimal point, a true minus (U+2212), users' units.</summary>
internal static class Printed
{
    /// <summary>A number with a fixed count of decimals; one that rounds to nothing carries no sign.</summary>
    public static string Number(double value, int decimals)
    {
        var digits = Math.Abs(value).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return value < 0.0 && digits.AsSpan().ContainsAnyExcept("0.") ? "−" + digits : digits;
    }

    /// <summary>The same with its sign always shown, but for zero: a change.</summary>
    public static string Change(double value, int decimals)
    {
        var text = Number(value, decimals);
        return value > 0.0 && text.AsSpan().ContainsAnyExcept("0.") ? "+" + text : text;
    }

    /// <summary>An angle given in rad, in degrees with two decimals.</summary>
    public static string Degrees(double radians) => Number(radians * DegreesPerRadian, 2) + "°";

    /// <summary>An angular acceleration, rad/s².</summary>
    public static string PitchAcceleration(double value) => Number(value, 2) + " rad/s²";

    /// <summary>A speed given in m/s, in km/h with no more decimals than it needs.</summary>
    public static string Speed(double metresPerSecond) => (metresPerSecond * 3.6).ToString("0.#", CultureInfo.InvariantCulture) + " km/h";

    /// <summary>A change against a reference in per cent, with its sign; null against nothing.</summary>
    public static string? PerCentChange(double value, double reference) =>
        reference > 0.0 ? Change(100.0 * (value - reference) / reference, 0) + " %" : null;

    /// <summary>A text with its first letter raised, to begin a line.</summary>
    public static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>Degrees in one radian.</summary>
    public const double DegreesPerRadian = 180.0 / Math.PI;
}
