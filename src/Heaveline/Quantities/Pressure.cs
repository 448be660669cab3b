namespace Heaveline.Quantities;

/// <summary>The dimension "pressure", SI unit Pa.</summary>
public readonly struct Pressure : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(-1, 1, -2, 0);

    /// <inheritdoc/>
    public static string Name => "pressure";

    /// <inheritdoc/>
    public static string Symbol => "Pa";

    /// <inheritdoc/>
    public static string Usual => "bar";

    /// <summary>An amount given in Pa.</summary>
    public static Amount<Pressure> FromPascals(double value) => new(value);

    /// <summary>An amount given in bar.</summary>
    public static Amount<Pressure> FromBars(double value) => new(value * 1e5);
}
