using System.Collections.Immutable;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>
/// The two-minute test of a fitted car: the windows in which its readings must lie, found step by step on every other car: each step sets the one
/// end of one window that parts cars that break the promise from those that keep it best, as long as it helps. How well it does is told of the
/// other cars.
/// </summary>
/// <param name="Windows">The windows, none twice of one reading.</param>
/// <param name="Caught">Share of the cars that break the promise which it turns away (–).</param>
/// <param name="Mistaken">Share of the cars that keep it which it turns away (–).</param>
/// <param name="Passed">Share of the cars that pass which keep the promise (–).</param>
public sealed record ToleranceTest(ImmutableArray<ToleranceWindow> Windows, double Caught, double Mistaken, double Passed)
{
    // A further limit must turn away so many more of the right cars than of the wrong ones: a choice of ours.
    private const double Worth = 0.02;

    // Limits are tried at so many shares of the readings.
    private const int Tried = 40;

    // Fewer than one in twenty of either kind tell too little.
    private const int Fewest = 20;

    /// <summary>What is read, in order.</summary>
    internal static readonly ImmutableArray<WorkshopReading> Readings =
    [
        WorkshopReading.FrontHeight, WorkshopReading.RearHeight, WorkshopReading.RearOverFront, WorkshopReading.FrontSwings,
        WorkshopReading.RearSwings,
    ];

    /// <summary>The test; null where fewer than one car in twenty breaks the promise, or keeps it.</summary>
    /// <param name="readings"><see cref="Readings"/> of each car, shape (readings)(cars).</param>
    /// <param name="breaks">Whether each car breaks the promise.</param>
    internal static ToleranceTest? Of(IReadOnlyList<double[]> readings, IReadOnlyList<bool> breaks)
    {
        int[] learned = [.. Enumerable.Range(0, breaks.Count).Where(i => i % 2 == 0)];
        int[] proved = [.. Enumerable.Range(0, breaks.Count).Where(i => i % 2 == 1)];
        if (IsFew(learned) || IsFew(proved))
        {
            return null;
        }

        var windows = new SortedDictionary<int, ToleranceWindow>();
        for (var best = 0.0; Next(windows, learned, readings, breaks) is var (window, parts) && parts > best + Worth; best = parts)
        {
            windows[Readings.IndexOf(window.Reading)] = window;
        }

        var (caught, mistaken) = Shares(windows.Values, proved, readings, breaks);
        var passing = proved.Where(i => !IsTurnedAway(windows.Values, i, readings)).ToArray();
        return new([.. windows.Values], caught, mistaken, passing.Length == 0 ? 0.0 : passing.Count(i => !breaks[i]) / (double)passing.Length);

        bool IsFew(int[] cars) => cars.Length == 0
            || cars.Count(i => breaks[i]) is var broken && Math.Min(broken, cars.Length - broken) * Fewest < cars.Length;
    }

    private static (ToleranceWindow Window, double Parts) Next(
        SortedDictionary<int, ToleranceWindow> windows, int[] cars, IReadOnlyList<double[]> readings, IReadOnlyList<bool> breaks)
    {
        var best = (Window: (ToleranceWindow)null!, Parts: double.NegativeInfinity);
        foreach (var (k, reading) in Readings.Index())
        {
            double[] sorted = [.. cars.Select(i => readings[k][i]).Order()];
            var now = windows.GetValueOrDefault(k) ?? new(reading, double.NegativeInfinity, double.PositiveInfinity);
            for (var t = 1; t < Tried; t++)
            {
                var at = sorted[t * sorted.Length / Tried];
                foreach (var window in new[] { now with { Low = at }, now with { High = at } })
                {
                    var (caught, mistaken) = Shares(
                        [.. windows.Values.Where(w => w.Reading != reading), window], cars, readings, breaks);
                    best = caught - mistaken > best.Parts ? (window, caught - mistaken) : best;
                }
            }
        }

        return best;
    }

    private static (double Caught, double Mistaken) Shares(
        IReadOnlyCollection<ToleranceWindow> windows, int[] cars, IReadOnlyList<double[]> readings, IReadOnlyList<bool> breaks)
    {
        var (caught, mistaken, broken) = (0, 0, 0);
        foreach (var i in cars)
        {
            var isTurned = IsTurnedAway(windows, i, readings);
            broken += breaks[i] ? 1 : 0;
            caught += isTurned && breaks[i] ? 1 : 0;
            mistaken += isTurned && !breaks[i] ? 1 : 0;
        }

        return (caught / (double)broken, mistaken / (double)(cars.Length - broken));
    }

    private static bool IsTurnedAway(IReadOnlyCollection<ToleranceWindow> windows, int car, IReadOnlyList<double[]> readings) =>
        windows.Any(w => !w.Holds(readings[Readings.IndexOf(w.Reading)][car]));
}
