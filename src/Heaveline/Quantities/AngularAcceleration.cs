namespace Heaveline.Quantities;

/// <summary>The dimension "angular acceleration", SI unit rad/s².</summary>
public readonly struct AngularAcceleration : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 0, -2, 1);

    /// <inheritdoc/>
    public static string Name => "angular acceleration";

    /// <inheritdoc/>
    public static string Symbol => "rad/s²";

    /// <inheritdoc/>
    public static string Usual => "rad/s²";

    /// <summary>An amount given in rad/s².</summary>
    public static Amount<AngularAcceleration> FromRadiansPerSecondSquared(double value) => new(value);
}
