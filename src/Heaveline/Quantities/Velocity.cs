namespace Heaveline.Quantities;

/// <summary>The dimension "speed", SI unit m/s.</summary>
public readonly struct Velocity : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(1, 0, -1, 0);

    /// <inheritdoc/>
    public static string Name => "speed";

    /// <inheritdoc/>
    public static string Symbol => "m/s";

    /// <inheritdoc/>
    public static string Usual => "km/h";
}
