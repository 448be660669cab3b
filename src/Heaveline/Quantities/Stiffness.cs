namespace Heaveline.Quantities;

/// <summary>The dimension "spring rate", SI unit N/m.</summary>
public readonly struct Stiffness : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 1, -2, 0);

    /// <inheritdoc/>
    public static string Name => "spring rate";

    /// <inheritdoc/>
    public static string Symbol => "N/m";

    /// <inheritdoc/>
    public static string Usual => "N/mm";
}
