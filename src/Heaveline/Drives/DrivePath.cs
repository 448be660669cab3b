using System.Collections.Immutable;
using System.Runtime.InteropServices;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Drives;

/// <summary>
/// Where a drive went, on its grid: straight lines between fixes, as late as the speed. Nothing of it is ever printed or drawn; it brings
/// bumps to sites.
/// </summary>
public sealed record DrivePath
{
    // Of a fix that says nothing of its doubt, the radius that holds it nine times in ten, m. Common practice, no source.
    private const double Usual = 10.0;

    // From the radius that holds two of three to that which holds nine of ten.
    private static readonly double Wider = GroundPlace.NineOfTen / GroundPlace.TwoOfThree;

    // A fix with more doubt than this tells no bump from the next, m; further apart than this the way between two is not known, s.
    private const double MostDoubt = 30.0;
    private const double Longest = 5.0;

    // No car goes from fix to fix so fast, m/s.
    private const double Fastest = 100.0;

    // A direction is read over so long a way at least, m, and at most so long before and after, s.
    private const double Chord = 15.0;
    private const double Aside = 6.0;

    private readonly double start;
    private readonly double rate;

    private DrivePath(double start, double rate) => (this.start, this.rate) = (start, rate);

    /// <summary>Latitude and longitude of the first fix, rad: east and north count from it.</summary>
    public required (double Latitude, double Longitude) Origin { get; init; }

    /// <summary>East of the first fix, m, shape (n); not a number where no fix is near.</summary>
    public required ImmutableArray<double> East { get; init; }

    /// <summary>North of the first fix, m, shape (n); not a number where no fix is near.</summary>
    public required ImmutableArray<double> North { get; init; }

    /// <summary>Radius of the circle that holds the place nine times in ten, m, shape (n); not a number where no fix is near.</summary>
    public required ImmutableArray<double> HalfWidth { get; init; }

    /// <summary>The place at an instant; null where it is not known.</summary>
    /// <param name="time">The instant, s since the log's start.</param>
    public GroundPlace? At(double time)
    {
        var at = (int)Math.Round((time - start) * rate);
        if (at < 0 || at >= East.Length || double.IsNaN(East[at]))
        {
            return null;
        }

        var (latitude, longitude) = new GroundPlace(Origin.Latitude, Origin.Longitude, double.NaN, 0.0).Beyond(East[at], North[at]);
        return new GroundPlace(latitude, longitude, Heading(at), HalfWidth[at]);
    }

    /// <summary>The path of a log; null without fixes.</summary>
    /// <param name="log">The log.</param>
    /// <param name="grid">The grid.</param>
    /// <param name="lag">By what a fix is late, s.</param>
    /// <param name="story">Gets what was decided.</param>
    internal static DrivePath? Of(Log log, EvenGrid grid, double lag, List<StoryLine> story)
    {
        if (log.Of(SensorKind.Position) is not { } track || TimedTrack.Of(track) is not { } timed)
        {
            return null;
        }

        var (latitude, longitude) = (timed.Values[0], timed.Values[1]);
        var origin = new GroundPlace(latitude[0], longitude[0], double.NaN, 0.0);
        var fixes = Enumerable.Range(0, timed.Times.Length).Select(i => new Fix(
            timed.Times[i],
            origin.To(latitude[i], longitude[i]),
            timed.Values.Length > 2 && timed.Values[2][i] > 0.0 ? Wider * timed.Values[2][i] : Usual)).ToList();
        var all = fixes.Count;
        fixes.RemoveAll(f => f.HalfWidth > Wider * MostDoubt);
        var jumps = fixes.Index().Where(f => IsJump(fixes, f.Index)).Select(f => f.Item).ToHashSet();
        fixes.RemoveAll(jumps.Contains);
        if (fixes.Count < all)
        {
            story.Add(new StoryLine("position-fixes", Text(
                $"{all - fixes.Count} of {all} fixes of the position say themselves that they are off by more than {MostDoubt:F0} m, ")
                + "or jump: left out."));
        }

        return fixes.Count < 2 ? null : Drawn(grid, fixes, lag, (origin.Latitude, origin.Longitude));
    }

    // Far from the fix before and the one after, though those lie near each other.
    private static bool IsJump(List<Fix> fixes, int at) =>
        at > 0 && at + 1 < fixes.Count && IsFar(fixes[at - 1], fixes[at]) && IsFar(fixes[at], fixes[at + 1]) && !IsFar(fixes[at - 1], fixes[at + 1]);

    private static bool IsFar(Fix one, Fix other)
    {
        var (east, north) = (other.East - one.East, other.North - one.North);
        return Math.Sqrt((east * east) + (north * north)) > Fastest * (other.Time - one.Time);
    }

    private static DrivePath Drawn(EvenGrid grid, List<Fix> fixes, double lag, (double Latitude, double Longitude) origin)
    {
        var (east, north, half) = (new double[grid.Count], new double[grid.Count], new double[grid.Count]);
        var k = 0;
        for (var i = 0; i < grid.Count; i++)
        {
            var t = grid.Time(i) + lag;
            while (k + 2 < fixes.Count && fixes[k + 1].Time <= t)
            {
                k++;
            }

            var (a, b) = (fixes[k], fixes[k + 1]);
            var share = (t - a.Time) / (b.Time - a.Time);
            (east[i], north[i], half[i]) = share is >= 0.0 and <= 1.0 && b.Time - a.Time <= Longest
                ? (a.East + (share * (b.East - a.East)), a.North + (share * (b.North - a.North)), Math.Max(a.HalfWidth, b.HalfWidth))
                : (double.NaN, double.NaN, double.NaN);
        }

        return new DrivePath(grid.Start, grid.Rate)
        {
            Origin = origin,
            East = ImmutableCollectionsMarshal.AsImmutableArray(east),
            North = ImmutableCollectionsMarshal.AsImmutableArray(north),
            HalfWidth = ImmutableCollectionsMarshal.AsImmutableArray(half),
        };
    }

    // Along the chord from some seconds before to some after, longer and longer until it says more than the fixes scatter.
    private double Heading(int at)
    {
        for (var seconds = 2.0; seconds <= Aside; seconds += 1.0)
        {
            var reach = (int)Math.Round(seconds * rate);
            var (from, to) = (Math.Max(at - reach, 0), Math.Min(at + reach, East.Length - 1));
            var (east, north) = (East[to] - East[from], North[to] - North[from]);
            if ((east * east) + (north * north) >= Chord * Chord)
            {
                return Math.Atan2(north, east);
            }
        }

        return double.NaN;
    }

    private readonly record struct Fix(double Time, (double East, double North) At, double HalfWidth)
    {
        public double East => At.East;

        public double North => At.North;
    }
}
