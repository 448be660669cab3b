using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Tests.Drives;

/// <summary>Roughness along planted roads of known density, and along the lane with its rough stretch.</summary>
public class DriveRoughnessTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void Planted_classes_are_found_and_eight_intervals_of_ten_hold_the_density()
    {
        var (held, all) = (0, 0);
        foreach (var (planted, seed) in new[] { (RoadClass.A, 3UL), (RoadClass.B, 4UL), (RoadClass.C, 5UL) })
        {
            // ISO 8608: geometric means of 16, 64 and 256 ·10⁻⁶ m³.
            var road = new PlantedRoad
            {
                Bumps = [.. Enumerable.Range(0, 12).Select(i => (PlantedBump.Round, 4.2 + (0.45 * i)))], Roughness = planted.Mean.Si, Seed = seed,
                Longer = [.. Enumerable.Repeat(6.0, 12)],
            };
            var (motion, onsets) = road.Driven();
            var (drive, trust, events) = Read(motion, road.Wheelbase, onsets);
            var car = CarIdentification.Of(DriveWindows.Of(drive, events, trust), new IdentificationKnown
            {
                Wheelbase = road.Wheelbase, HumpLengths = DriveWindows.Humps(events), PhoneBehindFrontAxle = road.Behind, PhoneSpread = 0.05,
            }, Stop);
            Assert.True(car.IsBelieved, string.Join(' ', car.Refusals.Select(r => r.Says)));
            var found = DriveRoughness.Of(drive, events, trust, car, Stop);
            Assert.Equal("", found.WhyNot);
            RoughStretch[] told = [.. found.Stretches.Where(s => s.IsTold)];
            Assert.InRange(told.Length, 8, 40);
            Assert.All(told, s => Assert.Equal(planted, s.Class));
            Assert.All(told, s => Assert.InRange(s.LongestWave / s.ShortestWave, 8.0, 30.0));
            held += told.Count(s => planted.Mean.Si >= s.Low && planted.Mean.Si <= s.High);
            all += told.Length;
        }

        Assert.InRange((double)held / all, 0.8, 1.0);
    }

    [Fact]
    public void The_rough_stretch_of_the_lane_stands_out_and_its_bumps_are_left_out()
    {
        var lane = LaneReading.Before;
        var trust = Trust.Of(lane.Drive, Stop);
        var found = DriveRoughness.Of(lane.Drive, lane.Events, trust, lane.Car, Stop);
        // The lane has 32·10⁻⁶ m³ in each track, whose mean has less in short waves: from all of it to half.
        RoughStretch[] smooth = [.. found.Stretches.Where(s => s.IsTold && s.From > 1200.0)];
        Assert.InRange(smooth.Length, 20, 60);
        Assert.InRange(smooth.Average(s => s.Density), 16e-6, 32e-6);
        RoughStretch[] rough = [.. found.Stretches.Where(s => s.From is >= 400.0 and < 600.0)];
        Assert.All(rough, s => Assert.InRange(s.Density, 100e-6, 256e-6));
        Assert.All(found.Stretches, s => Assert.InRange(s.Read, 1.0, 1.5 * DriveRoughness.Stretch));
    }

    // One pass over the hump is struck out, as if it had not been found: by the others it is known where it lies.
    [Fact]
    public void A_pass_that_was_not_found_is_said_and_is_not_read_as_road()
    {
        var lane = LaneReading.Before;
        Assert.DoesNotContain(MissedPass.Of(lane.Drive, lane.Events), m => m.Site == "Chapel hump");
        var site = lane.Events.Sites.Single(s => s.Name == "Chapel hump");
        var struck = site.Events.Where(e => e.IsKept).ElementAt(2);
        var events = lane.Events with
        {
            Events = lane.Events.Events.Remove(struck),
            Sites = lane.Events.Sites.Replace(site, site with { Events = site.Events.Remove(struck) }),
        };
        var missed = Assert.Single(MissedPass.Of(lane.Drive, events), m => m.Site == site.Name);
        Assert.InRange(missed.At, struck.Onset - 3.0, struck.Onset + 3.0);
        Assert.InRange(struck.Onset, missed.From, missed.Until);
        Assert.StartsWith("One pass over Chapel hump may have been missed, near ", Assert.Single(MissedWords.Of([missed])));

        // Where nothing is read, before the bump or in the middle of it, nothing is missed.
        var end = (int)((struck.Onset - lane.Drive.Start) * lane.Drive.Rate);
        foreach (var last in new[] { end - (int)(10.0 * lane.Drive.Rate), end })
        {
            var shorter =
                lane.Drive with { Covered = [.. lane.Drive.Covered.Where(c => c.First < last).Select(c => (c.First, Math.Min(c.Last, last)))] };
            Assert.DoesNotContain(MissedPass.Of(shorter, events), m => m.Until > lane.Drive.Time(last));
        }

        var trust = Trust.Of(lane.Drive, Stop);
        double Densest(DriveEvents bumps) => DriveRoughness.Of(lane.Drive, bumps, trust, lane.Car, Stop).Stretches
            .Where(s => Math.Abs(s.At - struck.Onset) < 30.0).Max(s => s.Density);
        Assert.Equal(Densest(lane.Events), Densest(events), 0.3 * Densest(lane.Events));
    }

    [Fact]
    public void Without_a_car_it_is_refused() => Assert.Throws<RefusedValueException>(() => DriveRoughness.Of(
        LaneReading.Before.Drive, LaneReading.Before.Events, Trust.Of(LaneReading.Before.Drive, Stop), CarIdentification.WithoutWheelbase, Stop));

    internal static (Drive Drive, Trust Trust, DriveEvents Events) Read(PlantedMotion motion, double wheelbase, double[] onsets)
    {
        var drive = Drive.Of(motion.Log, Stop);
        var trust = Trust.Of(drive, Stop);
        var settings = new EventSettings { Wheelbase = wheelbase };
        var found = DriveEvents.Of(drive, trust, settings, Stop);
        return (drive, trust, DriveEvents.Of(drive, trust, LaneNaming.Of(settings, found, onsets.Select(t => ("hump", t))), Stop));
    }
}
