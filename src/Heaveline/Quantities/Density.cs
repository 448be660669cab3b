namespace Heaveline.Quantities;

/// <summary>The dimension "density", SI unit kg/m³.</summary>
public readonly struct Density : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(-3, 1, 0, 0);

    /// <inheritdoc/>
    public static string Name => "density";

    /// <inheritdoc/>
    public static string Symbol => "kg/m³";

    /// <inheritdoc/>
    public static string Usual => "kg/m³";

    /// <summary>An amount given in kg/m³.</summary>
    public static Amount<Density> FromKilogramsPerCubicMetre(double value) => new(value);
}
