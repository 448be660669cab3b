using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Files;

public class ExampleGarageTests
{
    private static readonly string Examples = Path.Combine(Checkout.Root, "examples");

    public static TheoryData<string> Cars => [.. Names("garage")];

    public static TheoryData<string> Roads => [.. Names("roads")];

    [Theory, MemberData(nameof(Cars))]
    public void Every_example_car_is_read_without_a_word_and_stands_off_its_stops_under_every_load(string file)
    {
        var reading = CarFile.Load(Path.Combine(Examples, "garage", file));
        Assert.Equal("", reading.Format());
        foreach (var load in reading.Value!.LoadStates.Prepend(LoadState.Reference))
        {
            var trim = RideModel.Of(reading.Value, load).Trim;
            Assert.All(trim.BumpLeft, left => Assert.True(left > 0.0, $"{load.Name}: {left}"));
            Assert.All(trim.ReboundLeft, left => Assert.True(left > 0.0, $"{load.Name}: {left}"));
        }
    }

    [Theory, MemberData(nameof(Roads))]
    public void Every_example_road_is_read_without_a_word_and_without_a_jump(string file)
    {
        var reading = RoadFile.Load(Path.Combine(Examples, "roads", file));
        Assert.Equal("", reading.Format());
        Assert.False(reading.Value!.HasJump);
    }

    // Kept answers: what the invented cars are made for. They change when the physics or an example does; say which.
    [Theory]
    [InlineData("fern-saloon.yaml", "empty", 1.15, 1.30)]
    [InlineData("fern-saloon.yaml", "four up with luggage", 1.08, 1.05)]
    [InlineData("fern-saloon-cured.yaml", "four up with luggage", 1.02, 1.16)]
    [InlineData("fern-saloon-cured-towing.yaml", "towing", 1.08, 1.29)]
    [InlineData("thimble-city-car.yaml", "empty", 1.30, 1.35)]
    [InlineData("drover-van.yaml", "empty", 1.30, 1.90)]
    [InlineData("drover-van.yaml", "laden", 1.17, 1.54)]
    [InlineData("tarn-off-roader.yaml", "empty", 1.40, 1.58)]
    [InlineData("plover-motorcycle.yaml", "rider", 1.51, 1.69)]
    [InlineData("sprig-kit-car.yaml", "empty", 1.50, 1.66)]
    [InlineData("pebble-fluid-car.yaml", "empty", 1.35, 1.54)]
    public void Axles_ride_at_the_frequencies_the_examples_are_made_for(string file, string load, double front, double rear)
    {
        var model = Model(file, load);
        Assert.Equal(front, RideGuess.Of(model, 0).Frequency, 0.006);
        Assert.Equal(rear, RideGuess.Of(model, 1).Frequency, 0.006);
    }

    [Theory]
    [InlineData(30.0)]
    [InlineData(40.0)]
    [InlineData(50.0)]
    public void The_loaded_saloon_pitches_on_after_the_hump_until_it_is_cured(double kilometresPerHour)
    {
        double Settling(string file)
        {
            var pass = Pass.Of(Model(file, "four up with luggage"), NamedRoads.All["village-hump"], kilometresPerHour / 3.6);
            return PitchMeasures.Of(pass).Settling!.RmsAngle;
        }

        Assert.True(Settling("fern-saloon-cured.yaml") < 0.8 * Settling("fern-saloon.yaml"));
    }

    private static RideModel Model(string file, string load)
    {
        var car = CarFile.Load(Path.Combine(Examples, "garage", file)).Value!;
        return RideModel.Of(car, load == LoadState.Reference.Name ? LoadState.Reference : car.LoadStates.Single(state => state.Name == load));
    }

    private static IEnumerable<string> Names(string folder) =>
        Directory.EnumerateFiles(Path.Combine(Examples, folder), "*.yaml").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal);
}
