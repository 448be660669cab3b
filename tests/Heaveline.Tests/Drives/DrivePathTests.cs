using Heaveline.Drives;
using Heaveline.Drives.Events;

namespace Heaveline.Tests.Drives;

/// <summary>Where a drive went, and what that tells of its bumps.</summary>
public class DrivePathTests
{
    private const double Degree = Math.PI / 180.0;
    private static readonly PlantedBump High = new("round", 0.075, 3.7);
    private static readonly GroundPlace Sea = new(0.5 * Degree, -30.0 * Degree, 0.0, 5.0);

    [Fact]
    public void A_degree_is_as_long_as_the_circle_says()
    {
        // A degree of a circle of radius R is πR/180; at 60° a degree of longitude is half as long, the chord's excess of 1 in 10⁵ beside it.
        const double degree = Math.PI * GroundPlace.EarthRadius / 180.0;
        var at = new GroundPlace(60.0 * Degree, 20.0 * Degree, 0.0, 5.0);
        Assert.Equal(0.01 * degree, at.DistanceTo(at with { Latitude = 60.01 * Degree }), 1e-6);
        Assert.Equal(0.005 * degree, at.DistanceTo(at with { Longitude = 20.01 * Degree }), 1e-3);
        var east = new GroundPlace(0.0, 179.999 * Degree, 0.0, 5.0);
        Assert.Equal(0.002 * degree, east.DistanceTo(east with { Longitude = -179.999 * Degree }), 1e-6);
        Assert.Equal(Math.PI, Math.Abs(GroundPlace.Mean([east, east with { Longitude = -179.999 * Degree }])!.Value.Longitude), 1e-9);
    }

    [Fact]
    public void One_place_is_within_its_doubt_and_driven_in_one_direction()
    {
        var metre = 1.0 / GroundPlace.EarthRadius;
        Assert.True(Sea.IsSame(Sea with { Latitude = Sea.Latitude + (19.9 * metre) }));
        Assert.False(Sea.IsSame(Sea with { Latitude = Sea.Latitude + (20.1 * metre) }));
        Assert.True(Sea.IsSame(Sea with { Heading = 59.0 * Degree }));
        Assert.False(Sea.IsSame(Sea with { Heading = 61.0 * Degree }));
        Assert.False(Sea.IsSame(Sea with { Heading = Math.PI }));
        Assert.True((Sea with { Heading = -179.0 * Degree }).IsSame(Sea with { Heading = 179.0 * Degree }));
        Assert.True(Sea.IsSame(Sea with { Heading = double.NaN }));
    }

    [Fact]
    public void A_path_is_straight_between_fixes_as_late_as_the_speed_and_says_its_doubt()
    {
        // Eastwards at 10 m/s, late by as much as the speed; a gap, a jump, and a fix that says itself that it is off.
        var planted = new PlantedDrive { Late = 0.6 };
        double[] fixes = [.. planted.Fixes.Where(t => t is < 40.0 or > 50.0)];
        var drive = Drive.Of(With(planted.Log, fixes, t => (10.0 * (t - 0.6), t == 70.0 ? 900.0 : 0.0), t => t == 60.0 ? 80.0 : 4.0));
        var path = drive.Path!;
        var lag = drive.Mount.SpeedLag!.Value;
        Assert.Equal(0.6, lag, 0.15);
        foreach (var t in new[] { 12.3, 33.7, 60.4, 70.2, 80.0 })
        {
            var i = (int)Math.Round((t - drive.Start) * drive.Rate);
            // Counted from the first fix.
            Assert.Equal(10.0 * (drive.Time(i) + lag - fixes[0]), path.East[i], 1e-6);
            Assert.Equal(0.0, path.North[i], 1e-6);
            // 4 m of two of three are 5.7 m of nine of ten, where both ways scatter normally.
            Assert.Equal(4.0 * Math.Sqrt(Math.Log(10.0) / Math.Log(1.0 / 0.32)), path.HalfWidth[i], 1e-3);
            Assert.Equal(0.0, path.At(t)!.Value.Heading, 1e-9);
        }

        Assert.Null(path.At(45.0));
        Assert.Contains(drive.Story, s => s.Text.StartsWith("2 of ", StringComparison.Ordinal) && s.About == "position-fixes");
        Assert.Null(Drive.Of(planted.Log).Path);
    }

    [Fact]
    public void A_fix_that_says_nothing_of_its_doubt_has_that_of_any_phone()
    {
        var planted = new PlantedDrive();
        var drive = Drive.Of(With(planted.Log, planted.Fixes, t => (10.0 * t, 0.0), _ => double.NaN));
        Assert.Equal(10.0, drive.Path!.At(30.0)!.Value.HalfWidth);
    }

