using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Measures.Comfort;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Press;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Tests.Figures;

namespace Heaveline.Tests.Measures.Comfort;

/// <summary>
/// Comfort of a seat in a pass against closed forms: a linear car on a sine road moves in sines, so each weighted r.m.s. is the exact factor of ISO
/// 8041-1 at that frequency times the r.m.s., and each point's motion follows from the body's (kinematics of a rigid body).
/// </summary>
public class PassComfortTests
{
    private static readonly Seat Driver = new() { Name = "driver", BehindFrontAxle = new(1.4), LeftOfMiddle = new(0.35), Height = new(0.52) };

    // Equal slopes either way, no stops in reach: sines in, sines out.
    private static Car Linear
    {
        get
        {
            var damper =
                new Damper { Law = new TableDamper(new ForceTable([1.0, 2.0], [1500.0, 3000.0]), new ForceTable([1.0, 2.0], [1500.0, 3000.0])) };
            var plain = PlainCar.Saloon;
            return plain with
            {
                Body = plain.Body with { PitchAxisHeight = new Amount<Length>(0.30), RollAxisHeight = new Amount<Length>(0.10) },
                Front = plain.Front with { Damper = damper },
                Rear = plain.Rear with { Damper = damper },
            };
        }
    }

    [Theory]
    [InlineData(15.0, 20.0)]
    [InlineData(4.0, 20.0)]
    public void On_a_sine_road_each_weighted_rms_is_the_factor_times_the_rms(double wavelength, double speed)
    {
        var (pass, window, frequency) = Steady(wavelength, speed);
        var comfort = PassComfort.Of(pass, Driver, window: window);
        Assert.Equal(11, comfort.Axes.Count);
        foreach (var axis in comfort.Axes)
        {
            Assert.True(axis.UnweightedRms > 1e-3, axis.At.Words);
            Assert.Equal(1.0, axis.Weighted.Rms / (axis.At.Weighting.Factor(frequency) * axis.UnweightedRms), 0.01);

            // A sine: crest √2, VDV = (3/8·T)^¼·amplitude, MTVV the r.m.s. over whole seconds.
            Assert.Equal(Math.Sqrt(2.0), axis.Weighted.CrestFactor!.Value, 0.03);
            Assert.Equal(1.0, axis.Weighted.VibrationDose / (Math.Pow(0.375 * window.Length, 0.25) * Math.Sqrt(2.0) * axis.Weighted.Rms), 0.01);
            Assert.Equal(axis.At.ComfortFactor * axis.Weighted.Rms, axis.Rms.ForComfort, 1e-12);
        }

        Assert.Equal(Math.Sqrt(comfort.Axes.Sum(axis => axis.Rms.ForComfort * axis.Rms.ForComfort)), comfort.Total.Value, 1e-12);
        Assert.Equal(1.0, comfort.Axes.Sum(comfort.ShareOf), 1e-9);
        Assert.Equal(["seat yaw"], comfort.Total.Absent.Select(at => at.Words));
        Assert.True(comfort.SeatVertical.Evaluation.RmsIsEnough);
    }

