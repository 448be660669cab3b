using System.Globalization;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Figures;
using Heaveline.Tests.Measures;

namespace Heaveline.Tests.Studies;

/// <summary>Every number of the story's sentences, from traces whose numbers are worked out by hand.</summary>
public class PassStoryTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });

    private static readonly Axle Stopped = PlainCar.FrontAxle with
    {
        BumpStop = new Stop { Clearance = new(0.060), Rate = new Amount<Stiffness>(40e3) },
        ReboundStop = new Stop { Clearance = new(0.070), Rate = new Amount<Stiffness>(40e3) },
    };

    private static readonly Car Car = PlainCar.Saloon with
    {
        Front = Stopped with { Tyre = Stopped.Tyre with { ContactLength = new Amount<Length>(0.4) } },
        Body = PlainCar.Saloon.Body with { PitchAxisHeight = new Amount<Length>(0.3) },
        Seats =
        [
            new Seat { Name = "driver", BehindFrontAxle = new(1.3), LeftOfMiddle = new(0.4), Height = new(0.5), HeadAboveSeat = new(0.7) },
            new Seat { Name = "passenger", BehindFrontAxle = new(1.3), LeftOfMiddle = new(-0.4), Height = new(0.5), HeadAboveSeat = new(0.7) },
        ],
        Headlamp = new Headlamp { Height = new(0.66), AheadOfFrontAxle = new(0.75), Drop = new(0.012) },
    };

    // At 36 km/h the front touches half a contact length ahead, at −0.02 s, and the rear leaves at (3.7 + 2.6)/10 = 0.63 s.
    private static IReadOnlyList<string> StoryOf(Road road, params (int Channel, Func<double, double> At)[] traces) => StoryOf(Car, road, traces);

    private static IReadOnlyList<string> StoryOf(Car car, Road road, params (int Channel, Func<double, double> At)[] traces)
    {
        var pass = GivenPass.Of(RideModel.Of(car), road, 10.0, 4.0, 400.0, traces);
        return [.. PassStory.Of(pass, PassMeasures.Of(pass)).Select(s => s.Text)];
    }

    // 1.3 Hz and a damping ratio of 0.2: the first top, 2.07°, at 0.171 s; at 0.63 s 0.97° back from the second. The rest by the closed forms.
    [Fact]
    public void Hit_and_settling_are_told_with_their_own_numbers()
    {
        var swing = new DampedSwing(0.05, 1.6337, 8.0036);
        var story = StoryOf(
            Hump,
            (Channel.Pitch, swing.At),
            (Channel.Accelerations + Channel.Pitch, t => t < 0.4 ? 6.25 * t : 2.5),
            (Channel.Heave, t => swing.At(t) * 0.65));
        Assert.Equal("plain saloon, empty, over round-top hump, 75 mm high and 3.7 m long, both tracks at 36 km/h.", story[0]);
        double Degrees(double angle) => angle * 180.0 / Math.PI;
        Assert.Equal(
            FormattableString.Invariant(
                $"The hit lasts 0.65 s: the pitch angle reaches {Degrees(swing.Top):F2}°, the pitch acceleration 2.50 rad/s²."),
            story[1]);
        Assert.Equal(
            string.Create(
                CultureInfo.InvariantCulture,
                $"The settling: in the second after the rear wheels have left, the pitch is {Degrees(swing.Root2(0.63, 1.63)):F3}° root mean square, "
                + $"{-Degrees(swing.At(0.63)):F2}° at most."),
            story[2]);
        var late = swing.LastAbove(0.1 * swing.Top) - 0.63;
        Assert.StartsWith(
            string.Create(
                CultureInfo.InvariantCulture,
                $"It falls below a tenth of its peak for good {late:F2} s after the rear wheels have left; until then 2 half-swings "
                + $"reach a tenth of the peak. (This time"),
            story[3],
            StringComparison.Ordinal);
        // Half of 2.6 m over 0.65 m.
        Assert.Equal("In that second the ends move 2.00 times as much by pitching as by heaving above the road.", story[4]);
    }

    [Fact]
    public void One_swing_none_and_a_car_that_still_swings_are_told_so()
    {
        // A hump of pitch round 0.3 s, and one lower round 1 s.
        double Bump(double t, double at, double height) => height * Math.Exp(-(t - at) * (t - at) / 0.005);
        Assert.Contains(
            "; until then one half-swing reaches a tenth of the peak.",
            StoryOf(Hump, (Channel.Pitch, t => Bump(t, 0.3, 0.05) + Bump(t, 1.0, 0.006)))[3],
            StringComparison.Ordinal);
        Assert.Contains(
            "; until then no half-swing reaches a tenth of the peak.",
            StoryOf(Hump, (Channel.Pitch, t => Bump(t, 0.3, 0.05) + Bump(t, 1.0, 0.004)))[3],
            StringComparison.Ordinal);
        // A whole number of half swings more: tops at 4 − k·π/9 s after 0.63 s, ten of them, the last at the
        // record's end and no turning point any more.
        var swings = StoryOf(Hump, (Channel.Pitch, t => 0.02 * Math.Cos(9.0 * (4.0 - t))));
        Assert.Equal(
            "It does not fall below a tenth of its peak within the 4.0 s recorded; since the rear wheels left 9 half-swings reach a tenth "
            + "of the peak.",
            swings[3]);
    }

    [Fact]
    public void Both_stops_of_an_axle_touched_alike_are_told_once_and_one_alone_by_its_name()
    {
        double Up(double t) => 0.005 + (0.060 * Math.Cos(2.0 * Math.PI * 2.5 * (t - 0.1031)));
        Assert.Contains(
            "Both front bump stops are touched 10 times, pressed 5 mm at most.", StoryOf(Hump, (Channel.Wheel, Up), (Channel.Wheel + 1, Up)));
        Assert.Contains(
            "The front left bump stop is touched once, pressed less than 1 mm.",
            StoryOf(Hump, (Channel.Wheel, t => 0.0603 * Math.Exp(-(t - 0.7) * (t - 0.7) / 0.01))));
        double Down(double t) => 0.082 * -Math.Exp(-(t - 0.7) * (t - 0.7) / 0.01);
        var one = StoryOf(Hump, (Channel.Wheel + 1, Down));
        Assert.Contains("The front right rebound stop is touched once, pulled 12 mm at most.", one);
        Assert.DoesNotContain(one, s => s.Contains("bump stop", StringComparison.Ordinal));
        Assert.Contains(
            "The front right rebound stop is touched twice, pulled 12 mm at most.", StoryOf(Hump, (Channel.Wheel + 1, t => Down(t) + Down(t - 1.0))));
    }

    [Fact]
    public void A_wheel_off_the_road_is_told_with_its_time()
    {
        Func<double, double> off = t => t is > 0.4999 and < 0.6001 ? -290.0 * 9.80665 : 0.0;
        Assert.Contains("The rear left wheel is off the road for 0.10 s.", StoryOf(Hump, (Channel.Tyre + 2, off)));
        Assert.Contains("Both rear wheels are off the road for 0.10 s.", StoryOf(Hump, (Channel.Tyre + 2, off), (Channel.Tyre + 3, off)));
    }

    // Heave alone gives both seats the same: told once. Roll gives the left one more.
    [Fact]
    public void Seats_alike_are_told_once()
    {
        Assert.Contains(
            "Driver and passenger: 3.2 m/s² up and down at most, 0.3 m/s² fore and aft at the head.",
            StoryOf(Hump, (Channel.Accelerations + Channel.Heave, t => t < 1.0 ? 0.0 : -3.2), (Channel.Pitch, _ => 0.03)));
        var apart = StoryOf(Hump, (Channel.Accelerations + Channel.Heave, _ => 1.0), (Channel.Accelerations + Channel.Roll, _ => 2.0));
        Assert.Contains("Driver: 1.8 m/s² up and down at most, 0.0 m/s² fore and aft at the head.", apart);
        Assert.Contains("Passenger: 0.2 m/s² up and down at most, 0.0 m/s² fore and aft at the head.", apart);
    }

    // The plain saloon stands level enough: its trim adds its own pitch to the 1.2 %.
    [Fact]
    public void The_beam_is_told_above_or_below_the_horizontal()
    {
        var still = 0.012 + RideModel.Of(Car).Trim.Pitch;
        var story = StoryOf(Hump, (Channel.Pitch, t => 0.02 - (0.01 * t)));
        string Aim(double drop) => FormattableString.Invariant($"{100.0 * Math.Abs(drop):F2} % {(drop < 0.0 ? "above" : "below")}");
        Assert.Equal(
            $"The dipped beam points {Aim(still)} the horizontal standing under this load, and swings between {Aim(still - 0.02)} and "
            + $"{Aim(still + 0.021)} it.",
            story[^1]);
        Assert.Contains("above and", story[^1], StringComparison.Ordinal);
    }

    [Fact]
    public void A_road_without_an_obstacle_is_told_as_a_whole()
    {
        var road = Road.From(new SineRoad { Amplitude = new(0.01), Wavelength = new(5.0), Waves = 4.0 });
        var story = StoryOf(
            road, (Channel.Pitch, t => t < 0.0 ? 0.02 : 0.01), (Channel.Accelerations + Channel.Pitch, _ => 1.5), (Channel.Heave, _ => 0.026));
        Assert.Equal(
            "Until the rear wheels have left the road the body pitches 0.573° root mean square, with 1.50 rad/s² root mean square; "
            + "1.15° is the most.",
            story[1]);
        Assert.Equal("The ends move 0.50 times as much by pitching as by heaving.", story[2]);
    }

    [Fact]
    public void A_pass_that_stopped_early_is_told_by_why_it_did()
    {
        var story = StoryOf(Hump, (Channel.Pitch, t => t < 1.0 ? 0.0 : 0.4));
        Assert.Equal(2, story.Count);
        Assert.StartsWith("The pitch angle passed 20° at 1.00 s", story[1], StringComparison.Ordinal);
    }

    // One wheel at each end: no tracks, and a rider who is a block on the seat and said to be one.
    [Fact]
    public void A_two_wheeler_is_told_as_one()
    {
        var story = StoryOf(DrawnCars.TwoWheeler, Hump);
        Assert.Contains("over round-top hump, 75 mm high and 3.7 m long at 36 km/h", story[0], StringComparison.Ordinal);
        Assert.Contains(story, s => s.StartsWith("A rider is counted as a rigid block", StringComparison.Ordinal));
        Assert.DoesNotContain(StoryOf(Hump), s => s.Contains("rider", StringComparison.Ordinal));
    }
}