    [Fact]
    public void Two_humps_of_one_make_60_m_apart_are_two_on_laps_of_any_length()
    {
        // Laps of 12 to 48 s by turns of no rule: neither odometer nor likeness can tell them.
        double[] longer = [0.0, 0.0, 31.0, 0.0, 17.0, 0.0, 44.0, 0.0];
        var sites = SitesAt(longer, (k, along) => (along, k % 2 == 0 ? 0.0 : 60.0, 0.0));
        string[] truth = ["site 1", "site 2", "site 1", "site 2", "site 1", "site 2", "site 1", "site 2"];
        Assert.Equal(truth, sites);
        Assert.NotEqual(truth, SitesAt(longer, null));
    }

    [Fact]
    public void A_hump_crossed_the_other_way_is_another_site_until_a_user_says_otherwise()
    {
        double[] longer = [0.0, 3.0, 9.0, 5.0, 12.0, 1.0];
        (double, double, double) Place(int k, double along) => (along, 0.0, k % 2 == 0 ? 0.0 : Math.PI);
        Assert.Equal(["site 1", "site 2", "site 1", "site 2", "site 1", "site 2"], SitesAt(longer, Place));
        Assert.Equal(
            ["chapel", "chapel", "chapel", "chapel", "chapel", "chapel"],
            SitesAt(longer, Place, onsets => [("chapel", onsets[0]), ("chapel", onsets[1])]));
    }

    [Fact]
    public void One_instant_names_all_crossings_of_a_place()
    {
        double[] longer = [0.0, 0.0, 31.0, 0.0, 17.0, 0.0];
        var sites = SitesAt(longer, (k, along) => (along, k % 2 == 0 ? 0.0 : 60.0, 0.0), onsets => [("chapel", onsets[2])]);
        Assert.Equal(["chapel", "site 1", "chapel", "site 1", "chapel", "site 1"], sites);
    }

    // The sites of a round hump crossed again and again; place says of each crossing how its metres run along, where across it lies, and its heading.
    private static string[] SitesAt(
        double[] longer, Func<int, double, (double Along, double Across, double Heading)>? place, Func<double[], (string, double)[]>? names = null)
    {
        var road = new PlantedRoad { Bumps = [.. longer.Select((_, k) => (High, 6.0 + (0.7 * (k % 3))))], Longer = longer };
        var (motion, onsets) = road.Driven();
        var way = new double[motion.Speed.Length];
        for (var i = 1; i < way.Length; i++)
        {
            way[i] = way[i - 1] + (motion.Step * motion.Speed[i]);
        }

        double[] fixes = [.. Enumerable.Range(0, (int)(motion.Step * way.Length) - 2).Select(i => (double)i)];
        // Each crossing is laid on the map so that the hump lies at its place; the ways between are jumped over where nothing is crossed.
        var log = place is null ? motion.Log : With(motion.Log, fixes, t =>
        {
            var at = Math.Max(t - motion.Late, 0.0);
            var k = Enumerable.Range(0, onsets.Length).MinBy(j => Math.Abs(onsets[j] - at));
            var (along, across, heading) = place(k, motion.At(way, at) - motion.At(way, onsets[k]));
            var noise = 3.0 * Math.Sin(2.4 * t * t);
            return ((along * Math.Cos(heading)) + noise, (along * Math.Sin(heading)) + across + (3.0 * Math.Cos(1.7 * t * t)));
        }, _ => 4.5);
        var drive = Drive.Of(log, TestContext.Current.CancellationToken);
        var settings = new EventSettings { Wheelbase = 2.7, Sites = [.. names?.Invoke(onsets) ?? []] };
        var events = DriveEvents.Of(drive, Trust.Of(drive), settings, TestContext.Current.CancellationToken);
        return [.. onsets.Select(t => events.Events.Where(e => Math.Abs(e.Onset - t) < 0.7).Select(e => e.Site).FirstOrDefault("missed"))];
    }

    private static Log With(Log log, double[] times, Func<double, (double East, double North)> at, Func<double, double> accuracy) => log with
    {
        Tracks =
        [
            .. log.Tracks,
            PlantedDrive.Track(
                SensorKind.Position,
                times,
                [
                    [.. times.Select(t => Sea.Latitude + (at(t).North / GroundPlace.EarthRadius))],
                    [.. times.Select(t => Sea.Longitude + (at(t).East / (GroundPlace.EarthRadius * Math.Cos(Sea.Latitude))))],
                    [.. times.Select(accuracy)],
                ]),
        ],
    };
}
