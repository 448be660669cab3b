using System.Globalization;
using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Press;
using Heaveline.Tests.House;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.RealInput;

/// <summary>Example cars over a measured road, one with a measured damper. Bounds are physical sense, no source.</summary>
public class MeasuredRoadTests
{
    private const double Speed = 30.0 / 3.6;

    public static TheoryData<string> Cases => ["fern-saloon", "tarn-off-roader", "sprig-kit-car with the damper of run-B_1"];

    [Theory, MemberData(nameof(Cases))]
    public void A_pass_over_measured_stones_completes_and_makes_physical_sense(string name)
    {
        var road = StoneBlocks.Road;
        var model = RideModel.Of(CarOf(name));
        var pass = Pass.Of(model, road, Speed);
        Assert.Equal(PassOutcome.Completed, pass.Outcome);
        var measures = PassMeasures.Of(pass);
        var still = measures.Wheels.Sum(wheel => wheel.StaticLoad);
        var mean = Enumerable.Range(0, 4).Sum(i => pass.TyreLoad(i).Average());
        Report(name, pass, measures, mean / still);

        Assert.NotNull(pass.Statistics.PitchError);
        Assert.InRange(pass.Statistics.PitchError.Value, 0.0, 3e-3);
        // Friction turns with every stone: at 0.625 ms the stated error of the saloon's tyre loads is 0.7 %, and the pass says so.
        Assert.InRange(pass.Statistics.TyreLoadError!.Value, 0.0, 1e-2);
        // Nothing carries the car but its tyres, and it ends at rest.
        Assert.InRange(mean / still, 0.99, 1.01);
        Assert.All(measures.Wheels, wheel => Assert.InRange(wheel.LoadVariation, 0.05, 1.3));
        Assert.All(measures.Wheels, wheel => Assert.True(wheel.LeastLoad >= 0.0 && wheel.GreatestLoad > wheel.StaticLoad));
        Assert.InRange(measures.RmsHeaveAcceleration, 0.2, 8.0);
        Assert.InRange(measures.Pitch.RmsAngle, 1e-4, 0.03);

        // Settled long before the end of the record, the body leaves nothing to see there; the rear wheels' road is the front's again.
        var figure = PassFigure.Of(pass, measures);
        Assert.Equal($"{model.Car.Name} over stone blocks at 30 km/h", figure.Title);
        Assert.True(figure.SharedX!.To > pass.RearLeaves, "the axis ends before the road");
        var panels = figure.Panels.OfType<ChartPanel>().ToArray();
        Assert.Equal(["front left", "front right"], panels[0].Traces.Select(trace => trace.Name));
        Assert.All(panels[^1].Traces, trace => Assert.InRange(trace.Pen.Width, 0.1, 0.8));
        Draw(name, figure);
    }

    [Theory, MemberData(nameof(Cases))]
    public void What_the_stones_put_in_is_dissipated_or_stored(string name)
    {
        var road = StoneBlocks.Road;
        var model = RideModel.Of(CarOf(name));
        var timing = PassTiming.Of(
            new(model, road, Speed), new() { SamplesPerSecond = 4000.0, SettlingTime = 1.0 }, FixedStep.Default);
        var under = RoadUnderWheels.Of(model, road);
        var samples = PassRun.Of(model, under, Speed, timing);
        var table = under.Table(Speed, timing.Start, timing.SampleStep, timing.Samples);
        var ledger = new EnergyLedger(model);
        for (var k = 0; k < timing.Samples; k++)
        {
            ledger.Add(samples.AsSpan(k * Channel.Count, Channel.Count), table[2 * k], table[(2 * k) + 1], timing.SampleStep);
        }

        TestContext.Current.TestOutputHelper?.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name}: road {ledger.RoadWork:F1} J, dissipated {ledger.Dissipated:F1} J, stored {ledger.Stored:F2} J, turnover "
            + $"{ledger.Turnover:F0} J, least power {ledger.LeastDissipation:G3} W"));
        Assert.True(ledger.RoadWork > 10.0 && ledger.Dissipated > 10.0);
        Assert.True(ledger.LeastDissipation >= -1e-6, "a damper gave energy out");
        var allowed = 1e-3 * ledger.Turnover;
        Assert.InRange(ledger.Dissipated + ledger.Stored, ledger.RoadWork - allowed, ledger.RoadWork + allowed);
    }

    private static Car CarOf(string name)
    {
        var words = name.Split(' ');
        var car = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", words[0] + ".yaml")).Value!;
        return words.Length == 1 ? car : Damped(car, RigRuns.Table(words[^1]));
    }

    // ±540 N at the damper are ±335 N at a wheel that carries 1500 to 1700 N: firm, but a damper for this car without scaling.
    private static Car Damped(Car car, RigTable rig)
    {
        Damper Of(Damper damper) => damper with { Law = rig.Law, GasForce = new(rig.GasForce) };
        return car with
        {
            Name = $"{car.Name} with a rig's dampers",
            Front = car.Front with { Damper = Of(car.Front.Damper) },
            Rear = car.Rear with { Damper = Of(car.Rear.Damper) },
        };
    }

    private static void Report(string name, Pass pass, PassMeasures measures, double mean)
    {
        var output = TestContext.Current.TestOutputHelper;
        output?.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{name}: {pass.Statistics.Steps} steps of {1e3 * pass.Statistics.Step:F3} ms, pitch error {pass.Statistics.PitchError:G2}, "
            + $"tyre {pass.Statistics.TyreLoadError:G2}, mean load {mean:F5}, heave acceleration {measures.RmsHeaveAcceleration:F2} m/s², "
            + $"pitch {57.3 * measures.Pitch.RmsAngle:F3}°, roll {57.3 * measures.PeakRoll:F2}°"));
        foreach (var wheel in measures.Wheels)
        {
            output?.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"  {wheel.Wheel}: load {wheel.StaticLoad:F0} N, {wheel.LeastLoad:F0} to {wheel.GreatestLoad:F0} N, "
                + $"variation {wheel.LoadVariation:F3}, off {wheel.LiftOff:F3} s, travel {1e3 * wheel.Rebound:F1} to {1e3 * wheel.Bump:F1} mm, "
                + $"stops {wheel.BumpContacts}/{wheel.ReboundContacts}"));
        }
    }

    /// <summary>Set HEAVELINE_SAMPLES to a folder to keep the figures there and look at them.</summary>
    private static void Draw(string name, Figure figure)
    {
        var png = Png.Of(figure);
        Assert.True(png.Length > 20_000, $"{name} is nearly empty");
        if (Environment.GetEnvironmentVariable("HEAVELINE_SAMPLES") is { } folder)
        {
            File.WriteAllBytes(Path.Combine(folder, $"stones-{name.Split(' ')[0]}.png"), png);
        }
    }
}
