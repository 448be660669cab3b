using System.Globalization;
using Heaveline.Cars;
using Heaveline.Drives.Identification;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// Indirect inference [Gouriéroux, Monfort, Renault, Indirect inference, J. Appl. Econometrics 8 (1993) S85; from memory]: factors of a car are
/// moved by Gauss–Newton until the estimator says of the car's own passes what it says of the drive.
/// </summary>
internal sealed class TwinSearch
{
    // How many times every pass is computed, each time with another roughness and noise: what chance adds to the variance falls by it.
    private const int Times = 4;
    private const int MostWindows = 24;

    // Passes whose wheels stay on the road, if there are as many.
    private const int Fewest = 8;
    private const int MostSteps = 8;

    // A factor has come to rest when it moves by less than this share of its standard deviation.
    private const double Settled = 0.05;
    private const double LongestStep = 0.3;
    private const double LeastLearned = 0.5;

    // Standard deviations of ln of the factors before the drive: a spring's table is surer than a damper's. Common practice, no source.
    private static readonly double[] Before = [0.3, 0.3, 0.5, 0.5, 0.3, 0.15];

    // Steps of the differences.
    private static readonly double[] Differences = [0.08, 0.08, 0.12, 0.12, 0.4, 0.06];

    private readonly Car car;
    private readonly LoadState load;
    private readonly CancellationToken stop;
    private readonly TwinFit fit;
    private readonly TwinPasses passes;
    private readonly DriveWindow[] windows;
    private int computed;

    public TwinSearch(
        Car car, LoadState load, CarFromDrive found, IReadOnlyList<DriveWindow> all, double phoneLeft, CancellationToken stop)
    {
        (this.car, this.load, this.stop) = (car, load, stop);
        var chosen = Chosen(all);
        // A wheel in the air is no spring and no damper: passes that throw one up say little of either, and their hump is told wrong.
        var holds = new TwinPasses(car, found, chosen, phoneLeft, 1, stop).Holds(RideModel.Of(car, load), stop);
        DriveWindow[] held = [.. chosen.Where((_, w) => holds[w])];
        windows = held.Length >= Fewest ? held : chosen;
        fit = new TwinFit(found, found.Known!, stop);
        passes = new TwinPasses(car, found, windows, phoneLeft, Times, stop);
    }

    public Twin Run()
    {
        var covariance = new double[TwinFit.Count, TwinFit.Count];
        if (fit.Of(windows, null, 40, covariance) is not { Numbers: var drive })
        {
            return Refused("the estimator does not come to rest on this drive.");
        }

        var weight = (Matrix<double>.Build.DenseOfArray(covariance) * (1.0 + (1.0 / Times))).Inverse();
        var prior = Matrix<double>.Build.DenseOfDiagonalArray([.. Before.Select(s => 1.0 / (s * s))]);
        var starts = new double[]?[Times];
        var logs = new double[TwinScales.Count];
        if (Numbers(logs, starts, Times, 40, keep: true) is not { } file)
        {
            return Refused("a pass of the car file over the recovered road leaves the range of its model.");
        }

        if (Slopes(starts) is not { } slopes)
        {
            return Refused("a pass of the scaled car over the recovered road leaves the range of its model.");
        }

        var information = (slopes.Transpose() * weight * slopes) + prior;
        var variance = information.Inverse();
        var (now, steps) = (file, 0);
        for (var moved = double.PositiveInfinity; moved > Settled && steps < MostSteps; steps++)
        {
            var off = Vector<double>.Build.Dense(TwinFit.Count, i => drive[i] - now[i]);
            var gradient = (slopes.Transpose() * weight * off) - (prior * Vector<double>.Build.DenseOfArray(logs));
            var by = information.Solve(gradient);
            moved = by.Select((step, k) => Math.Abs(step) / Math.Sqrt(variance[k, k])).Max();
            logs = [.. logs.Select((x, k) => x + Math.Clamp(by[k], -LongestStep, LongestStep))];
            if (Numbers(logs, starts, Times, 20, keep: true) is not { } next)
            {
                return Refused("a pass of the scaled car over the recovered road leaves the range of its model.");
            }

            now = next;
        }

        var left = Vector<double>.Build.Dense(TwinFit.Count, i => drive[i] - now[i]);
        var misfit = left * weight * left;
        return Said(logs, variance, covariance, drive, file, now, steps, misfit);
    }

    // Bumps first, spread over all of them; rough road where there are too few.
    private static DriveWindow[] Chosen(IReadOnlyList<DriveWindow> all)
    {
        DriveWindow[] bumps = [.. all.Where(w => w.Site is not null)];
        DriveWindow[] from = bumps.Length >= 4 ? bumps : [.. all];
        return from.Length <= MostWindows
            ? from
            : [.. Enumerable.Range(0, MostWindows).Select(i => from[i * from.Length / MostWindows])];
    }

