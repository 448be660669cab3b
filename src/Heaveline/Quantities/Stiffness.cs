namespace Heaveline.Quantities;

/// <summary>The dimension "spring rate", SI unit N/m.</summary>
public readonly struct Stiffness : IDimension
{
    /// <inheritdoc/>
    public static Exponents Exponents => new(0, 1, -2, 0);

    /// <inheritdoc/>
    public static string Name => "spring rate";

    /// <inheritdoc/>
    public static string Symbol => "N/m";

    /// <inheritdoc/>
    public static string Usual => "N/mm";

    /// <summary>An amount given in N/m.</summary>
    public static Amount<Stiffness> FromNewtonsPerMetre(double value) => new(value);

    /// <summary>An amount given in N/mm.</summary>
    public static Amount<Stiffness> FromNewtonsPerMillimetre(double value) => new(value * 1e3);

    /// <summary>An amount given in lbf/in.</summary>
    public static Amount<Stiffness> FromPoundsForcePerInch(double value) => new(value * (4.4482216152605 / 0.0254));
}
