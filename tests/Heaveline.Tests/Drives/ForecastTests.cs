using Heaveline.Doubts;
using Heaveline.Drives.Recovery;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tests.Drives.Lanes;

namespace Heaveline.Tests.Drives;

/// <summary>What a change would do, foretold by the planted lane's drive before.</summary>
public class ForecastTests
{
    // By the files of both cars: springs 18.5 over 20.7 and 48 over 38 N/mm; rear dampers by the mean of their eight forces' quotients.
    private static readonly LinearChange Cure = new() { FrontSprings = 18.5 / 20.7, RearSprings = 48.0 / 38.0, RearDampers = 1.35 };

    [Fact]
    public void Without_a_car_file_the_cure_is_foretold_as_by_the_files()
    {
        var (before, after) = (LaneReading.Before, LaneReading.After);
        var linear = Linear(Cure);
        var files = Forecast.Of(
            before.Lane.Car, after.Lane.Car, before.Lane.Driven.Model.Load, before.Drive, before.Events, before.Car, null,
            TestContext.Current.CancellationToken);
        Assert.True(linear.Headline.Holds(files.Headline.Value), $"{linear.Headline} {files.Headline}");
        Assert.InRange(linear.Headline.HalfWidth, 0.08, 0.15);
        Assert.Equal(files.Passes.Length, linear.Passes.Length);
    }

    [Fact]
    public void Nothing_changed_does_nothing_and_more_of_a_change_does_more()
    {
        var nothing = Linear(new LinearChange());
        Assert.Equal(0.0, nothing.Headline.Value, 1e-12);
        Assert.All(nothing.Passes, p => Assert.Equal(0.0, p.Hit.Change.Value, 1e-12));
        double[] steps = [.. new[] { 1.0, 1.3, 1.6 }.Select(d => Linear(new LinearChange { RearDampers = d, FrontDampers = d }).Headline.Value)];
        Assert.True(steps[0] > steps[1] && steps[1] > steps[2], string.Join(' ', steps));
        Assert.Throws<RefusedValueException>(() => new LinearChange { FrontSprings = 3.0 });
    }

    /// <summary>The same car stepped through time over the same recovered road: equations of motion against the closed form of frequency.</summary>
    [Fact]
    public void Its_levels_are_those_of_the_half_car_stepped_through_time()
    {
        const double step = 1e-3;
        var reading = LaneReading.Before;
        var car = reading.Car.Car!;
        var pass = Linear(new LinearChange()).Passes.First(p => p.Site == "Chapel hump");
        var road = RecoveredRoad.Each(reading.Drive, reading.Events, reading.Car, TestContext.Current.CancellationToken)
            .Single(r => r.Event == pass.Number);
        var (front, rear) = (Under(0.0), Under(car.Wheelbase));
        var (_, rate) = new PlantedHalfCar(car, step).Over(front, rear);
        var angle = 0.0;
        double[] pitch = [.. rate.Select(r => angle += r * step)];
        var left = (int)((road.Hump.To + car.Wheelbase - road.Distance[0]) / road.Speed / step);
        var rms = Math.Sqrt(pitch.AsSpan(left, 1000).ToArray().Average(p => p * p));
        Assert.Equal(1.0, pass.Headline.Before.Value / rms, 0.03);

        double[] Under(double behind) =>
        [
            .. Enumerable.Range(0, (int)((road.Distance[^1] - road.Distance[0]) / road.Speed / step)).Select(i =>
            {
                var at = ((i * step * road.Speed) - behind) / (road.Distance[1] - road.Distance[0]);
                var k = (int)Math.Floor(at);
                return k < 0 || k + 1 >= road.Height.Length ? 0.0 : road.Height[k] + ((at - k) * (road.Height[k + 1] - road.Height[k]));
            }),
        ];
    }

    [Fact]
    public void Doubts_of_the_files_are_in_its_interval()
    {
        var (before, after) = (LaneReading.Before, LaneReading.After);
        var load = before.Lane.Driven.Model.Load;
        var doubts = JointDoubts.Of([CarDoubts.Of(before.Lane.Car, load), CarDoubts.Of(after.Lane.Car, load)]);
        Forecast Of(bool isDrawn) => Forecast.Of(
            before.Lane.Car, after.Lane.Car, load, before.Drive, before.Events, before.Car,
            isDrawn ? draw => JointDraw.Of(doubts, 20, draw).Models is [var was, var now] ? (was, now) : default : null,
            TestContext.Current.CancellationToken);
        var (stated, drawn) = (Of(false), Of(true));
        Assert.Equal(stated.Headline.Value, drawn.Headline.Value, 1e-12);
        Assert.InRange(drawn.Headline.HalfWidth, 1.03 * stated.Headline.HalfWidth, 0.15);
        // Which passes count is a matter of their roads.
        Assert.Equal(stated.Passes.Select(p => p.IsCounted), drawn.Passes.Select(p => p.IsCounted));
        Assert.Equal(drawn.Headline, Of(true).Headline);
    }

    [Fact]
    public void A_site_of_which_the_measured_change_makes_nothing_makes_nothing_of_the_forecast()
    {
        var plain = Linear(Cure);
        foreach (var site in plain.Passes.Where(p => p.IsCounted).GroupBy(p => p.Site))
        {
            var alone = plain.Weighed(0, new Dictionary<string, double> { [site.Key] = 0.3 });
            Assert.Equal(
                site.Average(p => Math.Log(1.0 + p.Headline.Change.Value)), Math.Log(1.0 + alone.Headline.Value), 1e-9);
            Assert.Equal(plain.Hit, alone.Hit);
        }

        Assert.Equal(plain.Headline, plain.Weighed(0, new Dictionary<string, double>()).Headline);
    }

    [Fact]
    public void Over_the_roads_that_a_car_file_feels_its_own_passes_move_as_the_drive_did()
    {
        var reading = LaneReading.Before;
        var stop = TestContext.Current.CancellationToken;
        var recovery = RecoveredRoad.Recovery(reading.Drive, reading.Events, reading.Car, stop);
        var linear = RecoveredRoad.Each(reading.Drive, reading.Events, reading.Car, stop);
        var felt = FeltRoads.Of(recovery, reading.Lane.Driven.Model, stop);
        Assert.True(Off(felt) < 0.8 * Off(linear), $"{Off(felt)} {Off(linear)}");

        // How far the headline of the file's own passes lies off what was measured, RMS of the logarithm.
        double Off(IReadOnlyList<RecoveredRoad> roads) => Math.Sqrt(roads.Where(road => Measured(road) > 0.0).Average(road => Math.Pow(
            Math.Log(PitchSettling.Of(Pass.Of(reading.Lane.Driven.Model, road.Road, road.Speed)).RmsAngle / Measured(road)), 2.0)));

        double Measured(RecoveredRoad road) => reading.Events.Events.Single(e => e.Number == road.Event).Numbers.Headline;
    }

    private static Forecast Linear(LinearChange change)
    {
        var reading = LaneReading.Before;
        return Forecast.Of(change, "a change", reading.Drive, reading.Events, reading.Car, TestContext.Current.CancellationToken);
    }
}