    // The mean over the first laps. Where they are kept, each next fit begins where this one ended, and the humps are corrected.
    private double[]? Numbers(double[] logs, double[]?[] starts, int times, int most, bool keep)
    {
        var model = RideModel.Of(Scaled(logs), load);
        var ends = new (double[] Numbers, double[] At, CarProblem Problem)?[times];
        ParallelLoop.Each(times, -1, lap => ends[lap] = passes.Of(lap, model, stop) is { } there ? fit.Of(there, starts[lap], most) : null, stop);
        computed += times * windows.Length;
        var mean = new double[TwinFit.Count];
        for (var lap = 0; lap < times; lap++)
        {
            if (ends[lap] is not { } end)
            {
                return null;
            }

            starts[lap] = keep ? end.At : starts[lap];
            for (var i = 0; i < mean.Length; i++)
            {
                mean[i] += end.Numbers[i] / times;
            }
        }

        if (keep)
        {
            passes.Correct(Seen, stop);
        }

        return mean;

        double[]? Seen(string site)
        {
            var (problem, h) = (ends[0]!.Value.Problem, Array.IndexOf(ends[0]!.Value.Problem.Sites, site));
            return h < 0 ? null
                : [.. Enumerable.Range(problem.Likelihood.HumpAt[h], problem.Likelihood.Splines[h].Count)
                    .Select(at => ends.Average(end => end!.Value.At[at]))];
        }
    }

    private Matrix<double>? Slopes(double[]?[] starts)
    {
        // On one lap: what chance does to its numbers falls out of their differences.
        if (Numbers(new double[TwinScales.Count], starts, 1, 8, keep: false) is not { } here)
        {
            return null;
        }

        var slopes = Matrix<double>.Build.Dense(TwinFit.Count, TwinScales.Count);
        for (var k = 0; k < TwinScales.Count; k++)
        {
            var logs = new double[TwinScales.Count];
            logs[k] = Differences[k];
            if (Numbers(logs, starts, 1, 8, keep: false) is not { } there)
            {
                return null;
            }

            for (var i = 0; i < TwinFit.Count; i++)
            {
                slopes[i, k] = (there[i] - here[i]) / Differences[k];
            }
        }

        return slopes;
    }

    private Car Scaled(double[] logs) => TwinScales.Of(car, [.. logs.Select(Math.Exp)]);

    private Twin Refused(string why) => new()
    {
        Car = car,
        Factors = [],
        Numbers = [],
        Steps = 0,
        Passes = computed,
        Misfit = double.NaN,
        Refusal = "No twin of the car file: " + why,
    };

    private Twin Said(
        double[] logs, Matrix<double> variance, double[,] covariance, double[] drive, double[] file, double[] now, int steps, double misfit)
    {
        var student = CarPosterior.Quantile(windows.Length);
        var most = ChiSquared.InvCDF(TwinFit.Count, 0.999);
        return new Twin
        {
            Car = Scaled(logs),
            Factors = [.. logs.Select((log, k) => Factor((TwinScale)k, log, Math.Sqrt(variance[k, k]), student))],
            Numbers = [.. drive.Select((number, i) => new TwinNumber(
                TwinFit.Number(i),
                Around(number, student * Math.Sqrt(covariance[i, i])),
                Math.Exp(file[i]),
                Math.Exp(now[i])))],
            Steps = steps,
            Passes = computed,
            Misfit = misfit,
            Refusal = misfit <= most ? "" : string.Create(
                CultureInfo.InvariantCulture,
                $"No twin of the car file: no factors of its springs, dampers, friction and inertia make it move as "
                + $"the drive did (misfit {misfit:F0}, ")
                + string.Create(CultureInfo.InvariantCulture, $"{most:F0} at most). Something else differs: load, stops, tyres, the phone's place."),
        };
    }

    private TwinFactor Factor(TwinScale scale, double log, double deviation, double student)
    {
        var learned = Math.Clamp(1.0 - (deviation / Before[(int)scale]), 0.0, 1.0);
        var nothing = scale == TwinScale.Friction && car.Front.Friction.HalfWidth.Si == 0.0 && car.Rear.Friction.HalfWidth.Si == 0.0;
        return new TwinFactor(
            scale,
            Around(log, student * deviation),
            learned,
            nothing ? "the car file has no friction to multiply"
                : learned >= LeastLearned ? ""
                : FormattableString.Invariant($"the drive took away {In.Percent.Of(learned):F0} % of its doubt only"));
    }

    private static Bracket Around(double log, double half) => new(Math.Exp(log), Math.Exp(log - half), Math.Exp(log + half));
}
