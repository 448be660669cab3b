namespace Heaveline.Quantities;

/// <summary>The dimension "acceleration", SI unit m/s².</summary>
public readonly struct Acceleration : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(1, 0, -2, 0);

    /// <inheritdoc/>
    public static string Name => "acceleration";

    /// <inheritdoc/>
    public static string Symbol => "m/s²";

    /// <inheritdoc/>
    public static string Usual => "m/s²";

    /// <summary>An amount given in m/s².</summary>
    public static Amount<Acceleration> FromMetresPerSecondSquared(double value) => new(value);
}
