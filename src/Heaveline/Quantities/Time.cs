namespace Heaveline.Quantities;

/// <summary>The dimension "time", SI unit s.</summary>
public readonly struct Time : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 0, 1, 0);

    /// <inheritdoc/>
    public static string Name => "time";

    /// <inheritdoc/>
    public static string Symbol => "s";

    /// <inheritdoc/>
    public static string Usual => "s";

    /// <summary>An amount given in s.</summary>
    public static Amount<Time> FromSeconds(double value) => new(value);
}
