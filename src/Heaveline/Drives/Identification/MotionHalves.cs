using System.Collections.Immutable;
using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>
/// The gentler and the harder half of a drive's windows identified apart: a linear car is one car in both; friction, stops and dampers that bend with
/// speed make two of it. The windows are halved by the speed of their dampers.
/// </summary>
public sealed record MotionHalves
{
    // The harder half moves the dampers this much faster than the gentler one, or both tell of the same motion. A proposal of this program.
    private const double LeastApart = 1.25;

    /// <summary>Why the halves do not tell, a sentence; blank where they do.</summary>
    public string WhyNot { get; init => field = value ?? ""; } = "";

    /// <summary>The gentler half; null where it was not fitted.</summary>
    public MotionHalf? Gentle { get; init; }

    /// <summary>The harder half; null where it was not fitted.</summary>
    public MotionHalf? Hard { get; init; }

    /// <summary>The differences of the numbers that both halves tell.</summary>
    public ImmutableArray<HalfDifference> Differences { get; init; } = [];

    /// <summary>Identifies both halves, each from where the fit of the whole ended.</summary>
    /// <param name="windows">The windows that the car was identified from, in any order.</param>
    /// <param name="found">The car of all of them, believed.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static MotionHalves Of(IReadOnlyList<DriveWindow> windows, CarFromDrive found, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(windows);
        ArgumentNullException.ThrowIfNull(found);
        if (!found.IsBelieved || found.Known is not { } known)
        {
            return new MotionHalves { WhyNot = "Gentle and hard bumps are not told apart: the car of all of them is not believed." };
        }

        var problem = CarProblem.Of([.. CarIdentification.Order(windows).Select(i => windows[i])], known);
        double[] x = [.. found.Mean];
        var squares = CarMotion.Each(problem, x);
        int[] order = [.. Enumerable.Range(0, squares.Length).OrderBy(w => squares[w].Travel)];
        int[][] numbers = [[.. order[..(order.Length / 2)].Order()], [.. order[(order.Length / 2)..].Order()]];
        var motions = numbers.Select(half => CarMotion.Mean([.. half.Select(w => squares[w])])).ToArray();
        if (numbers.Any(half => CarJudgement.IsTooFew([.. half.Select(w => problem.Windows[w])])))
        {
            return new MotionHalves { WhyNot = RefusalWords.HalfTooFew(order.Length) };
        }

        if (motions[1].Travel < LeastApart * motions[0].Travel)
        {
            return new MotionHalves { WhyNot = RefusalWords.HalvesAlike(motions[0].Travel, motions[1].Travel) };
        }

        var fitted = new (MotionHalf Half, double[] Deviations, bool Fits)?[2];
        ParallelLoop.Each(2, -1, h => fitted[h] = Fitted(problem, x, numbers[h], motions[h], stop), stop);
        if (fitted[0] is not { Fits: true } gentle || fitted[1] is not { Fits: true } hard)
        {
            var which = fitted[0] is not { Fits: true } ? "gentler" : "harder";
            return new MotionHalves { WhyNot = RefusalWords.HalfUntold(which), Gentle = fitted[0]?.Half, Hard = fitted[1]?.Half };
        }

        var freedom = Math.Min(gentle.Half.Windows, hard.Half.Windows) - 1;
        var (ninety, all) = (LeastSquares.Student(freedom, 0.9), LeastSquares.Student(freedom, 1.0 - (0.1 / CarNumbers.Headlines.Count)));
        var told = CarNumbers.Headlines.Where(n => gentle.Half.Of(n).IsSaid && hard.Half.Of(n).IsSaid).Select(n =>
        {
            var by = Math.Log(hard.Half.Of(n).Value / gentle.Half.Of(n).Value);
            var spread = Math.Sqrt(Square(gentle.Deviations[(int)n]) + Square(hard.Deviations[(int)n]));
            return new HalfDifference(
                n, Math.Exp(by), Math.Exp(by - (ninety * spread)), Math.Exp(by + (ninety * spread)), Math.Abs(by) > all * spread);
        });
        ImmutableArray<HalfDifference> differences = [.. told];
        return new MotionHalves
        {
            WhyNot = differences.IsEmpty ? RefusalWords.HalvesApart : "",
            Gentle = gentle.Half,
            Hard = hard.Half,
            Differences = differences,
        };
    }

    private static (MotionHalf Half, double[] Deviations, bool Fits)? Fitted(
        CarProblem whole, double[] x, int[] numbers, (double Travel, double Pitch) motion, CancellationToken stop)
    {
        var part = whole.Part(numbers);
        var fit = new CarFit(part.Likelihood, stop);
        var (at, _) = fit.Solve(CarProblem.Cut(whole, x, part, numbers), double.PositiveInfinity, 40, _ => false);
        if (CarPosterior.Of(fit, part.Likelihood, at) is not { } posterior)
        {
            return null;
        }

        var fits = CarJudgement.Misfit(CarJudgement.Residuals(part.Likelihood)) is null;
        var wheelbase = whole.Known.Wheelbase;
        var (logs, slopes) = (CarNumbers.Logarithms(at, wheelbase), CarNumbers.Slopes(at, wheelbase));
        if (logs.Any(l => !double.IsFinite(l)))
        {
            return null;
        }

        var deviations = slopes.Select(s => Math.Sqrt(posterior.Variance(s))).ToArray();
        var informed = slopes.Select(s => Math.Sqrt(posterior.Informed(s))).ToArray();
        var half = new MotionHalf
        {
            Windows = numbers.Length,
            TravelSpeed = motion.Travel,
            PitchMotion = motion.Pitch,
            Estimates = CarReading.Estimates(whole.Known, at, logs, slopes, deviations, informed, posterior.Student),
        };
        return (half, [.. deviations.Select((d, i) => Math.Sqrt(Square(d) + Square(CarNumbers.Floor(CarNumbers.All[i]))))],
            fits && CarJudgement.Edge(logs) is null && CarJudgement.SoftMount(at) is null);
    }

    private static double Square(double x) => x * x;
}
