namespace Heaveline.Quantities;

/// <summary>The dimension "moment of inertia", SI unit kg m².</summary>
public readonly struct Inertia : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(2, 1, 0, 0);

    /// <inheritdoc/>
    public static string Name => "moment of inertia";

    /// <inheritdoc/>
    public static string Symbol => "kg m²";

    /// <inheritdoc/>
    public static string Usual => "kg m²";

    /// <summary>An amount given in kg m².</summary>
    public static Amount<Inertia> FromKilogramSquareMetres(double value) => new(value);
}