    [Fact]
    public void Points_move_as_points_of_a_rigid_body()
    {
        var (pass, window, _) = Steady(8.0, 20.0);
        var points = new SeatPoints { BackrestAbove = new(0.4), BackrestBehind = new(0.2), FeetAhead = new(0.7), FeetBelow = new(0.3) };
        var comfort = PassComfort.Of(pass, Driver, points, window);
        double Rms(double[] trace) => Math.Sqrt(
            pass.Time.Zip(trace).Where(p => p.First >= window.From - 1e-9 && p.First <= window.To + 1e-9).Average(p => p.Second * p.Second));
        double[] ForeAft(double height) =>
            [.. pass.PitchAcceleration.Zip(pass.Pitch, (acceleration, pitch) => ((height - 0.30) * acceleration) - (9.80665 * pitch))];
        double[] Lateral(double height) =>
            [.. pass.RollAcceleration.Zip(pass.Roll, (acceleration, roll) => (-(height - 0.10) * acceleration) + (9.80665 * roll))];
        // The sprung weight of the plain saloon, 600 kg in front and 516 kg behind on 2.6 m, balances here behind the front axle, and is as heavy
        // left as right.
        const double balance = 2.6 * 516.0 / 1116.0;
        double[] Vertical(double behindFrontAxle) =>
            [.. pass.HeaveAcceleration
                .Select((heave, k) => heave + ((behindFrontAxle - balance) * pass.PitchAcceleration[k]) + (0.35 * pass.RollAcceleration[k]))];
        void Same(MeasuringPoint point, MotionAxis axis, double[] trace) =>
            Assert.Equal(1.0, comfort.At(point, axis).UnweightedRms / Rms(trace), 1e-9);

        Same(MeasuringPoint.Seat, MotionAxis.X, ForeAft(0.52));
        Same(MeasuringPoint.Backrest, MotionAxis.X, ForeAft(0.92));
        Same(MeasuringPoint.Feet, MotionAxis.X, ForeAft(0.22));
        Same(MeasuringPoint.Seat, MotionAxis.Y, Lateral(0.52));
        Same(MeasuringPoint.Feet, MotionAxis.Y, Lateral(0.22));
        Same(MeasuringPoint.Seat, MotionAxis.Z, Vertical(1.4));
        Same(MeasuringPoint.Backrest, MotionAxis.Z, Vertical(1.6));
        Same(MeasuringPoint.Feet, MotionAxis.Z, Vertical(0.7));
        Same(MeasuringPoint.Seat, MotionAxis.Pitch, [.. pass.PitchAcceleration]);
        Same(MeasuringPoint.Seat, MotionAxis.Roll, [.. pass.RollAcceleration]);
        Assert.Equal(1.0, comfort.HeadForeAftRms / Rms(ForeAft(1.22)), 1e-9);
    }

    [Fact]
    public void A_two_wheeler_has_no_roll_and_no_lateral_and_says_so()
    {
        var (pass, _) = DrawnCars.Over(DrawnCars.Hump, DrawnCars.TwoWheeler, 40.0);
        var comfort = PassComfort.Of(pass, DrawnCars.TwoWheeler.Seats[0]);
        Assert.Equal(["seat y", "seat roll", "seat yaw", "backrest y", "feet y"], comfort.Total.Absent.Select(at => at.Words));
        Assert.Throws<RefusedValueException>(() => comfort.At(MeasuringPoint.Seat, MotionAxis.Roll));
        Assert.Equal(3.0, comfort.Window.Length, 1e-9);
        Assert.Equal(-0.5 * DrawnCars.TwoWheeler.Front.Tyre.ContactLength.Si / pass.Speed, comfort.Window.From, 1e-9);
    }

    [Fact]
    public void A_hump_is_an_event_that_an_rms_hides()
    {
        // The dose of one hump hardly depends on how long one watches afterwards, the r.m.s. of a record goes with 1/√T.
        var model = RideModel.Of(DrawnCars.Saloon);
        var shortly = PassComfort.Of(Pass.Of(model, DrawnCars.Hump, 10.0), Driver);
        var longer = PassComfort.Of(Pass.Of(model, DrawnCars.Hump, 10.0, new() { Record = new() { SettlingTime = 30.0 } }), Driver);
        Assert.Equal(1.0, longer.Recorded.VibrationDose / shortly.Recorded.VibrationDose, 1e-3);
        Assert.Equal(1.0, longer.Recorded.LinearMtvv / shortly.Recorded.LinearMtvv, 1e-3);
        Assert.Equal(Math.Sqrt(shortly.Recorded.Duration / longer.Recorded.Duration), longer.Recorded.Rms / shortly.Recorded.Rms, 0.01);
        // What is printed as a root mean square has a window of its own, and no word or sickness of a motion that lasts.
        Assert.Equal(shortly.SeatVertical.Weighted.Rms, longer.SeatVertical.Weighted.Rms, 1e-9);
        Assert.True(shortly is { IsSingleEvent: true, HoldsHit: true, Reactions.Count: 0 });
        Assert.False(PassComfort.Of(Pass.Of(model, DrawnCars.Hump, 0.8), Driver).HoldsHit);
        Assert.False(Evaluation.From(longer.Recorded).RmsIsEnough);
    }

