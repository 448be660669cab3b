namespace Heaveline.Quantities;

/// <summary>The dimension "roll or pitch rate", SI unit N m/rad.</summary>
public readonly struct AngularStiffness : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(2, 1, -2, -1);

    /// <inheritdoc/>
    public static string Name => "roll or pitch rate";

    /// <inheritdoc/>
    public static string Symbol => "N m/rad";

    /// <inheritdoc/>
    public static string Usual => "N m/deg";
}
