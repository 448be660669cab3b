using Heaveline.Measures;
using Heaveline.Numerics;

namespace Heaveline.Doubts;

/// <summary>One number with its standard uncertainty by slopes.</summary>
public sealed record FirstOrderResult
{
    private const double Sigmas95 = 1.959963984540054;

    /// <summary>What the number is.</summary>
    public required Measure Measure { get; init; }

    /// <summary>The number of the car as stated, SI.</summary>
    public required double Stated { get; init; }

    /// <summary>Change per standard deviation of each source, signed, in the sources' order.</summary>
    public required IReadOnlyList<double> Slopes { get; init; }

    /// <summary>The sources.</summary>
    public required IReadOnlyList<DoubtSource> Sources { get; init; }

    /// <summary>Standard uncertainty.</summary>
    public double StandardDeviation => Math.Sqrt(Slopes.Sum(s => s * s));

    /// <summary>The middle 90 % of a normal error.</summary>
    public DoubtInterval Central90 => Around(Gaussian.Ninety);

    /// <summary>The middle 95 % of a normal error.</summary>
    public DoubtInterval Central95 => Around(Sigmas95);

    /// <summary>Shares of the variance, greatest first.</summary>
    public IReadOnlyList<VarianceShare> Shares
    {
        get
        {
            var variance = Slopes.Sum(s => s * s);
            return [.. Sources.Select((s, j) => new VarianceShare(s, variance > 0.0 ? Slopes[j] * Slopes[j] / variance : 0.0, Slopes[j]))
                .OrderByDescending(s => s.Share)];
        }
    }

    private DoubtInterval Around(double sigmas) => new(Stated - (sigmas * StandardDeviation), Stated + (sigmas * StandardDeviation));
}