    [Fact]
    public void Too_few_samples_an_unrecorded_window_and_a_broken_pass_are_refused()
    {
        var model = RideModel.Of(DrawnCars.Saloon);
        Assert.Contains(
            "Hz",
            Assert.Throws<RefusedValueException>(() => PassComfort.Of(
                Pass.Of(model, DrawnCars.Hump, 10.0, new() { Record = new() { SamplesPerSecond = 100.0 } }), Driver)).Message,
            StringComparison.Ordinal);
        var pass = Pass.Of(model, DrawnCars.Hump, 10.0);
        Assert.Equal("window", Assert.Throws<RefusedValueException>(() => PassComfort.Of(pass, Driver, window: new Window(0.0, 100.0))).What);
        var stop = DrawnCars.Saloon.Front.BumpStop! with { SolidAfter = new(0.010) };
        var (broken, _) = DrawnCars.Over(DrawnCars.Hump, DrawnCars.Saloon with { Front = DrawnCars.Saloon.Front with { BumpStop = stop } }, 40.0);
        Assert.Equal("pass", Assert.Throws<RefusedValueException>(() => PassComfort.Of(broken, Driver)).What);
    }

    [Fact]
    public void The_time_record_on_a_random_road_agrees_with_its_own_spectrum()
    {
        var (pass, comfort) = OnRandomRoad();
        double[] vertical = [.. pass.Time.Zip(pass.VerticalAcceleration(Driver.BehindFrontAxle.Si, Driver.LeftOfMiddle.Si))
            .Where(p => p.First >= 0.0 && p.First <= comfort.Window.To).Select(p => p.Second)];
        var spectrum = AccelerationSpectrum.Of(SampledAcceleration.Of(vertical, 1.0 / pass.SampleStep));
        Assert.Equal(1.0, spectrum.WeightedRms(Weightings.Wk) / comfort.SeatVertical.Weighted.Rms, 0.02);
    }

    /// <summary>Set HEAVELINE_SAMPLES to a folder to keep the file there and look at it.</summary>
    [Fact]
    public void The_figure_shows_every_axis_and_the_total_and_quotes_nothing_from_memory()
    {
        var (pass, comfort) = OnRandomRoad();
        var figure = ComfortCountFigure.Of(pass, comfort);
        var counted = (CategoryPanel)figure.Panels[2];
        Assert.Equal(12, counted.Categories.Length);
        Assert.Equal(comfort.Total.Value, counted.Categories[0].Values[0].Value);
        Assert.Equal(comfort.Pitch.UnweightedRms, ((CategoryPanel)figure.Panels[1]).Categories[0].Values[0].Value);
        Assert.Equal(comfort.HeadForeAftRms, ((CategoryPanel)figure.Panels[0]).Categories[0].Values[0].Value);
        Assert.DoesNotContain("ecalled", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("yaw", figure.Caption, StringComparison.Ordinal);
        var png = Png.Of(figure);
        Assert.True(png.Length > 20_000);
        if (Environment.GetEnvironmentVariable("HEAVELINE_SAMPLES") is { } kept)
        {
            File.WriteAllBytes(Path.Combine(kept, "comfort-count.png"), png);
        }
    }

    [Fact]
    public void A_level_road_has_nothing_to_show()
    {
        var pass = Pass.Of(RideModel.Of(DrawnCars.Saloon), Road.Flat, 20.0);
        Assert.Throws<RefusedValueException>(() => ComfortCountFigure.Of(pass, PassComfort.Of(pass, Driver)));
    }

    private static (Pass Pass, PassComfort Comfort) OnRandomRoad()
    {
        var road = Road.From(
            new RandomRoad { Spectrum = RoadSpectrum.Of(RoadClass.B), Track = new(1.5), Length = new(1000.0), Seed = 3, LeadIn = new(20.0) });
        var pass = Pass.Of(RideModel.Of(DrawnCars.Saloon, DrawnCars.Driver), road, 80.0 / 3.6);
        return (pass, PassComfort.Of(pass, DrawnCars.Saloon.Seats[0]));
    }

    // The right track a quarter wave behind: pitch, heave and roll at once. The last 30 whole waves, 60 waves after the start.
    private static (Pass Pass, Window Window, double Frequency) Steady(double wavelength, double speed)
    {
        var frequency = speed / wavelength;
        var road = Road.From(new SineRoad { Amplitude = new(0.003), Wavelength = new(wavelength), Waves = 92.0, RightLag = new(0.5 * Math.PI) });
        var pass = Pass.Of(RideModel.Of(Linear), road, speed);
        return (pass, new Window(61.0 / frequency, (91.0 / frequency) - pass.SampleStep), frequency);
    }
}
