namespace Heaveline.Quantities;

/// <summary>The dimension "damping rate", SI unit N s/m.</summary>
public readonly struct DampingRate : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 1, -1, 0);

    /// <inheritdoc/>
    public static string Name => "damping rate";

    /// <inheritdoc/>
    public static string Symbol => "N s/m";

    /// <inheritdoc/>
    public static string Usual => "N s/m";

    /// <summary>An amount given in N s/m.</summary>
    public static Amount<DampingRate> FromNewtonSecondsPerMetre(double value) => new(value);
}
