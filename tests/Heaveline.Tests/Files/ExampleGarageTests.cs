using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Models;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files;

public class ExampleGarageTests
{
    private static readonly string Examples = Path.Combine(Checkout.Root, "examples");

    public static TheoryData<string> Cars => [.. Names("garage", "*.yaml")];

    public static TheoryData<string> Roads => [.. Names("roads", "*.yaml")];

    [Theory, MemberData(nameof(Cars))]
    public void Every_example_car_is_read_without_a_refusal_or_a_warning_and_stands_under_every_load(string file)
    {
        var reading = CarFile.Load(Path.Combine(Examples, "garage", file));
        Assert.Equal("", reading.Format());
        foreach (var load in reading.Car!.LoadStates.Prepend(LoadState.Reference))
        {
            var model = RideModel.Of(reading.Car, load);
            // A car that rests on its stops in an example would be a bad example.
            Assert.All(model.Trim.BumpLeft, left => Assert.True(left > 0.0, $"{load.Name}: {left}"));
            Assert.All(model.Trim.ReboundLeft, left => Assert.True(left > 0.0, $"{load.Name}: {left}"));
            TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant($"{file} {load.Name}: {FrequencySlips.Of(model, 0):0.00} {FrequencySlips.Of(model, 1):0.00} Hz, travel used {1000 * model.Trim.Travel[0]:0} {1000 * model.Trim.Travel[2]:0} mm, pitch {model.Trim.Pitch * 57.3:0.00} deg"));
        }
    }

    [Theory, MemberData(nameof(Roads))]
    public void Every_example_road_is_read(string file)
    {
        var reading = RoadFile.Load(Path.Combine(Examples, "roads", file));
        Assert.Equal("", reading.Format());
        Assert.False(reading.Road!.HasJump);
    }

    // Ride frequencies that the examples are made for, to a hundredth of a hertz; invented cars, no source.
    [Theory]
    [InlineData("fern-saloon.yaml", "as described", 1.15, 1.30)]
    [InlineData("fern-saloon.yaml", "four up with luggage", 1.08, 1.05)]
    [InlineData("fern-saloon-cured.yaml", "four up with luggage", 1.02, 1.17)]
    public void The_story_car_is_softer_behind_when_loaded_until_it_is_cured(string file, string load, double front, double rear)
    {
        var car = CarFile.Load(Path.Combine(Examples, "garage", file)).Car!;
        var model = RideModel.Of(car, car.LoadStates.FirstOrDefault(state => state.Name == load) ?? LoadState.Reference);
        Assert.Equal(front, FrequencySlips.Of(model, 0), 0.01);
        Assert.Equal(rear, FrequencySlips.Of(model, 1), 0.01);
    }

    private static IEnumerable<string> Names(string folder, string pattern) =>
        Directory.EnumerateFiles(Path.Combine(Examples, folder), pattern).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal);
}
