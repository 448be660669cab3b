using System.Numerics;

namespace Heaveline.Measures.Comfort;

/// <summary>One second-order part of a weighting, gain · numerator(s)/denominator(s), both monic.</summary>
/// <param name="Gain">The gain, (rad/s)^(order of denominator − order of numerator).</param>
/// <param name="Numerator">The numerator.</param>
/// <param name="Denominator">The denominator, of order 2.</param>
internal readonly record struct WeightingSection(double Gain, Corner Numerator, Corner Denominator)
{
    /// <summary>Value at s.</summary>
    public Complex At(Complex s) => Gain * Numerator.At(s) / Denominator.At(s);

    /// <summary>The section with poles and zeros matched, for samples T apart.</summary>
    /// <param name="step">T, s.</param>
    public DigitalSection Matched(double step)
    {
        var (b1, b2) = Numerator.Matched(step);
        var (a1, a2) = Denominator.Matched(step);
        return new(Gain * Math.Pow(step, Denominator.Order - Numerator.Order), b1, b2, a1, a2);
    }
}
