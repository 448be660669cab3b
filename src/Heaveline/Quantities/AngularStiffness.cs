namespace Heaveline.Quantities;

/// <summary>The dimension "roll or pitch rate", SI unit N m/rad.</summary>
public readonly struct AngularStiffness : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(2, 1, -2, -1);

    /// <inheritdoc/>
    public static string Name => "roll or pitch rate";

    /// <inheritdoc/>
    public static string Symbol => "N m/rad";

    /// <inheritdoc/>
    public static string Usual => "N m/deg";

    /// <summary>An amount given in N m/rad.</summary>
    public static Amount<AngularStiffness> FromNewtonMetresPerRadian(double value) => new(value);

    /// <summary>An amount given in N m/deg.</summary>
    public static Amount<AngularStiffness> FromNewtonMetresPerDegree(double value) => new(value * In.Degrees.Factor);
}
