using System.Collections.Immutable;
using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>The car identified from windows of a drive.</summary>
public static class CarIdentification
{
    // Ride frequencies at which the fits start, Hz: a soft car and a stiff one.
    private static readonly (double Front, double Rear)[] Starts = [(1.15, 1.25), (1.5, 1.7)];

    /// <summary>Identifies the car.</summary>
    /// <param name="windows">Windows of one drive.</param>
    /// <param name="known">What is known before it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static CarFromDrive Of(IReadOnlyList<DriveWindow> windows, IdentificationKnown known, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(windows);
        ArgumentNullException.ThrowIfNull(known);
        var problem = CarProblem.Of(windows, known);
        var ends = new (CarFit Fit, double[] At, double Value)[Starts.Length];
        ParallelLoop.Each(Starts.Length, -1, i =>
        {
            var own = i == 0 ? problem : CarProblem.Of(windows, known);
            var fit = new CarFit(own.Likelihood, stop);
            var (at, value) = fit.From(Starts[i].Front, Starts[i].Rear);
            ends[i] = (fit, at, value);
        }, stop);
        var best = ends.MinBy(e => e.Value);
        var posterior = CarPosterior.Of(new CarFit(problem.Likelihood, stop), problem.Likelihood, best.At)!;
        var logs = CarNumbers.Logarithms(best.At, known.Wheelbase);
        var slopes = CarNumbers.Slopes(best.At, known.Wheelbase);
        return new CarFromDrive
        {
            Estimates = [.. CarNumbers.All.Select((number, i) =>
            {
                var half = posterior.Student * Math.Sqrt(posterior.Variance(slopes[i]) + Math.Pow(CarNumbers.Floor(number), 2));
                return new CarEstimate
                {
                    Number = number, Value = Math.Exp(logs[i]), Low = Math.Exp(logs[i] - half), High = Math.Exp(logs[i] + half),
                    Learned = 0, IsSaid = true,
                };
            })],
            Starts = [.. ends.Select(e => new CarStart(e.At[0], e.At[1], e.Fit.Scorings, 0, 0, e.Value))],
        };
    }

    /// <summary>Expected.</summary>
    public static ImmutableArray<CarEstimate> Expected(
        LinearCar car, PlannedDrive drive, IdentificationKnown known, CarFromDrive? first = null) => throw new NotImplementedException();
}
