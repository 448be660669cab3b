using System.Collections.Immutable;
using Heaveline.Drives;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Events;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Tests.Drives.Comparison;

public class SiteMatchesTests
{
    private static readonly Measure Headline = new Measure<double>("settling-rms-pitch", "RMS pitch", In.Degrees, 2, x => x, "Of a test.");
    private static readonly Measure Hit = new Measure<double>(
        "hit-peak-pitch-acceleration", "peak", In.RadiansPerSecondSquared, 2, x => x, "Of a test.");

    [Fact]
    public void Sites_of_one_given_name_are_the_same_whatever_they_look_like()
    {
        var matches = SiteMatches.Of(
            Drive(["chapel"], Site("chapel", EventKind.Hump, 3.7, 3), Site("site 2", EventKind.Dip, 2.0, 4)),
            Drive(["chapel"], Site("site 1", EventKind.Dip, 2.1, 4), Site("chapel", EventKind.SharpEdge, 0.4, 2)));
        Assert.Equal([("chapel", SiteBasis.Name), ("site 2", SiteBasis.Order)], matches.All.Select(m => (m.Name, m.Basis)));
    }

    [Fact]
    public void Names_that_the_program_gave_mean_nothing()
    {
        // A bump more in the second drive: its "site 1" is another.
        var matches = SiteMatches.Of(
            Drive([], Site("site 1", EventKind.Hump, 3.7, 4), Site("site 2", EventKind.Dip, 2.0, 4)),
            Drive([], Site("site 1", EventKind.SharpEdge, 0.3, 4), Site("site 2", EventKind.Hump, 3.5, 4), Site("site 3", EventKind.Dip, 2.2, 4)));
        Assert.Equal([("site 1", "site 2"), ("site 2", "site 3")], matches.All.Select(m => (m.Before.Name, m.After.Name)));
        Assert.Equal("site 1", Assert.Single(matches.OnlyAfter).Name);
        Assert.Empty(matches.OnlyBefore);
    }

    [Fact]
    public void A_name_given_in_one_drive_is_kept()
    {
        var matches = SiteMatches.Of(
            Drive([], Site("site 1", EventKind.Hump, 3.7, 4)), Drive(["chapel"], Site("chapel", EventKind.Hump, 3.7, 4)));
        Assert.Equal("chapel", Assert.Single(matches.All).Name);
    }

    [Fact]
    public void Sites_of_one_place_are_the_same_whatever_they_look_like_and_of_two_places_never()
    {
        var here = new GroundPlace(0.01, -0.5, 0.0, 5.0);
        GroundPlace North(double metres) => here with { Latitude = here.Latitude + (metres / GroundPlace.EarthRadius) };
        var matches = SiteMatches.Of(
            Drive(
                ["chapel"],
                At(here, Site("chapel", EventKind.Hump, 3.7, 3)),
                At(North(60.0), Site("site 2", EventKind.Hump, 3.7, 4)),
                At(North(200.0), Site("site 3", EventKind.Hump, 3.7, 4))),
            Drive(
                [],
                At(North(63.0), Site("site 1", EventKind.Dip, 2.0, 1)),
                At(North(-4.0), Site("site 2", EventKind.SharpEdge, 0.4, 2)),
                At(North(200.0) with { Heading = Math.PI }, Site("site 3", EventKind.Hump, 3.7, 4))));
        Assert.Equal(
            [("chapel", "chapel", "site 2", SiteBasis.Position), ("site 2", "site 2", "site 1", SiteBasis.Position)],
            matches.All.Select(m => (m.Name, m.Before.Name, m.After.Name, m.Basis)));
        Assert.Equal(("site 3", "site 3"), (Assert.Single(matches.OnlyBefore).Name, Assert.Single(matches.OnlyAfter).Name));

        static DriveSite At(GroundPlace place, DriveSite site) => site with { Events = [.. site.Events.Select(e => e with { Place = place })] };
    }

