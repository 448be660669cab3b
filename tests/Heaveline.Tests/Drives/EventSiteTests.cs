using Heaveline.Drives;
using Heaveline.Drives.Events;

namespace Heaveline.Tests.Drives;

/// <summary>Which bumps of a planted drive are brought to one site, and what a user may change.</summary>
public class EventSiteTests
{
    private static readonly PlantedBump Dip = new("versine", -0.04, 2.5);
    private static readonly PlantedBump High = new("round", 0.075, 3.7);
    private static readonly PlantedBump Joint = new("versine", 0.03, 0.8);

    private static (DriveEvents Events, double[] Onsets) Driven(PlantedRoad road, EventSettings settings)
    {
        var (motion, onsets) = road.Driven();
        var drive = Drive.Of(motion.Log, TestContext.Current.CancellationToken);
        return (DriveEvents.Of(drive, Trust.Of(drive), settings), onsets);
    }

    private static EventSettings Known { get; } = new() { Wheelbase = 2.7 };

    private static string[] SitesAt((DriveEvents Events, double[] Onsets) driven) =>
        [.. driven.Onsets.Select(t => driven.Events.Events.Where(e => Math.Abs(e.Onset - t) < 0.7).Select(e => e.Site).FirstOrDefault("missed"))];

    // A hump, a dip and a joint, then again, at other speeds.
    private static PlantedRoad Three { get; } = new()
    {
        Bumps =
        [
            (High, 5.5), (Dip, 8.0), (Joint, 11.0), (High, 6.5), (Dip, 8.5), (Joint, 12.0), (High, 7.5), (Dip, 9.0), (Joint, 13.0),
        ],
    };

    [Fact]
    public void One_hump_driven_at_many_speeds_is_one_site()
    {
        var road = new PlantedRoad { Bumps = [.. new[] { 5.0, 8.0, 6.0, 7.0, 5.5, 8.5, 6.5, 7.5 }.Select(v => (High, v))], Roughness = 32e-6 };
        var (events, _) = Driven(road, Known);
        var site = Assert.Single(events.Sites);
        Assert.Equal(("site 1", 8, EventKind.Hump), (site.Name, site.Events.Length, site.Kind));
        Assert.Equal(High.Length, site.Length, 0.5);
    }

    [Fact]
    public void A_hump_a_dip_and_a_joint_are_three_sites()
    {
        var sites = SitesAt(Driven(Three, Known));
        Assert.DoesNotContain("missed", sites);
        Assert.Equal(3, sites.Distinct().Count());
        Assert.All(Enumerable.Range(0, 9), k => Assert.Equal(sites[k % 3], sites[k]));
        var (events, _) = Driven(Three, Known);
        Assert.Equal(
            [EventKind.Hump, EventKind.Dip, EventKind.Hump], events.Sites.Select(s => s.Kind == EventKind.SharpEdge ? EventKind.Hump : s.Kind));
    }

    [Fact]
    public void Two_humps_of_one_make_on_a_round_are_told_apart_by_distance()
    {
        var road = new PlantedRoad
        {
            Bumps = [.. Enumerable.Range(0, 8).Select(k => (High, 7.0 + (0.1 * (k % 3))))],
            Longer = [0.0, 12.0, 48.0, 12.0, 48.0, 12.0, 48.0, 12.0],
            Drift = 0.0,
        };
        var sites = SitesAt(Driven(road, Known));
        Assert.Equal(["site 1", "site 2", "site 1", "site 2", "site 1", "site 2", "site 1", "site 2"], sites);
    }

    [Fact]
    public void A_user_names_joins_and_parts_sites()
    {
        var (found, onsets) = Driven(Three, Known);
        // Named: the whole site bears the name.
        var named = Driven(Three, Known with { Sites = [("chapel", onsets[0])] });
        Assert.Equal(["chapel", "chapel", "chapel"], new[] { 0, 3, 6 }.Select(k => SitesAt(named)[k]));
        Assert.Equal(found.Sites.Length, named.Events.Sites.Length);
        // Joined: one name at two sites.
        var joined = Driven(Three, Known with { Sites = [("mill", onsets[0]), ("mill", onsets[2])] });
        Assert.Equal(2, joined.Events.Sites.Length);
        Assert.Equal(6, joined.Events.Sites.Single(s => s.Name == "mill").Events.Length);
        // Parted: two names at one site; what is not named stays together.
        var parted = Driven(Three, Known with { Sites = [("up", onsets[0]), ("down", onsets[3])] });
        Assert.Equal(["up", "down"], new[] { 0, 3 }.Select(k => SitesAt(parted)[k]));
        Assert.StartsWith("site", SitesAt(parted)[6], StringComparison.Ordinal);
    }

    [Fact]
    public void Numbers_run_in_time_and_sites_in_the_order_they_were_met()
    {
        var (events, _) = Driven(Three, Known);
        Assert.Equal(Enumerable.Range(1, events.Events.Length), events.Events.Select(e => e.Number));
        Assert.True(events.Events.Zip(events.Events.Skip(1)).All(p => p.First.Onset < p.Second.Onset && p.First.Distance < p.Second.Distance));
        Assert.Equal(events.Sites.Select(s => s.Events[0].Number).Order(), events.Sites.Select(s => s.Events[0].Number));
    }
}
