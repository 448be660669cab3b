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

    /// <summary>An amount given in kg.</summary>
    public static Amount<Mass> FromKilograms(double value) => new(value);

    /// <summary>An amount given in lb.</summary>
    public static Amount<Mass> FromPounds(double value) => new(value * 0.45359237);
}
