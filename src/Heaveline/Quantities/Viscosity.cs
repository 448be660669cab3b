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
}
