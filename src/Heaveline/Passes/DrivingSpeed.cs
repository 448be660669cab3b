using Heaveline.Quantities;

namespace Heaveline.Passes;

/// <summary>The speeds at which cars may be driven: one rule for everything that asks for one.</summary>
public static class DrivingSpeed
{
    /// <summary>The slowest, m/s.</summary>
    public const double Slowest = 0.5;

    /// <summary>The fastest, m/s.</summary>
    public const double Fastest = 120.0;

    /// <summary>Both in words.</summary>
    public const string Limits = "between 1.8 and 432 km/h";

    /// <summary>What to give instead of another.</summary>
    public const string Advice = "Give a driving speed, for instance 50 km/h.";

    /// <summary>A speed, m/s.</summary>
    /// <exception cref="RefusedValueException">Out of the limits.</exception>
    public static double Checked(double speed) => speed is >= Slowest and <= Fastest
        ? speed
        : throw new RefusedValueException("speed", FormattableString.Invariant($"{In.KilometresPerHour.Of(speed):G4} km/h"), Limits, Advice);
}
