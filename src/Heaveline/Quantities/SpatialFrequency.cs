namespace Heaveline.Quantities;

/// <summary>The dimension "spatial frequency", SI unit cycles/m.</summary>
public readonly struct SpatialFrequency : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(-1, 0, 0, 0);

    /// <inheritdoc/>
    public static string Name => "spatial frequency";

    /// <inheritdoc/>
    public static string Symbol => "cycles/m";

    /// <inheritdoc/>
    public static string Usual => "cycles/m";

    /// <summary>An amount given in cycles/m.</summary>
    public static Amount<SpatialFrequency> FromCyclesPerMetre(double value) => new(value);
}
