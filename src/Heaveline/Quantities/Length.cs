namespace Heaveline.Quantities;

/// <summary>The dimension "length", SI unit m.</summary>
public readonly struct Length : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(1, 0, 0, 0);

    /// <inheritdoc/>
    public static string Name => "length";

    /// <inheritdoc/>
    public static string Symbol => "m";

    /// <inheritdoc/>
    public static string Usual => "mm";
}
