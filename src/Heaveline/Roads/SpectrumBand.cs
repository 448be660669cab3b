using Heaveline.Quantities;
using MathNet.Numerics.Distributions;

namespace Heaveline.Roads;

/// <summary>Spectral density of a profile, averaged over one band of spatial frequencies.</summary>
public sealed record SpectrumBand
{
    internal SpectrumBand(SpatialBand band, double density, double degreesOfFreedom) =>
        (Band, Density, DegreesOfFreedom) = (band, density, degreesOfFreedom);

    /// <summary>Its ends.</summary>
    public SpatialBand Band { get; }

    /// <summary>Geometric centre, cycles/m.</summary>
    public double Centre => Math.Sqrt(Band.Low * Band.High);

    /// <summary>Mean one-sided spectral density of heights in the band, m³.</summary>
    public double Density { get; }

    /// <summary>ν: the estimate scatters about the true mean as χ²(ν)/ν does.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>Interval that holds the true mean density with a given probability, ν·G/χ² [Bendat and Piersol, Random Data, ch. 8].</summary>
    /// <param name="confidence">Probability, above 0 and below 1, for instance 0.95.</param>
    /// <returns>Lower and upper end, m³.</returns>
    public (double Low, double High) Interval(double confidence)
    {
        var tail = 0.5 * (1.0 - Checked.Within(confidence, double.Epsilon, Math.BitDecrement(1.0), "Give a probability such as 0.95."));
        var total = DegreesOfFreedom * Density;
        return (total / ChiSquared.InvCDF(DegreesOfFreedom, 1.0 - tail), total / ChiSquared.InvCDF(DegreesOfFreedom, tail));
    }
}
