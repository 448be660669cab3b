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
}
