using System.Collections.Immutable;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives.Identification;

/// <summary>Rules by which a fitted car is not believed. Thresholds are proposals of this program, set on planted and on real drives.</summary>
internal static class CarJudgement
{
    /// <summary>Fewest crossings of a hump.</summary>
    public const int FewestEvents = 4;

    /// <summary>Fewest stretches of five seconds of rough road where there are fewer crossings.</summary>
    public const int FewestRough = 24;

    /// <summary>The least that a drive must narrow what was thought before.</summary>
    public const double LeastLearned = 0.5;

    // Windows of which two halves are fitted apart.
    private const int FewestHalved = 6;
    private const double HalvesApart = 3.2;

    // Another start that ends this near in likelihood, and farther off than this share of frequency or index, of damping.
    private const double AsLikely = 4.0;
    private const double Elsewhere = 0.02;
    private const double ElsewhereDamping = 0.1;

    private static readonly (double From, double To)[] Bands = [(0.4, 0.9), (0.9, 1.6), (1.6, 3.0), (3.0, 6.0), (6.0, 12.0 + 1e-9)];

    private static readonly (CarNumber Number, double Low, double High)[] Edges =
    [
        (CarNumber.FrontFrequency, 0.6, 4.0), (CarNumber.RearFrequency, 0.6, 4.0), (CarNumber.FrontDamping, 0.06, 0.9),
        (CarNumber.RearDamping, 0.06, 0.9), (CarNumber.PitchIndex, 0.6, 1.5),
    ];

    /// <summary>Whitened power by band, of the terms as they were last worked out.</summary>
    public static ImmutableArray<(ResidualBand Band, int Count)> Residuals(CarLikelihood likelihood)
    {
        var result = ImmutableArray.CreateBuilder<(ResidualBand, int)>();
        foreach (var (from, to) in Bands)
        {
            var (vertical, pitch, count) = (0.0, 0.0, 0);
            for (var w = 0; w < likelihood.Windows.Count; w++)
            {
                var window = likelihood.Windows[w];
                var left = likelihood.Terms[w].Residual;
                var n = window.Grid.Frequencies.Length;
                for (var k = 0; k < window.Used; k++)
                {
                    if (window.Grid.Frequencies[k] >= from && window.Grid.Frequencies[k] < to)
                    {
                        vertical += (left[k] * left[k]) + (left[n + k] * left[n + k]);
                        pitch += (left[(2 * n) + k] * left[(2 * n) + k]) + (left[(3 * n) + k] * left[(3 * n) + k]);
                        count++;
                    }
                }
            }

            if (count >= 4)
            {
                result.Add((new ResidualBand(from, Math.Round(to, 3), vertical / count, pitch / count), count));
            }
        }

        return result.ToImmutable();
    }

    /// <summary>Too few crossings and too little rough road.</summary>
    public static bool IsTooFew(IReadOnlyList<DriveWindow> windows) =>
        windows.Count(w => w.Site is not null) < FewestEvents && windows.Count(w => w.Site is null) < FewestRough;

    /// <summary>Another start that ended elsewhere, outside what the best one's interval holds, and is nearly as likely; null for none.</summary>
    /// <param name="starts">Where the starts ended.</param>
    /// <param name="estimates">The best one's numbers.</param>
    public static CarStart? Rival(IReadOnlyList<CarStart> starts, IReadOnlyList<CarEstimate> estimates)
    {
        var best = starts.First(s => s.Behind == 0.0);
        bool Is(CarNumber number, double share, double one, double other) =>
            Apart(one, other) > Math.Max(share, Apart(estimates[(int)number].High, estimates[(int)number].Value));
        return starts.FirstOrDefault(s => s.Behind is > 0.0 and < AsLikely && (
            Is(CarNumber.FrontFrequency, Elsewhere, s.FrontFrequency, best.FrontFrequency)
            || Is(CarNumber.RearFrequency, Elsewhere, s.RearFrequency, best.RearFrequency)
            || Is(CarNumber.PitchIndex, Elsewhere, s.PitchIndex, best.PitchIndex)
            || Is(CarNumber.FrontDamping, ElsewhereDamping, s.FrontDamping, best.FrontDamping)
            || Is(CarNumber.RearDamping, ElsewhereDamping, s.RearDamping, best.RearDamping)));
    }

