namespace Heaveline.Quantities;

/// <summary>The dimension "road spectral density", SI unit m³.</summary>
public readonly struct RoadDensity : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(3, 0, 0, 0);

    /// <inheritdoc/>
    public static string Name => "road spectral density";

    /// <inheritdoc/>
    public static string Symbol => "m³";

    /// <inheritdoc/>
    public static string Usual => "mm³";

    /// <summary>An amount given in m³.</summary>
    public static Amount<RoadDensity> FromCubicMetres(double value) => new(value);
}
