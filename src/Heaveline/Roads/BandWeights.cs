namespace Heaveline.Roads;

/// <summary>How much of each bin of a periodogram lies in a band, bin k reaching from (k − ½) to (k + ½) resolutions.</summary>
internal sealed class BandWeights
{
    private readonly int first;
    private readonly double[] shares;

    internal BandWeights(SpatialBand band, double resolution)
    {
        Band = band;
        var (low, high) = (band.Low / resolution, band.High / resolution);
        first = (int)Math.Round(low);
        shares = new double[(int)Math.Round(high) - first + 1];
        for (var i = 0; i < shares.Length; i++)
        {
            shares[i] = (Math.Min(first + i + 0.5, high) - Math.Max(first + i - 0.5, low)) / (high - low);
        }
    }

    internal SpatialBand Band { get; }

    /// <summary>Mean over the band.</summary>
    internal double Mean(Func<int, double> at) => shares.Select((share, i) => share * at(first + i)).Sum();

    /// <summary>
    /// Covariance of the means of two bands over the product of what they estimate: Σ Σ shares·shares·(squared correlation of the bins).
    /// </summary>
    internal double CovarianceWith(BandWeights other)
    {
        var sum = 0.0;
        // Bins further apart than two have nothing to do with each other.
        var from = Math.Max(0, other.first - 2 - first);
        var to = Math.Min(shares.Length, other.first + other.shares.Length + 2 - first);
        for (var i = from; i < to; i++)
        {
            for (var apart = -2; apart <= 2; apart++)
            {
                var j = first + i + apart - other.first;
                sum += j >= 0 && j < other.shares.Length ? shares[i] * other.shares[j] * Periodogram.Correlation(apart) : 0.0;
            }
        }

        return sum;
    }
}
