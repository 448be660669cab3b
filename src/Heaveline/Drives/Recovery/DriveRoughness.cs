using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// How rough the road of a drive is all along, between its bumps, through the car that the drive tells: vertical acceleration and pitch rate of short
/// windows of the drive against the same car over a road of density G·(n/0.1)⁻², G by the greatest likelihood, a stretch at a time.
/// </summary>
public sealed record DriveRoughness
{
    /// <summary>Length of a stretch, m.</summary>
    public const double Stretch = 100.0;

    // Windows, s, and the step by which they are moved on past what is not read.
    private const double Window = 2.5;
    private const double Step = 0.25;

    // Slower, or less steady over a window, tells nothing of a road's waves.
    private const double Slowest = 4.0;
    private const double Steady = 0.3;

    // A bump is felt this long before its onset, s.
    private const double Before = 0.3;

    // Where no bump was found though one lies there, the car is given this long to settle, s.
    private const double Settling = 3.0;

    /// <summary>The stretches of which something was read, in the order of the drive.</summary>
    public ImmutableArray<RoughStretch> Stretches { get; init; } = [];

    /// <summary>Why there are none, a sentence; blank where there are.</summary>
    public string WhyNot { get; init => field = value ?? ""; } = "";

    /// <summary>The roughness along a drive.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    /// <param name="trust">What it is good for.</param>
    /// <param name="found">The car identified from it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">The car was not identified, or is not believed.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DriveRoughness Of(Drive drive, DriveEvents events, Trust trust, CarFromDrive found, CancellationToken stop = default) =>
        Of(drive, events, MissedPass.Of(drive, events), trust, found, stop);

    /// <summary>The same where passes that may have been missed were looked for before.</summary>
    /// <param name="drive">The drive.</param>
    /// <param name="events">Its bumps.</param>
    /// <param name="missed">Passes over them that may have been missed.</param>
    /// <param name="trust">What it is good for.</param>
    /// <param name="found">The car identified from it.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">As above.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    internal static DriveRoughness Of(
        Drive drive, DriveEvents events, IReadOnlyList<MissedPass> missed, Trust trust, CarFromDrive found, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(drive);
        ArgumentNullException.ThrowIfNull(events);
        ArgumentNullException.ThrowIfNull(trust);
        ArgumentNullException.ThrowIfNull(found);
        if (!found.IsBelieved || found.Known is not { } known)
        {
            throw new RefusedValueException("car of the drive", "not believed", "believed", "The road is told by the car that feels it.");
        }

        if (drive.Speed.IsEmpty)
        {
            return new DriveRoughness { WhyNot = "The roughness along the road is not told: this log has no speed." };
        }

        var count = (int)Math.Round(Window * drive.Rate);
        var density = new DensityFit(found, new SpectralGrid(count, drive.Rate, Math.Min(known.Band, CarProblem.BandShare * drive.Rate)));
        var places = Places(drive);
        var stretches = Windows(drive, events, missed, trust, count).GroupBy(first => (int)(places[first + (count / 2)] / Stretch)).ToArray();
        double[] Speeds(IEnumerable<int> firsts) => [.. firsts.Select(f => (places[f + count - 1] - places[f]) * drive.Rate / (count - 1))];
        var densities = density.Of([.. stretches.Select(firsts => firsts.Zip(Speeds(firsts), (f, v) => new DriveWindow
        {
            Rate = drive.Rate, Vertical = drive.Vertical.Slice(f, count), PitchRate = drive.PitchRate.Slice(f, count), Speed = v,
        }).ToArray())], stop);
        RoughStretch[] result = [.. stretches.Zip(densities, (firsts, of) =>
        {
            var speeds = Speeds(firsts);
            return new RoughStretch
            {
                From = Stretch * firsts.Key,
                To = Stretch * (firsts.Key + 1),
                At = drive.Time(Entered(places, Stretch * firsts.Key)),
                Read = firsts.Sum(f => places[f + count - 1] - places[f]),
                Speed = speeds.Average(),
                Density = of.Density,
                Low = of.Density * Math.Exp(-of.HalfWidth),
                High = of.Density * Math.Exp(of.HalfWidth),
                ShortestWave = speeds.Max() / density.Highest,
                LongestWave = speeds.Min() / DensityFit.Lowest,
            };
        })];
        return new DriveRoughness
        {
            Stretches = [.. result],
            WhyNot = result.Length > 0 ? "" : "The roughness along the road is not told: no stretch of it between bumps was driven steadily.",
        };
    }

    // Metres along the drive at every instant of the grid.
    private static double[] Places(Drive drive)
    {
        var places = new double[drive.Speed.Length];
        for (var i = 1; i < places.Length; i++)
        {
            places[i] = places[i - 1] + (0.5 * (drive.Speed[i - 1] + drive.Speed[i]) / drive.Rate);
        }

        return places;
    }

    private static int Entered(double[] places, double at)
    {
        var found = Array.BinarySearch(places, at);
        return Math.Clamp(found < 0 ? ~found : found, 0, places.Length - 1);
    }

    // First samples of windows side by side, of all that is read.
    private static IEnumerable<int> Windows(Drive drive, DriveEvents events, IReadOnlyList<MissedPass> missed, Trust trust, int count)
    {
        var step = Math.Max(1, (int)Math.Round(Step * drive.Rate));
        foreach (var (from, to) in drive.Covered)
        {
            var first = from;
            while (first + count <= to + 1)
            {
                var isRead = IsRead(drive, events, missed, trust, first, count);
                if (isRead)
                {
                    yield return first;
                }

                first += isRead ? count : step;
            }
        }
    }

    private static bool IsRead(Drive drive, DriveEvents events, IReadOnlyList<MissedPass> missed, Trust trust, int first, int count)
    {
        var (start, end, slow, fast) = (drive.Time(first), drive.Time(first + count), double.PositiveInfinity, 0.0);
        foreach (var v in drive.Speed.AsSpan(first, count))
        {
            (slow, fast) = (Math.Min(slow, v), Math.Max(fast, v));
        }

        return slow >= Slowest && fast - slow <= Steady * slow
            && !events.Events.Any(e => e.Onset - Before < end && e.SettlingUntil > start)
            && !missed.Any(m => m.From - Before < end && m.Until + Settling > start)
            && !trust.Dropped.Any(d => d.Part.From < end && d.Part.To > start);
    }
}
