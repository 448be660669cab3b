namespace Heaveline.Quantities;

/// <summary>The dimension "mass", SI unit kg.</summary>
public readonly struct Mass : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 1, 0, 0);

    /// <inheritdoc/>
    public static string Name => "mass";

    /// <inheritdoc/>
    public static string Symbol => "kg";

    /// <inheritdoc/>
    public static string Usual => "kg";
}