    [Fact]
    public void A_drive_without_positions_is_matched_by_order()
    {
        var here = new GroundPlace(0.01, -0.5, 0.0, 5.0);
        var placed = Site("site 1", EventKind.Hump, 3.7, 4);
        var matches = SiteMatches.Of(
            Drive([], placed with { Events = [.. placed.Events.Select(e => e with { Place = here })] }),
            Drive([], Site("site 1", EventKind.Hump, 3.7, 4)));
        Assert.Equal(SiteBasis.Order, Assert.Single(matches.All).Basis);
    }

    [Fact]
    public void Bumps_met_once_or_unlike_are_no_match()
    {
        var matches = SiteMatches.Of(
            Drive([], Site("site 1", EventKind.Hump, 3.7, 1), Site("site 2", EventKind.Dip, 1.0, 4), Site("site 3", EventKind.Dip, 3.0, 0)),
            Drive([], Site("site 1", EventKind.Hump, 3.7, 4), Site("site 2", EventKind.Dip, 2.5, 4)));
        Assert.Empty(matches.All);
        Assert.Equal(["site 1", "site 2"], matches.OnlyBefore.Select(s => s.Name));
    }

    [Fact]
    public void Passes_that_do_not_count_or_have_no_number_are_left_out()
    {
        var site = Site("chapel", EventKind.Hump, 3.7, 4);
        ImmutableArray<DriveEvent> events =
        [
            site.Events[0] with { Reason = "The car braked." }, site.Events[1] with { Numbers = Numbers(double.NaN, 4.0) }, site.Events[2],
            site.Events[3],
        ];
        var matches = SiteMatches.Of(Drive(["chapel"], site with { Events = events }), Drive(["chapel"], Site("chapel", EventKind.Hump, 3.7, 2)));
        Assert.Equal(4, matches.Passes(ComparedNumber.Headline).Length);
        Assert.Equal(5, matches.Passes(ComparedNumber.Hit).Length);
        Assert.All(matches.Passes(ComparedNumber.Hit), p => Assert.Equal(("chapel", 4.0), (p.Site, p.Value)));
    }

    [Fact]
    public void What_is_braked_over_is_of_another_kind_where_any_pass_shows_one()
    {
        var (hump, braked) = (Site("chapel", EventKind.Hump, 3.7, 1).Events, Site("chapel", EventKind.Braking, 3.7, 2).Events);
        Assert.Equal(EventKind.Hump, EventMaking.KindOf(hump.Concat(braked)));
        Assert.Equal(EventKind.Braking, EventMaking.KindOf(braked));
    }

    private static DriveEvents Drive(string[] given, params DriveSite[] sites) => new()
    {
        Events = [.. sites.SelectMany(s => s.Events)],
        Sites = [.. sites],
        Settings = new EventSettings { Sites = [.. given.Select(name => (name, 1.0))] },
        HasSpeed = true,
    };

    private static DriveSite Site(string name, EventKind kind, double length, int passes) => new()
    {
        Name = name,
        Length = length,
        Kind = kind,
        Events =
        [
            .. Enumerable.Range(1, passes).Select(k => new DriveEvent
            {
                Number = k,
                Site = name,
                Seen = 10.0 * k,
                Score = 5.0,
                Explained = 1.0,
                Onset = 10.0 * k,
                OnsetHalfWidth = 0.02,
                Speed = 6.0,
                SpeedHalfWidth = 0.1,
                SpeedChange = 0.0,
                Distance = 60.0 * k,
                Kind = kind,
                Length = length,
                LengthHalfWidth = 0.1,
                HitUntil = (10.0 * k) + 1.0,
                SettlingUntil = (10.0 * k) + 4.0,
                Reason = "",
                ByHand = false,
                Numbers = Numbers(0.02, 4.0),
            }),
        ],
    };

    private static EventNumbers Numbers(double headline, double hit) =>
        new() { All = [new EventNumber(Headline, headline, 0.0), new EventNumber(Hit, hit, 0.0)] };
}
