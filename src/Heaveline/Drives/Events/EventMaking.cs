using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Numerics;

namespace Heaveline.Drives.Events;

/// <summary>From a drive to its events: found, timed, dropped with a reason, brought to sites, measured.</summary>
internal sealed class EventMaking(
    Drive drive, Trust trust, EventSettings settings, SeenBumps? former, CancellationToken stop, IReadOnlyDictionary<string, double[]>? shared = null)
{
    // Half-widths have a floor: no bump's edge is as sharp as the fit says, s and share of the length.
    private const double LeastOnset = 0.01;
    private const double LeastLength = 0.04;

    // How near an instant must be named to mean a bump, s; how exactly a user says when one began.
    private const double Near = 1.0;
    private const double SaidWithin = 0.4;

    // The longest bump that is looked for, m, and how far back the window reaches, s.
    private const double Longest = 10.0;
    private const double Back = 3.0;
    private const double Forward = 0.2;
    private const double Unknown = 1.3;

    // Bumps of which so much is accounted for say what car it is; many are worth two, since what no usual car does is the same in all of them.
    private const double Accounted = 0.5;

    // Of less than this share of the motion accounted for it is no bump that both axles drove over: planted ones have 0.25 to 0.9 but for the lowest
    // on the roughest roads, what stands out on real rough roads 0.02 to 0.3.
    private const double Least = 0.25;
    private const double Pool = 2.0;

    private readonly double wheelbase = settings.WheelbaseTaken;

    // From the first to the last that is read.
    private (double From, double To) Span => (drive.Time(drive.Covered[0].First), drive.Time(drive.Covered[^1].Last));

    private IEnumerable<double> Added => settings.Added.Where(a => a >= Span.From && a <= Span.To);

    /// <summary>The events.</summary>
    public DriveEvents Made()
    {
        var seen = former?.Holds(drive, settings) == true ? former : Seen();
        List<Sighting> sightings =
        [
            .. seen.All.Select(s => new Sighting(s.Candidate, s.Speed, s.Table)
            {
                IsRejected = settings.Rejected.Any(r => Math.Abs(r - s.Candidate.Seen) < Near),
            }),
        ];
        var cars = Pooled(sightings.Where(s => s.Table.Explained > Accounted).Select(s => s.Table.OfCars()), UsualCar.All.Count);
        var shapes = new double[BumpShape.All.Count];
        sightings.ForEach(s => s.Read(cars, shapes, wheelbase));
        var seenOnce = sightings;
        sightings = [.. Single(sightings).OrderBy(s => s.Onset.Time)];
        var drops = new EventDrops(drive, trust);
        Drop(sightings, drops);
        var measuring = new EventMeasuring(drive, settings, seen.Curves);
        var unmet = new UnmetInstants
        {
            Read = Span,
            Added = [.. settings.Added.Except(Added)],
            Rejected = [.. settings.Rejected.Where(
                r => !seenOnce.Any(s => Math.Abs(r - s.Candidate.Seen) < Near || Math.Abs(r - s.Onset.Time) < Near))],
        };
        var finding = new SiteFinding(drive, measuring.Curves, sightings, cars, settings);
        var sites = finding.Found();
        stop.ThrowIfCancellationRequested();
        var ofSites = new Dictionary<string, ImmutableArray<double[]>>();
        foreach (var site in sightings.GroupBy(s => s.Site))
        {
            var kept = site.Where(s => s.Reason.Length == 0).ToArray();
            ofSites[sites[site.Key]] = [.. kept.Select(s => s.Table.OfShapes(cars))];
            if (shared?.GetValueOrDefault(sites[site.Key]) is { } one)
            {
                // What two drives crossed has one shape in both: a pass's own say counts within it, not beside it.
                foreach (var s in site.Where(s => s.WouldCount))
                {
                    var own = s.Table.OfShapes(cars);
                    s.Read(cars, [.. one.Select((p, i) => p - own[i])], wheelbase);
                }

                continue;
            }

            // What lies on one place of the road has one shape. A bump that was rejected by hand is measured as it was before.
            var all = site.Where(s => s.WouldCount).ToArray();
            var (said, whole) = (PooledOf(kept), PooledOf(all));
            foreach (var s in all)
            {
                var (pooled, count) = s.IsRejected ? (whole, all.Length) : (said, kept.Length);
                if (count > 1)
                {
                    // Its own weight is in its table already.
                    var own = s.Table.OfShapes(cars);
                    s.Read(cars, [.. pooled.Select((p, i) => p - (own[i] * Pool / count))], wheelbase);
                }
            }
        }

        double[] PooledOf(Sighting[] passes) => Pooled(passes.Select(s => s.Table.OfShapes(cars)), shapes.Length);

        var events = new List<DriveEvent>();
        foreach (var (k, s) in sightings.Index())
        {
            events.Add(EventOf(s, k + 1, k + 1 < sightings.Count ? sightings[k + 1].Onset.Time : double.PositiveInfinity, sites, drops, measuring));
        }

        var roll = new SiteRoll(drive, wheelbase, sightings, cars);
        foreach (var site in events.Index().GroupBy(e => e.Item.Site).ToArray())
        {
            // Brakes roll a car that is laden on one side; what does not count may have been rolled by a bend.
            var passes = site.Where(e => e.Item.Kind != EventKind.Braking).ToArray();
            if (roll.IsOneSided([.. passes.Where(e => e.Item.IsKept).Select(e => sightings[e.Index])]))
            {
                Array.ForEach(passes, e => events[e.Index] = e.Item with { Kind = EventKind.OneSide });
            }
        }

        var kinds = events.GroupBy(e => e.Site).ToDictionary(g => g.Key, KindOf);
        events = [.. events.Select(e => e.Kind == EventKind.Braking ? e : e with { Kind = kinds[e.Site] })];
        return new DriveEvents
        {
            Events = [.. events],
            Sites =
            [
                .. events.GroupBy(e => e.Site)
                    .Select(of => SiteOf(of, kinds[of.Key]) with { IsNamed = settings.Sites.Any(s => s.Site == of.Key) }),
            ],
            Settings = settings,
            HasSpeed = !drive.Speed.IsEmpty,
            Shapes = ofSites,
            Seen = seen,
            Unmet = unmet with { Sites = [.. finding.Missed], Renamed = [.. finding.Renamed] },
        };
    }

    /// <summary>The log weight of each shape by passes over one bump.</summary>
    /// <param name="each">That of each pass.</param>
    internal static double[] ShapesBy(IEnumerable<double[]> each) => Pooled(each, BumpShape.All.Count);

    private static double[] Pooled(IEnumerable<double[]> each, int count)
    {
        var (sum, n) = (new double[count], 0);
        foreach (var of in each)
        {
            n++;
            for (var i = 0; i < count; i++)
            {
                sum[i] += of[i];
            }
        }

        return n <= Pool ? sum : [.. sum.Select(s => s * Pool / n)];
    }

    private SeenBumps Seen()
    {
        var phone = settings.Phone?.BehindFrontAxle ?? Unknown;
        var responses = new UsualResponses(drive, wheelbase, phone);
        var found = new EventFinder(drive, wheelbase).Found(stop).Where(c => !Added.Any(a => Math.Abs(a - c.Seen) < Near));
        Candidate[] all = [.. found.Concat(Added.Select(a => new Candidate(a, 0.0, true)))];
        var seen = new (Candidate, EventSpeed, OnsetTable)[all.Length];
        ParallelLoop.Each(all.Length, -1, k => seen[k] = Of(all[k]), stop);
        return new SeenBumps(drive, settings, [.. seen], EventMeasuring.CurvesOf(drive, settings));

        (Candidate, EventSpeed, OnsetTable) Of(Candidate c)
        {
            var speed = EventSpeed.At(drive, c.Seen, wheelbase);
            var taken = Math.Max(speed.Value, EventFinder.Creeping);
            var (from, to) = c.ByHand ? (c.Seen - SaidWithin, c.Seen + SaidWithin)
                : (c.Seen - Math.Min(((wheelbase + Longest) / taken) + 0.5, Back), c.Seen + Forward);
            return (c, speed with { Value = taken }, OnsetTable.Of(drive, c.Seen, taken, from, to, responses));
        }
    }

    // Two that stood out over one and the same bump are one: what a user added, else the higher.
    private static List<Sighting> Single(List<Sighting> sightings)
    {
        var single = new List<Sighting>();
        foreach (var s in sightings.OrderByDescending(s => s.Candidate.ByHand).ThenByDescending(s => s.Candidate.Score).ThenBy(s => s.Candidate.Seen))
        {
            if (!single.Any(o => s.Onset.Time < o.Through && o.Onset.Time < s.Through))
            {
                single.Add(s);
            }
        }

        return single;
    }

    private void Drop(List<Sighting> sightings, EventDrops drops)
    {
        foreach (var (k, s) in sightings.Index())
        {
            s.Distance = drive.Speed.IsEmpty ? double.NaN : 0.0;
            s.Place = drive.Path?.At(s.Onset.Time);
            var crept = !drive.Speed.IsEmpty && EventSpeed.At(drive, s.Onset.Time, wheelbase).Value is var v && v < EventFinder.Creeping;
            s.IsRejected |= settings.Rejected.Any(r => Math.Abs(r - s.Onset.Time) < Near);
            s.Reason = drops.Reason(s.Onset.Time, s.Through, crept ? 0.0 : null);
            if (s.Reason.Length == 0 && !s.Candidate.ByHand && s.Table.Explained < Least)
            {
                s.Reason = string.Create(
                    CultureInfo.InvariantCulture,
                    $"Front and rear do not move as over one bump: a usual car over one accounts for "
                    + $"{100.0 * s.Table.Explained:F0} % of the motion.");
            }

            if (s.Reason.Length == 0 && k + 1 < sightings.Count && sightings[k + 1].Onset.Time < s.Through + Measures.PitchSettling.Second)
            {
                s.Reason = "The next bump comes before a second of settling is over.";
            }

            s.WouldCount = s.Reason.Length == 0;
            s.Reason = s.IsRejected ? "Rejected by hand." : s.Reason;
        }

        if (!drive.Speed.IsEmpty)
        {
            // The odometer: speed summed up, gaps bridged by the speeds about them.
            var (sum, i) = (0.0, 0);
            foreach (var s in sightings)
            {
                for (; i < drive.Speed.Length && drive.Time(i) < s.Onset.Time; i++)
                {
                    sum += Math.Max(drive.Speed[i], 0.0) / drive.Rate;
                }

                s.Distance = sum;
            }
        }
    }

    private DriveEvent EventOf(
        Sighting s, int number, double next, IReadOnlyList<string> sites, EventDrops drops, EventMeasuring measuring)
    {
        var speed = drive.Speed.IsEmpty ? s.Speed : EventSpeed.At(drive, s.Onset.Time, wheelbase);
        var onset = (s.Onset.Time, HalfWidth: Gaussian.Ninety * Math.Sqrt((s.Onset.Spread * s.Onset.Spread) + (LeastOnset * LeastOnset)));
        var edge = LeastLength * s.Length.Value / s.Speed.Value;
        var lag = (s.Through - s.Onset.Time) * speed.HalfWidth / s.Speed.Value / Gaussian.Ninety;
        var through = (s.Through, HalfWidth: Gaussian.Ninety * Math.Sqrt(
            (s.End.Spread * s.End.Spread) + (LeastOnset * LeastOnset) + (edge * edge) + (lag * lag)));
        var until = Math.Max(Math.Min(s.Through + 3.0, next), s.Through);
        return new DriveEvent
        {
            Number = number,
            Site = sites[s.Site],
            Seen = s.Candidate.Seen,
            Score = s.Candidate.Score,
            Explained = s.Table.Explained,
            Onset = onset.Time,
            OnsetHalfWidth = onset.HalfWidth,
            Speed = speed.Value,
            SpeedHalfWidth = speed.HalfWidth,
            SpeedChange = speed.Change,
            Distance = s.Distance,
            Place = s.Place,
            Kind = KindOf(s, drops),
            Length = s.Length.Value,
            LengthHalfWidth = Gaussian.Ninety * Math.Sqrt((s.Length.Spread * s.Length.Spread) + Math.Pow(LeastLength * s.Length.Value, 2.0)),
            HitUntil = s.Through,
            SettlingUntil = until,
            Reason = s.Reason,
            ByHand = s.Candidate.ByHand || s.IsRejected,
            Numbers = measuring.Of(onset, through, until),
        };
    }

    private EventKind KindOf(Sighting s, EventDrops drops)
    {
        if (Math.Abs(drops.AlongBetween(s.Onset.Time - 0.5, s.Through + 1.0)) > EventDrops.Braking)
        {
            return EventKind.Braking;
        }

        return s.Length.Value < 0.5 ? EventKind.SharpEdge
            : s.Height < 0.0 ? EventKind.Dip
            : EventKind.Hump;
    }

    /// <summary>
    /// The kind of one bump of the road: what most of its passes look like, whose noise differs. Those that count say it, where any does; braking is
    /// of a pass, and is a bump's kind only where nothing else was seen there.
    /// </summary>
    /// <param name="of">The passes over it, of one drive or of several.</param>
    internal static EventKind KindOf(IEnumerable<DriveEvent> of) => Counting(of).GroupBy(e => e.Kind)
        .OrderBy(g => g.Key == EventKind.Braking).ThenByDescending(g => g.Count()).ThenBy(g => g.Key).First().Key;

    private static IEnumerable<DriveEvent> Counting(IEnumerable<DriveEvent> of) => of.Any(e => e.IsKept) ? of.Where(e => e.IsKept) : of;

    private static DriveSite SiteOf(IGrouping<string, DriveEvent> of, EventKind kind) => new()
    {
        Name = of.Key,
        Length = Numerics.Middle.Of([.. Counting(of).Select(e => e.Length)]),
        Kind = kind,
        Events = of.ToImmutableArray(),
    };
}
