using System.Collections.Immutable;
using Heaveline.Numerics;

namespace Heaveline.Drives.Events;

/// <summary>How strong a drive's motion is at each frequency: over its bumps, and on the road between.</summary>
public sealed record EventSpectra
{
    // Of a window, s, and how much of it lies before a bump.
    private const double Window = 5.12;
    private const double Before = 1.0;

    /// <summary>Frequencies, Hz, shape (n).</summary>
    public required ImmutableArray<double> Frequencies { get; init; }

    /// <summary>Vertical acceleration over the bumps that count, the mean of them, m²/s³; empty where none counts.</summary>
    public required ImmutableArray<double> VerticalOfBumps { get; init; }

    /// <summary>Vertical acceleration between, the median of windows in which the car moves, m²/s³; empty where there is none.</summary>
    public required ImmutableArray<double> VerticalBetween { get; init; }

    /// <summary>Pitch rate over the bumps, rad²/s; empty as the other, and where there is no pitch.</summary>
    public required ImmutableArray<double> RateOfBumps { get; init; }

    /// <summary>Pitch rate between, rad²/s.</summary>
    public required ImmutableArray<double> RateBetween { get; init; }

    /// <summary>The spectra of a drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    public static EventSpectra Of(Drive drive, DriveEvents events)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(events);
        var n = 2 * (int)Math.Round(0.5 * Window * drive.Rate);
        var bins = (int)(0.4 * n) + 1;
        int[] bumps = [.. events.Kept
            .Select(e => (int)Math.Round((e.Onset - Before - drive.Start) * drive.Rate)).Where(i => i >= 0 && i + n <= drive.Vertical.Length)];
        int[] between = [.. Between(drive, events, n)];
        return new EventSpectra
        {
            Frequencies = [.. Enumerable.Range(1, bins - 1).Select(k => k * drive.Rate / n)],
            VerticalOfBumps = Mean(Densities(drive, drive.Vertical, bumps, n, bins)),
            VerticalBetween = Median(Densities(drive, drive.Vertical, between, n, bins)),
            RateOfBumps = drive.PitchRate.IsEmpty ? [] : Mean(Densities(drive, drive.PitchRate, bumps, n, bins)),
            RateBetween = drive.PitchRate.IsEmpty ? [] : Median(Densities(drive, drive.PitchRate, between, n, bins)),
        };
    }

    // Windows in which the car moves and no bump lies.
    private static IEnumerable<int> Between(Drive drive, DriveEvents events, int n)
    {
        foreach (var (first, last) in drive.Covered)
        {
            for (var from = first; from + n <= last; from += n / 2)
            {
                var (begin, end) = (drive.Time(from), drive.Time(from + n));
                var isMoving = drive.Speed.IsEmpty || drive.Speed[from + (n / 2)] >= EventFinder.Creeping;
                if (isMoving && !events.Events.Any(e => e.Onset - 0.5 < end && e.SettlingUntil > begin))
                {
                    yield return from;
                }
            }
        }
    }

    private static List<double[]> Densities(Drive drive, ImmutableArray<double> signal, int[] windows, int n, int bins)
    {
        double[] shape = [.. Enumerable.Range(0, n).Select(k => 0.5 - (0.5 * Math.Cos(2.0 * Math.PI * (k + 0.5) / n)))];
        var scale = 2.0 / (drive.Rate * shape.Sum(w => w * w));
        var result = new List<double[]>();
        foreach (var from in windows)
        {
            var part = signal.AsSpan()[from..(from + n)].ToArray();
            var mean = part.Average();
            for (var k = 0; k < n; k++)
            {
                part[k] = (part[k] - mean) * shape[k];
            }

            var of = RealFourier.Of(part);
            result.Add([.. Enumerable.Range(1, bins - 1).Select(k => scale * ((of[k].Real * of[k].Real) + (of[k].Imaginary * of[k].Imaginary)))]);
        }

        return result;
    }

    private static ImmutableArray<double> Mean(List<double[]> of) =>
        of.Count == 0 ? [] : [.. Enumerable.Range(0, of[0].Length).Select(k => of.Average(d => d[k]))];

    private static ImmutableArray<double> Median(List<double[]> of) =>
        of.Count == 0 ? [] : [.. Enumerable.Range(0, of[0].Length).Select(k => Middle.Of([.. of.Select(d => d[k])]))];
}
