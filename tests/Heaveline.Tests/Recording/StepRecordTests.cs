using CsCheck;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Recording;
using Heaveline.Roads;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Recording;

/// <summary>A recorded step, worked out line by line, against the stepper whose lines it noted: the same bits.</summary>
public class StepRecordTests
{
    private static readonly string Garage = Path.Combine(Checkout.Root, "examples", "garage");

    public static TheoryData<string> Demo =>
        [.. Directory.EnumerateFiles(Garage, "*.yaml")
            .Where(file => CarFile.Load(file).Value is not null)
            .Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Demo))]
    public void Every_demo_car_over_every_road_has_the_bits_of_the_stepper(string name)
    {
        var car = CarFile.Load(Path.Combine(Garage, name + ".yaml")).Value!;
        foreach (var load in new[] { LoadState(0), LoadState(^1) })
        {
            var model = RideModel.Of(car, load);
            var step = StepRecording.Of(model.Numbers);
            foreach (var (key, road) in NamedRoads.All)
            {
                Same(model, step, road, 11.0, key);
            }
        }

        Heaveline.Cars.LoadState LoadState(Index at) => car.LoadStates.Count == 0 ? Heaveline.Cars.LoadState.Reference : car.LoadStates[at];
    }

    [Fact]
    public void Cars_with_any_elements_have_the_bits_of_the_stepper() => Gen.Select(AnyCar.Any, Gen.Double[4.0, 25.0]).Sample(
        (car, speed) =>
        {
            var model = RideModel.Of(car);
            var road = Road.From(new Versine { Height = new(0.05), Length = new(1.2) }, Tracks.Left);
            Same(model, StepRecording.Of(model.Numbers), road, speed, "one side");
        },
        iter: 60);

    private static double[] GivenOf(RideModel model)
    {
        var n = model.Numbers;
        return [0.0, .. n.TrimTravel, .. n.TrimForce, .. n.TrimLoad, .. n.TrimFlow[..2], .. new double[9]];
    }

    private static void Same(RideModel model, StepRecord step, Road road, double speed, string name)
    {
        var record = new PassRecord { Duration = 0.8, LeadTime = 0.0 };
        var timing = PassTiming.Of(new(model, road, speed), record, FixedStep.Once);
        timing = timing with { Samples = Math.Min(timing.Samples, 600) };
        var wheels = RoadUnderWheels.Of(model, road);
        var stepped = PassRun.Of(model, wheels, speed, timing, TestContext.Current.CancellationToken);
        var recorded = RecordRun.Of(step, GivenOf(model), wheels, speed, timing);
        for (var i = 0; i < stepped.Length; i++)
        {
            // Zero with either sign is zero.
            Assert.True(
                stepped[i] == recorded[i],
                $"{name}: sample {i / Channel.Count}, channel {i % Channel.Count}: {stepped[i]:R} stepped, {recorded[i]:R} recorded");
        }

        Assert.Contains(stepped, value => value != 0.0);
    }
}
