namespace Heaveline.Quantities;

/// <summary>The dimension "volume", SI unit m³.</summary>
public readonly struct Volume : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(3, 0, 0, 0);

    /// <inheritdoc/>
    public static string Name => "volume";

    /// <inheritdoc/>
    public static string Symbol => "m³";

    /// <inheritdoc/>
    public static string Usual => "L";

    /// <summary>An amount given in m³.</summary>
    public static Amount<Volume> FromCubicMetres(double value) => new(value);

    /// <summary>An amount given in L.</summary>
    public static Amount<Volume> FromLitres(double value) => new(value * 1e-3);
}
