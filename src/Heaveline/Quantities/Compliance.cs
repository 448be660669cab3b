namespace Heaveline.Quantities;

/// <summary>The dimension "compliance", SI unit m³/Pa.</summary>
public readonly struct Compliance : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(4, -1, 2, 0);

    /// <inheritdoc/>
    public static string Name => "compliance";

    /// <inheritdoc/>
    public static string Symbol => "m³/Pa";

    /// <inheritdoc/>
    public static string Usual => "cm³/bar";
}
