namespace Heaveline.Quantities;

/// <summary>The dimension "a plain number", SI unit 1. A number without unit; per cent is a way to write it.</summary>
public readonly struct Plain : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 0, 0, 0);

    /// <inheritdoc/>
    public static string Name => "a plain number";

    /// <inheritdoc/>
    public static string Symbol => "";

    /// <inheritdoc/>
    public static string Usual => "";

    /// <summary>An amount that is a plain number.</summary>
    public static Amount<Plain> FromNumber(double value) => new(value);

    /// <summary>An amount given in percent.</summary>
    public static Amount<Plain> FromPercent(double value) => new(value * 1e-2);
}
