namespace Heaveline.Quantities;

/// <summary>
/// The units that readers of imperial units read in place of metric ones. Factors: the agreement of 1959 (the inch is 25.4 mm, the pound
/// 0.45359237 kg, exactly) and standard gravity (CGPM 1901), as NIST SP 811 (2008), appendix B, has them. What a standard or the trade states in
/// SI everywhere is not among them: seconds, hertz, degrees, ratios, m/s² (ISO 2631-1), the 0.4 m/rad there, and the densities of ISO 8608.
/// </summary>
public static class ImperialUnits
{
    private const double Inch = 0.0254;
    private const double Foot = 0.3048;
    private const double Mile = 1609.344;
    private const double Pound = 0.45359237;
    private const double PoundForce = Pound * 9.80665;
    private const double PoundsPerSquareInch = PoundForce / (Inch * Inch);
    private const double PoundFoot = PoundForce * Foot;

    /// <summary>All of them, each metric unit once.</summary>
    public static IReadOnlyList<ImperialUnit> All { get; } =
    [
        Of("mm", "in", 1e-3, Inch), Of("cm", "in", 1e-2, Inch), Of("m", "ft", 1.0, Foot), Of("km", "mi", 1e3, Mile),
        Of("km/h", "mph", 1.0 / 3.6, Mile / 3600.0), Of("m/s", "in/s", 1.0, Inch), Of("mm/s", "in/s", 1e-3, Inch),
        Of("m/km", "in/mi", 1e-3, Inch / Mile),
        Of("kg", "lb", 1.0, Pound), Of("N", "lbf", 1.0, PoundForce), Of("kN", "lbf", 1e3, PoundForce),
        Of("N/mm", "lbf/in", 1e3, PoundForce / Inch), Of("kN/m", "lbf/in", 1e3, PoundForce / Inch), Of("N/m", "lbf/in", 1.0, PoundForce / Inch),
        Of("N s/m", "lbf s/in", 1.0, PoundForce / Inch), Of("kN s/m", "lbf s/in", 1e3, PoundForce / Inch),
        Of("N m", "lbf ft", 1.0, PoundFoot), Of("N m/°", "lbf ft/°", 1.0, PoundFoot), Of("N m/rad", "lbf ft/rad", 1.0, PoundFoot),
        Of("kN m/rad", "lbf ft/rad", 1e3, PoundFoot), Of("N m s/rad", "lbf ft s/rad", 1.0, PoundFoot),
        // The slug is what a pound-force moves by a foot a second squared.
        Of("kg m²", "slug ft²", 1.0, PoundForce / Foot * Foot * Foot),
        Of("bar", "psi", 1e5, PoundsPerSquareInch), Of("kPa", "psi", 1e3, PoundsPerSquareInch),
        Of("MPa", "ksi", 1e6, 1e3 * PoundsPerSquareInch), Of("GPa", "ksi", 1e9, 1e3 * PoundsPerSquareInch),
        Of("cm²", "in²", 1e-4, Inch * Inch), Of("mm²", "in²", 1e-6, Inch * Inch), Of("cm³", "in³", 1e-6, Inch * Inch * Inch),
        Of("cm³/bar", "in³/psi", 1e-11, Inch * Inch * Inch / PoundsPerSquareInch),
    ];

    /// <summary>What is read in place of a metric unit; null where that one stays.</summary>
    /// <param name="metric">The metric unit as shown.</param>
    public static ImperialUnit? For(string metric) => All.FirstOrDefault(unit => unit.Metric == metric);

    private static ImperialUnit Of(string metric, string symbol, double metricInSi, double ownInSi) => new(metric, symbol, metricInSi / ownInSi);
}
