namespace Heaveline.Quantities;

/// <summary>The dimension "compliance", SI unit m³/Pa.</summary>
public readonly struct Compliance : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(4, -1, 2, 0);

    /// <inheritdoc/>
    public static string Name => "compliance";

    /// <inheritdoc/>
    public static string Symbol => "m³/Pa";

    /// <inheritdoc/>
    public static string Usual => "cm³/bar";

    /// <summary>An amount given in m³/Pa.</summary>
    public static Amount<Compliance> FromCubicMetresPerPascal(double value) => new(value);

    /// <summary>An amount given in cm³/bar.</summary>
    public static Amount<Compliance> FromCubicCentimetresPerBar(double value) => new(value * 1e-11);
}
