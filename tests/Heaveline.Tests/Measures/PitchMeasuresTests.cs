using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Measures;

/// <summary>
/// Hit and settling of given traces against closed forms: straight lines for the windows' ends, a damped swing for everything else.
/// </summary>
public class PitchMeasuresTests
{
    private const double Speed = 10.0;

    // 3.7 m long, wheelbase 2.6 m, 0.2 m of contact: touched at −0.01 s, left at 0.63 s.
    private const double Touch = -0.01;
    private const double Leaves = 0.63;

    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly RideModel Model = RideModel.Of(
        PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Tyre = PlainCar.FrontAxle.Tyre with { ContactLength = new Amount<Length>(0.2) } } });

    // 1.3 Hz, damping ratio 0.2: turning points 0.19 s after t = 0 and every 0.385 s, each 53 % of the one before; five reach a tenth of the first.
    private static readonly DampedSwing Swing = new(0.05, 1.6337, 8.0036);

    private static Pass Given(params (int Channel, Func<double, double> At)[] traces) => GivenPass.Of(Model, Hump, Speed, 4.0, 400.0, traces);

    [Fact]
    public void The_windows_are_those_of_the_road_the_wheelbase_and_the_contact()
    {
        var measures = PitchMeasures.Of(Given());
        Assert.Equal(Touch, measures.Hit!.Window.From, 1e-12);
        Assert.Equal(Leaves, measures.Hit.Window.To, 1e-12);
        Assert.Equal(Leaves, measures.Settling!.Window.From, 1e-12);
        Assert.Equal(Leaves + 1.0, measures.Settling.Window.To, 1e-12);
        // An obstacle from 0.5 to 3 m of the same road.
        var part = PitchMeasures.Of(GivenPass.Of(Model, Hump with { Event = new RoadEvent(0.5, 3.0) }, Speed, 4.0, 400.0));
        Assert.Equal(0.04, part.Hit!.Window.From, 1e-12);
        Assert.Equal(0.56, part.Hit.Window.To, 1e-12);
        Assert.Equal(0.56, part.Settling!.Window.From, 1e-12);
    }

    [Fact]
    public void On_a_road_without_an_obstacle_numbers_end_when_the_rear_wheels_have_left_it_however_long_the_record_runs_on()
    {
        // 10 m of waves at 10 m/s and 2.6 m of wheelbase: until 1.26 s. A pitch that grows evenly is told from its window's end alone.
        var waves = Road.From(new SineRoad { Wavelength = new(2.5), Amplitude = new(0.01), Waves = 4 });
        var leaves = (waves.End + Model.Car.Wheelbase.Si) / Speed;
        foreach (var last in new[] { 2.0, 4.0, 9.0 })
        {
            var pass = GivenPass.Of(
                Model, waves, Speed, last, 400.0, (Channel.Pitch, t => 0.02 * t), (Channel.Accelerations + Channel.Pitch, t => 3.0 * t));
            var measures = PitchMeasures.Of(pass);
            Assert.Equal(0.02 * leaves / Math.Sqrt(3.0), measures.RmsAngle, 1e-12);
            Assert.Equal(3.0 * leaves / Math.Sqrt(3.0), measures.RmsAcceleration, 1e-12);
            Assert.Equal(measures.RmsAngle, WholePassCatalogue.RmsPitch.Of(pass));
        }
    }

    // A rising line is largest where a window ends, a falling one where it begins.
    [Fact]
    public void Straight_lines_show_where_each_window_begins_and_ends()
    {
        const double slope = 0.05;
        var rising = PitchMeasures.Of(Given(
            (Channel.Pitch, t => slope * (t + 0.1)),
            (Channel.Rates + Channel.Pitch, t => 3.0 * (t + 0.1)),
            (Channel.Accelerations + Channel.Pitch, t => 7.0 * (t + 0.1))));
        Assert.Equal(slope * (Leaves + 0.1), rising.Hit!.PeakAngle, 1e-14);
        Assert.Equal(3.0 * (Leaves + 0.1), rising.Hit.PeakRate, 1e-12);
        Assert.Equal(7.0 * (Leaves + 0.1), rising.Hit.PeakAcceleration, 1e-12);
        Assert.Equal(7.0 * Rms(Touch + 0.1, Leaves + 0.1), rising.Hit.RmsAcceleration, 1e-12);
        Assert.Equal(slope * (Leaves + 1.1), rising.Settling!.PeakAngle, 1e-14);
        Assert.Equal(slope * Rms(Leaves + 0.1, Leaves + 1.1), rising.Settling.RmsAngle, 1e-14);
        Assert.Equal(7.0 * Rms(Leaves + 0.1, Leaves + 1.1), rising.Settling.RmsAcceleration, 1e-12);
        Assert.Equal(slope * Rms(Leaves + 0.9, 4.1) * Math.Sqrt(3.2 - Leaves), rising.Settling.LateAngle, 1e-13);
        Assert.Equal(slope * 4.1, rising.PeakAngle, 1e-14);
        Assert.Equal(slope * Rms(0.1, 4.1), rising.RmsAngle, 1e-14);
        Assert.Equal(7.0 * 4.1, rising.PeakAcceleration, 1e-12);
        Assert.Equal(7.0 * Rms(0.1, 4.1), rising.RmsAcceleration, 1e-12);

        var falling = PitchMeasures.Of(Given(
            (Channel.Pitch, t => slope * (4.0 - t)),
            (Channel.Rates + Channel.Pitch, t => t - 4.0),
            (Channel.Accelerations + Channel.Pitch, t => 2.0 * (4.0 - t))));
        Assert.Equal(slope * (4.0 - Touch), falling.Hit!.PeakAngle, 1e-14);
        Assert.Equal(4.0 - Touch, falling.Hit.PeakRate, 1e-12);
        Assert.Equal(2.0 * (4.0 - Touch), falling.Hit.PeakAcceleration, 1e-12);
        Assert.Equal(slope * (4.0 - Leaves), falling.Settling!.PeakAngle, 1e-14);
        Assert.Equal(slope * 4.1, falling.PeakAngle, 1e-14);
        Assert.Equal(2.0 * 4.1, falling.PeakAcceleration, 1e-12);
    }

    [Fact]
    public void A_damped_swing_has_the_headline_the_peaks_and_the_late_pitch_of_its_closed_forms()
    {
        var measures = PitchMeasures.Of(Given(
            (Channel.Pitch, Swing.At),
            (Channel.Rates + Channel.Pitch, t => Swing.Derivative(t, 1)),
            (Channel.Accelerations + Channel.Pitch, t => Swing.Derivative(t, 2))));
        var settling = measures.Settling!;
        Same(Swing.Root2(Leaves, Leaves + 1.0), settling.RmsAngle);
        Same(Swing.Root2(Leaves, Leaves + 1.0, 2), settling.RmsAcceleration);
        Same(Swing.Root2(Leaves + 0.8, 4.0), settling.LateAngle);
        // The rear leaves on the way back from the second lobe, still farther out than the third will be.
        Same(Math.Abs(Swing.At(Leaves)), settling.PeakAngle);
        Same(Swing.Top, measures.Hit!.PeakAngle);
        Same(Swing.Top, measures.PeakAngle);
        Same(Swing.Root2(0.0, 4.0) / 2.0, measures.RmsAngle);
        Same(Swing.Root2(0.0, 4.0, 2) / 2.0, measures.RmsAcceleration, 2e-4);
    }

    [Fact]
    public void Half_swings_and_the_settling_time_are_those_of_the_peak_and_count_from_the_rear()
    {
        var settling = PitchMeasures.Of(Given((Channel.Pitch, Swing.At))).Settling!;
        double[] expected = [.. Enumerable.Range(0, 12).Select(n => Swing.At(Swing.FirstTop + (n * Swing.HalfPeriod)))
            .Where((top, n) => Swing.FirstTop + (n * Swing.HalfPeriod) > Leaves && Math.Abs(top) > 0.1 * Swing.Top)];
        Assert.Equal(expected.Length, settling.Lobes.Count);
        Assert.Equal(2, settling.Lobes.Count);
        Assert.All(expected.Zip(settling.Lobes), p => Same(p.First, p.Second));
        Assert.True(settling.Lobes[0] > 0.0 && settling.Lobes[1] < 0.0);
        Assert.Equal(1.0, settling.Cycles);
        Assert.Equal(Swing.LastAbove(0.1 * Swing.Top), settling.TimeFromStart!.Value, 1e-7);
        Assert.Equal(Swing.LastAbove(0.1 * Swing.Top) - Leaves, settling.TimeFromRear!.Value, 1e-7);
    }

    [Fact]
    public void A_car_that_still_swings_at_the_end_has_no_settling_time_and_one_at_rest_in_time_has_none_to_wait()
    {
        var swings = PitchMeasures.Of(Given((Channel.Pitch, t => 0.02 * Math.Cos(9.0 * (4.0 - t))))).Settling!;
        Assert.Null(swings.TimeFromStart);
        Assert.Null(swings.TimeFromRear);
        // At rest before the rear has left.
        var early = PitchMeasures.Of(Given((Channel.Pitch, t => t is > 0.0 and < 0.5 ? 0.02 * Math.Sin(2.0 * Math.PI * t) : 0.0))).Settling!;
        Assert.InRange(early.TimeFromStart!.Value, 0.48, 0.49);
        Assert.Equal(0.0, early.TimeFromRear);
        Assert.Empty(early.Lobes);
        Assert.Equal(0.0, early.RmsAngle, 1e-15);
    }

    // Half the wheelbase, 1.3 m, times the angle over the heave.
    [Fact]
    public void The_share_compares_the_ends_way_by_pitching_with_the_heave()
    {
        var measures = PitchMeasures.Of(Given((Channel.Pitch, t => t < Leaves ? 0.01 : 0.02), (Channel.Heave, t => t < Leaves ? -0.04 : -0.05)));
        Assert.Equal(1.3 * 0.02 / 0.05, measures.Settling!.Share, 5e-3);
        var (pitch, heave) = ((Leaves * 1e-4) + ((4.0 - Leaves) * 4e-4), (Leaves * 16e-4) + ((4.0 - Leaves) * 25e-4));
        // Of the whole record the heave is that above the hump, which is not nothing under the wheels.
        Assert.NotEqual(1.3 * Math.Sqrt(pitch / heave), measures.Share, 1e-3);
    }

    // Up a step the body rises with the road: what it heaves is what is left, 5 mm here, whatever the step's height. Half the wheelbase is 1.3 m.
    [Theory]
    [InlineData(0.02)]
    [InlineData(-0.02)]
    [InlineData(0.3)]
    public void A_change_of_the_roads_level_is_no_heave(double rise)
    {
        var road = Road.From(new Ramp { Height = new(rise), Length = new(3.0) });
        var leaves = (3.0 + 2.6) / Speed;
        var measures = PitchMeasures.Of(GivenPass.Of(
            Model, road, Speed, 4.0, 400.0, (Channel.Pitch, _ => 0.01), (Channel.Heave, t => t < leaves ? 0.0 : rise + 0.005)));
        Assert.Equal(1.3 * 0.01 / 0.005, measures.Settling!.Share, 5e-2);
    }

    [Fact]
    public void A_road_without_an_obstacle_has_neither_hit_nor_settling()
    {
        var road = Road.From(new SineRoad { Amplitude = new(0.01), Wavelength = new(5.0), Waves = 4.0 });
        var measures = PitchMeasures.Of(GivenPass.Of(Model, road, Speed, 4.0, 400.0, (Channel.Pitch, Swing.At)));
        Assert.Null(measures.Hit);
        Assert.Null(measures.Settling);
        var leaves = (road.End + Model.Car.Wheelbase.Si) / Speed;
        Same(Swing.Root2(0.0, leaves) / Math.Sqrt(leaves), measures.RmsAngle);
    }

    // √(mean of t² over a … b).
    private static double Rms(double a, double b) => Math.Sqrt(((a * a) + (a * b) + (b * b)) / 3.0);

    private static void Same(double expected, double actual, double share = 2e-6) => Assert.Equal(expected, actual, share * Math.Abs(expected));
}
