namespace Heaveline.Quantities;

/// <summary>The dimension "dynamic viscosity", SI unit Pa s.</summary>
public readonly struct Viscosity : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(-1, 1, -1, 0);

    /// <inheritdoc/>
    public static string Name => "dynamic viscosity";

    /// <inheritdoc/>
    public static string Symbol => "Pa s";

    /// <inheritdoc/>
    public static string Usual => "mPa s";

    /// <summary>An amount given in Pa s.</summary>
    public static Amount<Viscosity> FromPascalSeconds(double value) => new(value);

    /// <summary>An amount given in mPa s.</summary>
    public static Amount<Viscosity> FromMillipascalSeconds(double value) => new(value * 1e-3);
}
