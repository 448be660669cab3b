namespace Heaveline.Quantities;

/// <summary>The dimension "angle", SI unit rad.</summary>
public readonly struct Angle : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 0, 0, 1);

    /// <inheritdoc/>
    public static string Name => "angle";

    /// <inheritdoc/>
    public static string Symbol => "rad";

    /// <inheritdoc/>
    public static string Usual => "deg";

    /// <summary>An amount given in rad.</summary>
    public static Amount<Angle> FromRadians(double value) => new(value);

    /// <summary>An amount given in deg.</summary>
    public static Amount<Angle> FromDegrees(double value) => new(value * (Math.PI / 180.0));
}
