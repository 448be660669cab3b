namespace Heaveline.Quantities;

/// <summary>The dimension "line resistance", SI unit Pa s/m³.</summary>
public readonly struct Resistance : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(-4, 1, -1, 0);

    /// <inheritdoc/>
    public static string Name => "line resistance";

    /// <inheritdoc/>
    public static string Symbol => "Pa s/m³";

    /// <inheritdoc/>
    public static string Usual => "Pa s/m³";

    /// <summary>An amount given in Pa s/m³.</summary>
    public static Amount<Resistance> FromPascalSecondsPerCubicMetre(double value) => new(value);
}