    /// <summary>
    /// The headline in which two halves of the drive differ most, in joint standard errors; null where they agree or are too small.
    /// </summary>
    /// <param name="problem">The drive.</param>
    /// <param name="x">The end of its fit.</param>
    /// <param name="stop">Stops it.</param>
    public static (CarNumber Number, double Apart)? Halves(CarProblem problem, double[] x, CancellationToken stop)
    {
        if (problem.Windows.Count < FewestHalved)
        {
            return null;
        }

        var slopes = CarNumbers.Slopes(x, problem.Known.Wheelbase);
        var halves = new (double[] Logs, double[] Variances)?[2];
        Numerics.ParallelLoop.Each(2, -1, h =>
        {
            int[] numbers = [.. Enumerable.Range(0, problem.Windows.Count).Where(i => i % 2 == h)];
            var part = problem.Part(numbers);
            var fit = new CarFit(part.Likelihood, stop);
            var (at, _) = fit.Solve(CarProblem.Cut(problem, x, part, numbers), double.PositiveInfinity, 40, _ => false);
            if (CarPosterior.Of(fit, part.Likelihood, at) is { } posterior)
            {
                halves[h] = (CarNumbers.Logarithms(at, problem.Known.Wheelbase), [.. slopes.Select(s => posterior.Variance(s))]);
            }
        }, stop);
        if (halves[0] is not { } one || halves[1] is not { } other)
        {
            return null;
        }

        var (number, apart) = CarNumbers.Headlines
            .Select(n => (n, Math.Abs(one.Logs[(int)n] - other.Logs[(int)n]) / Math.Sqrt(one.Variances[(int)n] + other.Variances[(int)n])))
            .MaxBy(d => d.Item2);
        return apart > HalvesApart ? (number, apart) : null;
    }

    /// <summary>
    /// The band and channel that the model explains worst; null where all lie within bounds, which widen where few lines are counted.
    /// </summary>
    public static (ResidualBand Band, bool IsPitch)? Misfit(IReadOnlyList<(ResidualBand Band, int Count)> residuals)
    {
        (ResidualBand Band, bool IsPitch)? worst = null;
        var most = 1.0;
        foreach (var (band, count) in residuals)
        {
            // The mean of m squared complex normal numbers scatters by 1/√m about 1.
            var chance = 3.5 / Math.Sqrt(count);
            foreach (var (power, isPitch) in (ReadOnlySpan<(double, bool)>)[(band.Vertical, false), (band.Pitch, true)])
            {
                var outside = power < 1.0 ? (1.0 - power) / Math.Max(0.5, chance) : (power - 1.0) / Math.Max(0.8, chance);
                if (outside > most)
                {
                    (most, worst) = (outside, (band, isPitch));
                }
            }
        }

        return worst;
    }

    /// <summary>A value that no road car has.</summary>
    public static (CarNumber Number, double Value, double Low, double High)? Edge(IReadOnlyList<double> logs)
    {
        foreach (var (number, low, high) in Edges)
        {
            var value = Math.Exp(logs[(int)number]);
            if (!(value >= low && value <= high))
            {
                return (number, value, low, high);
            }
        }

        return null;
    }

    /// <summary>By what a swinging phone betrays itself; null where nothing does.</summary>
    public static string? SoftMount(ReadOnlySpan<double> x)
    {
        var gain = x[CarParameter.Gain];
        if (Math.Abs(gain) > 2.0 * CarLikelihood.GainSpread)
        {
            return Text($"pitch rate and vertical acceleration ask for gains {100.0 * (Math.Exp(gain) - 1.0):+0.0;-0.0} % apart, ")
                + "as they would if the wheelbase or the phone's place were another than said";
        }

        foreach (var (at, name) in (ReadOnlySpan<(int, string)>)[(CarParameter.FrontUnsprung, "front"), (CarParameter.RearUnsprung, "rear")])
        {
            var mass = Math.Exp(x[at]);
            if (!(mass is >= 0.05 and <= 0.30))
            {
                return Text($"the {name} wheels would weigh {mass:F2} of what stands on them, outside 0.05 to 0.30");
            }
        }

        return null;
    }

    private static double Apart(double one, double other) => Math.Abs(Math.Log(one / other));
}
