using Heaveline.Quantities;

namespace Heaveline.Measures.Comfort;

/// <summary>The r.m.s. acceleration in one frequency band.</summary>
public sealed record BandValue
{
    /// <summary>
    /// The frequency at which the weighting is taken, Hz. ISO 2631-1 takes the nominal centre (31.5), ISO 8041-1 the true one (10^1.5).
    /// </summary>
    public required double Frequency { get; init => field = Checked.Within(value, double.Epsilon, double.MaxValue, "Give the centre of the band."); }

    /// <summary>a_i, r.m.s. in the band, m/s² or rad/s².</summary>
    public required double Rms { get; init => field = Checked.Within(value, 0.0, double.MaxValue, "Give the unweighted r.m.s. in the band."); }

    /// <summary>a_w = √(Σ(W_i a_i)²), ISO 2631-1 equation (9), with the factor of the transfer function at each frequency.</summary>
    /// <param name="weighting">The weighting.</param>
    /// <param name="bands">The bands, each frequency once.</param>
    public static double WeightedRms(Weighting weighting, IReadOnlyList<BandValue> bands)
    {
        var sum = 0.0;
        var seen = new HashSet<double>();
        foreach (var band in bands)
        {
            if (!seen.Add(band.Frequency))
            {
                throw new RefusedValueException(
                    "band", FormattableString.Invariant($"{band.Frequency:G6} Hz, given twice"), "given once", "Give each band once.");
            }

            var weighted = weighting.Factor(band.Frequency) * band.Rms;
            sum += weighted * weighted;
        }

        return Math.Sqrt(sum);
    }
}
