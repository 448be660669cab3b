namespace Heaveline.Quantities;

/// <summary>The dimension "ratio per length", SI unit 1/m.</summary>
public readonly struct RatioPerLength : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(-1, 0, 0, 0);

    /// <inheritdoc/>
    public static string Name => "ratio per length";

    /// <inheritdoc/>
    public static string Symbol => "1/m";

    /// <inheritdoc/>
    public static string Usual => "1/m";

    /// <summary>An amount given in 1/m.</summary>
    public static Amount<RatioPerLength> FromPerMetre(double value) => new(value);
}
