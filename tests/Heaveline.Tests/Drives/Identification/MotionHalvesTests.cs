using Heaveline.Drives.Identification;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Tests.Drives.Identification;

/// <summary>The gentler and the harder half of planted drives.</summary>
public class MotionHalvesTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public void A_linear_car_is_one_car_in_both_halves()
    {
        var (held, all, alarms, drives) = (0, 0, 0, 0);
        for (ulong seed = 0; seed < 8; seed++)
        {
            var (_, known, windows) = new PlantedCrossings { Seed = 31_000 + seed }.Drawn();
            var found = CarIdentification.Of(windows, known, Stop);
            if (!found.IsBelieved || MotionHalves.Of(windows, found, Stop) is not { WhyNot: "" } halves)
            {
                continue;
            }

            drives++;
            Assert.True(halves.Hard!.TravelSpeed > 1.2 * halves.Gentle!.TravelSpeed);
            Assert.Equal(windows.Length, halves.Gentle.Windows + halves.Hard.Windows);
            held += halves.Differences.Count(d => d.Low <= 1.0 && d.High >= 1.0);
            all += halves.Differences.Length;
            alarms += halves.Differences.Any(d => d.IsBeyondChance) ? 1 : 0;
        }

        Assert.InRange(drives, 5, 8);
        Assert.InRange((double)held / all, 0.85, 1.0);
        Assert.InRange(alarms, 0, 1);
    }

    [Fact]
    public void Friction_and_soft_dampers_show_as_less_damping_when_hard()
    {
        // The Fern saloon has friction, and dampers whose slope falls with speed.
        var halves = MotionHalves.Of(LaneReading.Before.Windows, LaneReading.Before.Car, Stop);
        Assert.Equal("", halves.WhyNot);
        var rear = Assert.Single(halves.Differences, d => d.Number == CarNumber.RearDamping);
        Assert.InRange(rear.High, 0.5, 1.0);
        Assert.True(halves.Differences.Single(d => d.Number == CarNumber.FrontDamping).Ratio < 1.0);
        Assert.False(halves.Differences.Single(d => d.Number == CarNumber.FrequencyRatio).IsBeyondChance);
    }

    [Fact]
    public void Any_order_of_the_windows_gives_the_same_halves()
    {
        var lane = LaneReading.Before;
        var (one, other) = (MotionHalves.Of(lane.Windows, lane.Car, Stop), MotionHalves.Of([.. lane.Windows.Reverse()], lane.Car, Stop));
        Assert.Equal(one.Differences, other.Differences);
    }

    [Fact]
    public void Six_bumps_bumps_that_move_alike_and_a_car_that_is_not_believed_do_not_tell()
    {
        var lane = LaneReading.Before;
        Assert.Contains("not believed", MotionHalves.Of(lane.Windows, lane.Car with { IsBelieved = false }, Stop).WhyNot, StringComparison.Ordinal);
        var (_, known, few) = new PlantedCrossings { Seed = 12, Each = 2 }.Drawn();
        var found = CarIdentification.Of(few, known, Stop);
        Assert.True(found.IsBelieved, string.Join(' ', found.Refusals.Select(r => r.Says)));
        Assert.Contains("half of 6 is too few", MotionHalves.Of(few, found, Stop).WhyNot, StringComparison.Ordinal);
        var (_, same, alike) = new PlantedCrossings { Seed = 12, Speeds = [6.5], Each = 12, Roughness = 8e-6 }.Drawn();
        found = CarIdentification.Of(alike, same, Stop);
        Assert.True(found.IsBelieved, string.Join(' ', found.Refusals.Select(r => r.Says)));
        Assert.Contains("alike", MotionHalves.Of(alike, found, Stop).WhyNot, StringComparison.Ordinal);
    }
}
