using System.Numerics;

namespace Heaveline.Measures.Comfort;

/// <summary>
/// A frequency weighting of ISO 2631-1 (Wk, Wd, Wf, Wc, We, Wj) or ISO 2631-4 (Wb), as the exact transfer function of ISO 8041-1:
/// H(s) = Hh·Hl·Ht·Hs, s = j2πf, ω = 2πf of the corner in hand:
/// Hh = s²/(s² + ω₁s/Q₁ + ω₁²), Hl = ω₂²/(s² + ω₂s/Q₂ + ω₂²), Q₁ = Q₂ = 1/√2 (band limiting);
/// Ht = K(1 + s/ω₃)/(1 + s/(Q₄ω₄) + (s/ω₄)²) (acceleration to velocity);
/// Hs = (ω₅/ω₆)²(1 + s/(Q₅ω₅) + (s/ω₅)²)/(1 + s/(Q₆ω₆) + (s/ω₆)²) (upward step).
/// A corner at infinity leaves its part out. See <see cref="Weightings"/> for the table and where it was read.
/// </summary>
/// <remarks>The third-octave tables printed in the standards are roundings of this function; they serve only as tests.</remarks>
public sealed record Weighting
{
    internal Weighting()
    {
    }

    /// <summary>Its name as in the standard ("Wk").</summary>
    public string Name { get; internal init; } = "";

    /// <summary>Where it is used. After public transcriptions of ISO 2631-1:1997, tables 1 and 2.</summary>
    public string Use { get; internal init; } = "";

    /// <summary>Corner f₁ of the high-pass, Hz.</summary>
    public double F1 { get; internal init; } = 0.4;

    /// <summary>Corner f₂ of the low-pass, Hz.</summary>
    public double F2 { get; internal init; } = 100.0;

    /// <summary>Numerator corner f₃ of the transition, Hz; infinite: numerator 1.</summary>
    public double F3 { get; internal init; } = double.PositiveInfinity;

    /// <summary>Denominator corner f₄ of the transition, Hz; infinite: no transition.</summary>
    public double F4 { get; internal init; } = double.PositiveInfinity;

    /// <summary>Quality Q₄ of the transition (–).</summary>
    public double Q4 { get; internal init; } = double.NaN;

    /// <summary>Numerator corner f₅ of the step, Hz; infinite: no step.</summary>
    public double F5 { get; internal init; } = double.PositiveInfinity;

    /// <summary>Quality Q₅ of the step (–).</summary>
    public double Q5 { get; internal init; } = double.NaN;

    /// <summary>Denominator corner f₆ of the step, Hz; infinite: no step.</summary>
    public double F6 { get; internal init; } = double.PositiveInfinity;

    /// <summary>Quality Q₆ of the step (–).</summary>
    public double Q6 { get; internal init; } = double.NaN;

    /// <summary>Gain K (–).</summary>
    public double K { get; internal init; } = 1.0;

    /// <summary>
    /// Lowest frequency at which a digital filter is held to the function, Hz: 0.1, or 0.02 for motion
    /// sickness, where the tables of ISO 2631-1 begin.
    /// </summary>
    public double CheckedFrom { get; internal init; } = 0.1;

    /// <summary>
    /// Highest frequency at which a digital filter is held to the function, Hz: 80, or 4 for motion sickness, where the tables of ISO 2631-1 end.
    /// </summary>
    public double CheckedTo { get; internal init; } = 80.0;

    /// <summary>
    /// Frequency that a record must be able to show, Hz: ft3 of ISO 8041-1, 10^1.8 (10^−0.4 for motion
    /// sickness), the end of the narrow tolerance band.
    /// </summary>
    public double MustReach { get; internal init; } = Math.Pow(10.0, 1.8);

    /// <summary>Only Hh·Hl of this weighting: the band-limited reading that an ISO 8041-1 instrument shows beside the weighted one.</summary>
    public Weighting BandLimiting => this with
    {
        Name = Name + ", band limits only",
        Use = "band-limited, not weighted",
        F3 = double.PositiveInfinity,
        F4 = double.PositiveInfinity,
        F5 = double.PositiveInfinity,
        F6 = double.PositiveInfinity,
        K = 1.0,
    };

    /// <summary>H(j2πf), complex (–).</summary>
    /// <param name="frequency">f, Hz, 0 or above.</param>
    public Complex At(double frequency)
    {
        var s = new Complex(0.0, 2.0 * Math.PI * frequency);
        var value = Complex.One;
        foreach (var section in Sections())
        {
            value *= section.At(s);
        }

        return value;
    }

    /// <summary>The weighting factor |H(j2πf)| (–).</summary>
    /// <param name="frequency">f, Hz, 0 or above.</param>
    public double Factor(double frequency) => At(frequency).Magnitude;

    /// <summary>The parts as second-order sections, their product is H.</summary>
    internal IReadOnlyList<WeightingSection> Sections()
    {
        var butterworth = 1.0 / Math.Sqrt(2.0);
        var w2 = Angular(F2);
        var sections = new List<WeightingSection>
        {
            new(1.0, Corner.AtZero, new Corner(Angular(F1), butterworth)),
            new(w2 * w2, Corner.None, new Corner(w2, butterworth)),
        };
        if (double.IsFinite(F4))
        {
            var w4 = Angular(F4);
            sections.Add(double.IsFinite(F3)
                ? new(K * w4 * w4 / Angular(F3), Corner.Single(Angular(F3)), new Corner(w4, Q4))
                : new(K * w4 * w4, Corner.None, new Corner(w4, Q4)));
        }

        if (double.IsFinite(F5))
        {
            // (ω₅/ω₆)²·(s²/ω₅² + …)/(s²/ω₆² + …): the squares cancel, so the gain of the monic form is 1.
            sections.Add(new(1.0, new Corner(Angular(F5), Q5), new Corner(Angular(F6), Q6)));
        }

        return sections;
    }

    private static double Angular(double frequency) => 2.0 * Math.PI * frequency;
}
