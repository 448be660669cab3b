namespace Heaveline.Quantities;

/// <summary>The dimension "area", SI unit m².</summary>
public readonly struct Area : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(2, 0, 0, 0);

    /// <inheritdoc/>
    public static string Name => "area";

    /// <inheritdoc/>
    public static string Symbol => "m²";

    /// <inheritdoc/>
    public static string Usual => "cm²";

    /// <summary>An amount given in m².</summary>
    public static Amount<Area> FromSquareMetres(double value) => new(value);

    /// <summary>An amount given in cm².</summary>
    public static Amount<Area> FromSquareCentimetres(double value) => new(value * 1e-4);
}
