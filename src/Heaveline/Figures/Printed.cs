using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Numbers with their units as they stand in captions and labels.</summary>
internal static class Printed
{
    /// <summary>An angle given in rad, in degrees with two decimals.</summary>
    public static string Degrees(double radians) => Numeral.Of(In.Degrees.Of(radians), 2) + "°";

    /// <summary>An angular acceleration, rad/s².</summary>
    public static string PitchAcceleration(double value) => Numeral.Of(value, 2) + " rad/s²";

    /// <summary>A speed given in m/s, in km/h with no more decimals than it needs.</summary>
    public static string Speed(double metresPerSecond) =>
        In.KilometresPerHour.Of(metresPerSecond).ToString("0.#", CultureInfo.InvariantCulture) + " km/h";

    /// <summary>A change against a reference in per cent, with its sign; null against nothing.</summary>
    public static string? PerCentChange(double value, double reference) =>
        reference > 0.0 ? Numeral.Change(In.Percent.Of((value - reference) / reference), 0) + " %" : null;
}
