namespace Heaveline.Quantities;

/// <summary>The dimension "force", SI unit N.</summary>
public readonly struct Force : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(1, 1, -2, 0);

    /// <inheritdoc/>
    public static string Name => "force";

    /// <inheritdoc/>
    public static string Symbol => "N";

    /// <inheritdoc/>
    public static string Usual => "N";

    /// <summary>An amount given in N.</summary>
    public static Amount<Force> FromNewtons(double value) => new(value);

    /// <summary>An amount given in lbf.</summary>
    public static Amount<Force> FromPoundsForce(double value) => new(value * 4.4482216152605);
}
