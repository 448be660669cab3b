namespace Heaveline.Quantities;

/// <summary>The dimension "frequency", SI unit Hz.</summary>
public readonly struct Frequency : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 0, -1, 0);

    /// <inheritdoc/>
    public static string Name => "frequency";

    /// <inheritdoc/>
    public static string Symbol => "Hz";

    /// <inheritdoc/>
    public static string Usual => "Hz";

    /// <summary>An amount given in Hz.</summary>
    public static Amount<Frequency> FromHertz(double value) => new(value);
}
