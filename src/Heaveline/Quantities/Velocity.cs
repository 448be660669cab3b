namespace Heaveline.Quantities;

/// <summary>The dimension "speed", SI unit m/s.</summary>
public readonly struct Velocity : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(1, 0, -1, 0);

    /// <inheritdoc/>
    public static string Name => "speed";

    /// <inheritdoc/>
    public static string Symbol => "m/s";

    /// <inheritdoc/>
    public static string Usual => "km/h";

    /// <summary>An amount given in m/s.</summary>
    public static Amount<Velocity> FromMetresPerSecond(double value) => new(value);

    /// <summary>An amount given in km/h.</summary>
    public static Amount<Velocity> FromKilometresPerHour(double value) => new(value / 3.6);

    /// <summary>An amount given in mph.</summary>
    public static Amount<Velocity> FromMilesPerHour(double value) => new(value * 0.44704);
}
