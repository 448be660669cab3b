namespace Heaveline.Quantities;

/// <summary>The dimension "area", SI unit m².</summary>
public readonly struct Area : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(2, 0, 0, 0);

    /// <inheritdoc/>
    public static string Name => "area";

    /// <inheritdoc/>
    public static string Symbol => "m²";

    /// <inheritdoc/>
    public static string Usual => "cm²";
}
