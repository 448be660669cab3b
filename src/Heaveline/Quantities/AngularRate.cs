namespace Heaveline.Quantities;

/// <summary>The dimension "angular rate", SI unit rad/s.</summary>
public readonly struct AngularRate : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 0, -1, 1);

    /// <inheritdoc/>
    public static string Name => "angular rate";

    /// <inheritdoc/>
    public static string Symbol => "rad/s";

    /// <inheritdoc/>
    public static string Usual => "deg/s";

    /// <summary>An amount given in rad/s.</summary>
    public static Amount<AngularRate> FromRadiansPerSecond(double value) => new(value);
}
