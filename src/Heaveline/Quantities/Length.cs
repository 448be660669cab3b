namespace Heaveline.Quantities;

/// <summary>The dimension "length", SI unit m.</summary>
public readonly struct Length : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(1, 0, 0, 0);

    /// <inheritdoc/>
    public static string Name => "length";

    /// <inheritdoc/>
    public static string Symbol => "m";

    /// <inheritdoc/>
    public static string Usual => "mm";

    /// <summary>An amount given in m.</summary>
    public static Amount<Length> FromMetres(double value) => new(value);

    /// <summary>An amount given in mm.</summary>
    public static Amount<Length> FromMillimetres(double value) => new(value * 1e-3);

    /// <summary>An amount given in in.</summary>
    public static Amount<Length> FromInches(double value) => new(value * 0.0254);
}
