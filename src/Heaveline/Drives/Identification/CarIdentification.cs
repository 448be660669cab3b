using System.Collections.Immutable;
using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>The car identified from windows of a drive, and what a drive that was never driven would tell of a car.</summary>
public static class CarIdentification
{
    // Ride frequencies at which the fits start, Hz: a soft car and a stiff one.
    private static readonly (double Front, double Rear)[] Starts = [(1.15, 1.25), (1.5, 1.7)];

    /// <summary>What is said where the wheelbase is not known.</summary>
    public static CarFromDrive WithoutWheelbase { get; } = new() { Refusals = [RefusalWords.NoWheelbase] };

    /// <summary>Identifies the car. The same windows in any order give the same car, on any number of cores the same bits.</summary>
    /// <param name="windows">Windows of one drive.</param>
    /// <param name="known">What is known before it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static CarFromDrive Of(IReadOnlyList<DriveWindow> windows, IdentificationKnown known, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(windows);
        ArgumentNullException.ThrowIfNull(known);
        if (Nothing(windows) is { } nothing)
        {
            return nothing;
        }

        var order = Order(windows);
        DriveWindow[] ordered = [.. order.Select(i => windows[i])];
        var ends = Fitted(ordered, known, Starts, stop);
        var best = ends.MinBy(e => e.Value);
        return new CarReading(best.Problem, best.At, best.Value, ends, stop).Read(order);
    }

    /// <summary>
    /// The car near one that was identified from nearly the same windows, within a moment: a single fit, begun where that one ended. That no other
    /// car explains the drive as well is not looked for; <see cref="Of"/> does, and its numbers are this one's to what a fit leaves open.
    /// </summary>
    /// <param name="windows">Windows of one drive.</param>
    /// <param name="known">What is known before it.</param>
    /// <param name="former">The car identified before.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    internal static CarFromDrive Near(
        IReadOnlyList<DriveWindow> windows, IdentificationKnown known, CarFromDrive former, CancellationToken stop)
    {
        if (Nothing(windows) is { } nothing)
        {
            return nothing;
        }

        var order = Order(windows);
        var problem = CarProblem.Of([.. order.Select(i => windows[i])], known);
        var (at, value) = new CarFit(problem.Likelihood, stop).Solve(problem.From(former), double.PositiveInfinity, 40, _ => false);
        return new CarReading(problem, at, value, [(problem, at, value)], stop).Read(order);
    }

    // What no car can be read from.
    private static CarFromDrive? Nothing(IReadOnlyList<DriveWindow> windows) =>
        windows.Count == 0 ? new CarFromDrive { Refusals = [RefusalWords.Nothing] }
        : windows.Any(w => w.PitchRate.Length != w.Vertical.Length) ? new CarFromDrive { Refusals = [RefusalWords.NoGyro] }
        : null;

    /// <summary>
    /// The intervals that a drive would give if the car were this one, from the expected Fisher information; each estimate's value is the car's own.
    /// </summary>
    /// <param name="car">The car.</param>
    /// <param name="drive">The drive.</param>
    /// <param name="known">What is known before it; its wheelbase is not read, the car's is.</param>
    /// <param name="first">A drive already driven whose information of the car counts too; null: none.</param>
    public static ImmutableArray<CarEstimate> Expected(
        LinearCar car, PlannedDrive drive, IdentificationKnown known, CarFromDrive? first = null)
    {
        ArgumentNullException.ThrowIfNull(car);
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(known);
        known = known with { Wheelbase = car.Wheelbase };
        var p = CarNumbers.Parameters(car);
        double[] shared =
        [
            .. p, Math.Log(drive.Roughness), Math.Log(drive.VerticalNoise),
            // Without a gyro the pitch rate says nothing: a noise that drowns it.
            Math.Log(drive.HasTurnRate ? drive.PitchNoise : 1e6), 0.0,
        ];
        var information = new DriveInformation(known, shared);
        var humps = drive.Humps.OrderBy(h => h.Key, StringComparer.Ordinal)
            .ToDictionary(h => h.Key, h => information.Hump(h.Value.Length, h.Value.Heights, drive.Passes
                .Where(p => p.Site == h.Key).Select(p => p.Speed / Math.Min(known.Band, CarProblem.BandShare * drive.Rate)).DefaultIfEmpty().Min()));
        foreach (var pass in drive.Passes)
        {
            var hump = pass.Site is { } site ? humps[site] : -1;
            information.Add(
                pass.Count, pass.Speed, pass.SpeedSpread, hump, drive.Rate, Math.Min(known.Band, CarProblem.BandShare * drive.Rate));
        }

        var (logs, slopes) = (CarNumbers.Logarithms(p, car.Wheelbase), CarNumbers.Slopes(p, car.Wheelbase));
        var deviations = information.Deviations(slopes, first);
        var windows = information.Count + (first?.Windows.Length ?? 0);
        return CarReading.Estimates(known, p, logs, slopes, deviations, deviations, CarPosterior.Quantile(windows));
    }

    /// <summary>An order of their own: that in which they were given moves nothing, and both halves hold like passes.</summary>
    internal static int[] Order(IReadOnlyList<DriveWindow> windows) =>
    [
        .. Enumerable.Range(0, windows.Count)
            .OrderBy(i => windows[i].Site is null).ThenBy(i => windows[i].Site, StringComparer.Ordinal)
            .ThenBy(i => windows[i].Speed).ThenBy(i => windows[i].Vertical[windows[i].Vertical.Length / 3]),
    ];

    internal static (CarProblem Problem, double[] At, double Value)[] Fitted(
        DriveWindow[] windows, IdentificationKnown known, (double Front, double Rear)[] starts, CancellationToken stop)
    {
        var ends = new (CarProblem, double[], double)[starts.Length];
        ParallelLoop.Each(starts.Length, -1, i =>
        {
            var problem = CarProblem.Of(windows, known);
            var (at, value) = new CarFit(problem.Likelihood, stop).From(starts[i].Front, starts[i].Rear);
            ends[i] = (problem, at, value);
        }, stop);
        return ends;
    }
}
