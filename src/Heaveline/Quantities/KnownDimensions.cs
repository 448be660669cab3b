namespace Heaveline.Quantities;

/// <summary>Names for what was found and units for what is wanted, so that a refusal can say both.</summary>
internal static class KnownDimensions
{
    /// <summary>All of them. Where two share their exponents, the first one names what was found.</summary>
    public static readonly KnownDimension[] All =
    [
        KnownDimension.Of<Length>("mm", "cm", "m", "in", "ft"),
        KnownDimension.Of<Mass>("kg", "g", "t", "lb"),
        KnownDimension.Of<Time>("s", "ms", "min", "h"),
        KnownDimension.Of<Force>("N", "kN", "kgf", "lbf"),
        KnownDimension.Of<Stiffness>("N/mm", "N/m", "kN/m", "kgf/mm", "lbf/in"),
        KnownDimension.Of<DampingRate>("N s/m", "N s/mm", "kN s/m", "lbf s/in"),
        KnownDimension.Of<AngularStiffness>("N m/deg", "N m/rad", "kN m/rad", "lbf ft/deg"),
        KnownDimension.Of<Inertia>("kg m²", "lb ft²", "slug ft²"),
        KnownDimension.Of<Velocity>("km/h", "m/s", "mm/s", "mph"),
        KnownDimension.Of<Acceleration>("m/s²", "g"),
        KnownDimension.Of<Angle>("deg", "rad", "mrad"),
        KnownDimension.Of<AngularRate>("deg/s", "rad/s", "rpm"),
        KnownDimension.Of<AngularAcceleration>("rad/s²", "deg/s²"),
        KnownDimension.Of<Frequency>("Hz", "cpm"),
        KnownDimension.Of<Area>("cm²", "mm²", "m²", "in²"),
        KnownDimension.Of<Volume>("L", "cc", "cm³", "m³"),
        KnownDimension.Of<Pressure>("bar", "kPa", "MPa", "GPa", "psi"),
        KnownDimension.Of<Density>("kg/m³", "g/cm³", "kg/L"),
        KnownDimension.Of<Viscosity>("mPa s", "Pa s", "cP"),
        KnownDimension.Of<Compliance>("cm³/bar", "m³/Pa", "L/bar"),
        KnownDimension.Of<Resistance>("Pa s/m³", "bar s/L"),
        KnownDimension.Of<Inertance>("kg/m⁴"),
        KnownDimension.Of<RatioPerLength>("1/m", "1/mm", "%/m"),
        KnownDimension.Of<SpatialFrequency>("cycles/m", "1/m"),
        KnownDimension.Of<RoadDensity>("mm³", "cm³", "m³"),
        KnownDimension.Of<Plain>("%"),
        new(new(2, 1, -2, 0), "moment", ["N m"]),
        new(new(-1, 1, 0, 0), "mass per length", ["kg/m"]),
        new(new(-2, 1, 0, 0), "mass per area", ["kg/m²"]),
        new(new(2, 1, -1, -1), "roll or pitch damping", ["N m s/rad"]),
        new(new(2, 0, -1, 0), "kinematic viscosity", ["cSt"]),
        new(new(1, 0, 0, -1), "length per angle", ["mm/deg"]),
    ];

    /// <summary>"a length", "an angle", "a plain number"; a phrase that fits after "is" when it has no name here.</summary>
    public static string WithArticle(Exponents exponents) =>
        All.FirstOrDefault(known => known.Exponents == exponents) is { } named ? WithArticle(named.Name) : "of a kind that no value here has";

    /// <summary>
    /// The dimension whose units a symbol is among; the first one of its exponents when it is among none; null when they have no name here.
    /// </summary>
    public static KnownDimension? Naming(string symbol, Exponents exponents) =>
        All.FirstOrDefault(known => known.Exponents == exponents && known.Symbols.Contains(symbol))
            ?? All.FirstOrDefault(known => known.Exponents == exponents);

    /// <summary>A name with its article.</summary>
    public static string WithArticle(string name) =>
        name.StartsWith("a ", StringComparison.Ordinal) ? name : ("aeiou".Contains(name[0], StringComparison.Ordinal) ? "an " : "a ") + name;

    /// <summary>Units that fit, the usual one first.</summary>
    public static IReadOnlyList<string> Fitting(Exponents exponents, string usual) =>
        All.FirstOrDefault(known => known.Exponents == exponents && known.Symbols[0] == usual)?.Symbols ?? [usual];
}
