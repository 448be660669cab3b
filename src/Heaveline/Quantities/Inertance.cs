namespace Heaveline.Quantities;

/// <summary>The dimension "line inertance", SI unit kg/m⁴.</summary>
public readonly struct Inertance : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(-4, 1, 0, 0);

    /// <inheritdoc/>
    public static string Name => "line inertance";

    /// <inheritdoc/>
    public static string Symbol => "kg/m⁴";

    /// <inheritdoc/>
    public static string Usual => "kg/m⁴";

    /// <summary>An amount given in kg/m⁴.</summary>
    public static Amount<Inertance> FromKilogramsPerQuarticMetre(double value) => new(value);
}
