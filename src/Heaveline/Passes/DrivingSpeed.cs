using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>The speeds at which cars may be driven: one rule for everything that asks for one.</summary>
public static class DrivingSpeed
{
    private const double Usual = 14.0;
    private const string Limits = "between 1.8 and 432 km/h (0.5 and 120 m/s)";

    /// <summary>The slowest, m/s.</summary>
    public const double Slowest = 0.5;

    /// <summary>The fastest, m/s.</summary>
    public const double Fastest = 120.0;

    /// <summary>Both in words, in a unit.</summary>
    /// <param name="unit">A unit of speed; null: km/h.</param>
    public static string LimitsIn(Unit? unit) => $"between {Written(Slowest, unit)} and {Written(Fastest, unit)} {unit?.Symbol ?? "km/h"}";

    /// <summary>What to give instead of another, in a unit.</summary>
    /// <param name="unit">A unit of speed; null: km/h.</param>
    public static string AdviceIn(Unit? unit) =>
        $"Give a driving speed, for instance {(unit is null or { Symbol: "km/h" } ? "50" : Written(Usual, unit))} {unit?.Symbol ?? "km/h"}.";

    /// <summary>A speed, m/s.</summary>
    /// <exception cref="RefusedValueException">Out of the limits: told in m/s, as it was given, and in km/h.</exception>
    public static double Checked(double speed) => speed is >= Slowest and <= Fastest
        ? speed
        : throw new RefusedValueException(
            "speed", FormattableString.Invariant($"{speed:G4} m/s ({In.KilometresPerHour.Of(speed):G4} km/h)"), Limits, AdviceIn(null));

    private static string Written(double speed, Unit? unit) =>
        Numeral.Inside(unit?.FromSi(speed) ?? In.KilometresPerHour.Of(speed), isLeast: speed == Slowest);
}
