using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Recovery;
using Heaveline.Models;
using Heaveline.Roads;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Tests.Drives;

/// <summary>
/// A hump, a plank, a joint and a dip, each under both tracks or under one, driven six times by our own kernel on roads of class A to C: a saloon, a
/// city car and a van, laden. What lies under one track is twice as high: it lifts the body as far.
/// </summary>
public class SiteRollTests
{
    private static readonly string[] Cars = ["fern-saloon.yaml", "thimble-city-car.yaml", "drover-van.yaml"];

    [Fact]
    public void A_bump_is_said_to_be_on_one_side_where_it_is_and_nowhere_else()
    {
        var (oneSided, seen, found) = (0, 0, 0);
        foreach (var road in (RoadClass[])[RoadClass.A, RoadClass.B, RoadClass.C])
        {
            for (var seed = 1UL; seed <= 3UL; seed++)
            {
                var (plan, events) = Driven(road, seed);
                foreach (var site in plan.Sites)
                {
                    if (events.Sites.SingleOrDefault(s => s.Name == site.Name) is not { Kept: > 0, Kind: var kind })
                    {
                        continue;
                    }

                    found++;
                    if (site.Tracks == Tracks.Both)
                    {
                        Assert.True(kind != EventKind.OneSide, $"{site.Name}, {road}, seed {seed}");
                    }
                    else if (road != RoadClass.C)
                    {
                        (oneSided, seen) = (oneSided + 1, seen + (kind == EventKind.OneSide ? 1 : 0));
                    }
                }
            }
        }

        Assert.True(found >= 30);
        Assert.Equal(12, oneSided);
        Assert.True(seen >= 0.9 * oneSided, $"{seen} of {oneSided}");
    }

    // Both, left, both and right, another site first with every seed.
    private static Tracks SideOf(int site, ulong seed) =>
        ((Tracks[])[Tracks.Both, Tracks.Left, Tracks.Both, Tracks.Right])[(site + (int)seed + (site / 2)) % 4];

    private static (LanePlan Plan, DriveEvents Events) Driven(RoadClass road, ulong seed)
    {
        var sides = Enumerable.Range(0, 4).Select(i => SideOf(i, seed)).ToArray();
        double Of(int site, double height) => sides[site] == Tracks.Both ? height : 2.0 * height;
        LaneSite[] sites =
        [
            new("hump", new RoundTopHump { Height = new(Of(0, 0.03)), Length = new(3.7) }, [18, 24, 30, 26, 20, 28]),
            new(
                "plank", new FlatTopHump { Height = new(Of(1, 0.02)), Plateau = new(0.2), RampUp = new(0.05), RampDown = new(0.05) },
                [16, 22, 28, 19, 30, 25]),
            new("joint", new Versine { Height = new(Of(2, 0.02)), Length = new(0.8) }, [45, 45, 45, 45, 45, 45]),
            new("dip", new Versine { Height = new(Of(3, -0.03)), Length = new(5.0) }, [20, 26, 32, 24, 29, 22]),
        ];
        var plan = LanePlan.Of(seed, 1.0, [.. sites.Zip(sides, (site, side) => site with { Tracks = side })]);
        var car = LarchLane.Fern(Cars[(int)(seed % 3)]);
        var driven = DrivenCar.Of(
            RideModel.Of(car, car.LoadStates[^1]), LaneRoad.Of(plan, road.Mean.Si, road.Mean.Si, seed), plan.Line,
            TestContext.Current.CancellationToken);
        var drive = Drive.Of(PhoneLog.Of(driven, LarchLane.Pose, LarchLane.Faults(plan, seed) with { PositionRate = 0.0 }));
        return (plan, DriveEvents.Of(
            drive,
            Trust.Of(drive),
            new EventSettings
            {
                Wheelbase = car.Wheelbase.Si,
                Phone = new PhonePlace { BehindFrontAxle = LarchLane.Pose.BehindFrontAxle },
                Sites = [.. plan.Crossings.Select(c => (c.Site, c.Time))],
            },
            TestContext.Current.CancellationToken));
    }
}
