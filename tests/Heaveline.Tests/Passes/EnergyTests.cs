using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

public class EnergyTests
{
    public static TheoryData<string> Cars =>
        ["plain", "solid axles", "elastic link", "link with a damper", "fluid pipe", "fluid line that resists", "off centre", "friction"];

    private static Car Rubbing
    {
        get
        {
            var friction = new Friction { HalfWidth = new(120.0) };
            return ExactCars.Saloon with
            {
                Front = ExactCars.Saloon.Front with { Friction = friction },
                Rear = ExactCars.Saloon.Rear with { Friction = friction },
            };
        }
    }

    /// <summary>
    /// Over a pass the road's work on the tyres equals what dampers (and the fluid line) turn into heat plus what springs, tyres, link and moving
    /// masses hold at the end. Both sides are integrated from the recorded traces alone, at 4000 samples a second.
    /// </summary>
    [Theory, MemberData(nameof(Cars))]
    public void Work_of_the_road_is_dissipated_or_stored(string name)
    {
        var (car, load) = name switch
        {
            "solid axles" => (ExactCars.SolidAxles, LoadState.Reference),
            "elastic link" => (ExactCars.ElasticLinked, LoadState.Reference),
            "link with a damper" => (ExactCars.DamperLinked, LoadState.Reference),
            "fluid pipe" => (ExactCars.FluidLinked(LineState.Pipe), LoadState.Reference),
            "fluid line that resists" => (ExactCars.OnResistingLine, LoadState.Reference),
            "friction" => (Rubbing, LoadState.Reference),
            "off centre" => (ExactCars.Saloon, ExactCars.OffCentre),
            _ => (ExactCars.Saloon, LoadState.Reference),
        };
        var model = RideModel.Of(car, load);
        var road = Road.From(new Versine { Height = new(0.05), Length = new(2.5) }, Tracks.Left);
        const double speed = 12.0;
        var timing = PassTiming.Of(new(model, road, speed), new() { SamplesPerSecond = 4000.0, SettlingTime = 1.0 }, FixedStep.Default);
        var under = RoadUnderWheels.Of(model, road);
        var samples = PassRun.Of(model, under, speed, timing);
        var ledger = new EnergyLedger(model);
        var table = under.Table(speed, timing.Start, timing.SampleStep, timing.Samples);
        for (var k = 0; k < timing.Samples; k++)
        {
            ledger.Add(samples.AsSpan(k * Channel.Count, Channel.Count), table[2 * k], table[(2 * k) + 1], timing.SampleStep);
        }

        Assert.True(ledger.RoadWork > 10.0, $"the road does {ledger.RoadWork:F1} J");
        Assert.InRange(ledger.Dissipated + ledger.Stored, ledger.RoadWork - (2e-4 * ledger.Turnover), ledger.RoadWork + (2e-4 * ledger.Turnover));
        Assert.True(ledger.LeastDissipation >= 0.0, "a damper gave energy out");
    }
}
