using System.Text.Json.Nodes;
using Heaveline.Cars;
using Heaveline.Drives.Planning;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Cli;

public class TiesTests
{
    private static readonly string Saloon = Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml");
    private static readonly string Sheet = Path.Combine(Checkout.Root, "examples", "ties", "fern-saloon-hump.yaml");

    [Fact]
    public void The_example_finds_its_weak_front_dampers()
    {
        var spoken = Spoken.Of("ties", Saloon, Sheet, "--json");
        Assert.Equal(0, spoken.Code);
        var answer = JsonNode.Parse(spoken.Results)!;
        Assert.Equal("said", (string)answer["verdict"]!);
        var front = answer["numbers"]!.AsArray().Single(n => (string)n!["key"]! == "front-ties-damping")!;
        Assert.True((bool)front["said"]!);
        // Planted at 72 % of the car file: the comment in the sheet.
        var words = string.Join(' ', answer["sentences"]!.AsArray().Select(s => (string)s!));
        Assert.Contains("The front dampers act", words, StringComparison.Ordinal);
        Assert.Contains("weaker", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pass_typed_is_a_pass_of_a_sheet()
    {
        var typed = Spoken.Of(
            "ties", Saloon, "--over", "village-hump", "--load", "four up with luggage", "--json",
            "--pass", "8 km/h ± 0.5 km/h: front 17 mm ± 2 mm, rear 15 mm ± 2 mm",
            "--pass", "15 km/h ± 0.5 km/h: front 47 mm ± 2 mm, rear 28 mm ± 2 mm",
            "--pass", "25 km/h ± 1 km/h: front 60 mm ± 2 mm, rear 37 mm ± 2 mm",
            "--pass", "35 km/h ± 1 km/h: front 51 mm ± 2 mm, rear 34 mm ± 2 mm");
        Assert.Equal(Spoken.Of("ties", Saloon, Sheet, "--json").Results, typed.Results);
    }

    [Fact]
    public void Fewer_than_three_speeds_are_cautioned_about_and_a_sheets_keys_are_places_too()
    {
        string[] passes = ["--pass", "8 km/h: front-left 17 mm, rear 12 mm", "--pass", "15 km/h: front left 43 mm, rear-right at least 25 mm"];
        var two = Spoken.Of(["ties", Saloon, "--over", "village-hump", .. passes]);
        Assert.Equal(0, two.Code);
        Assert.Contains("Ties were read at 2 speeds only", two.Results, StringComparison.Ordinal);
        Assert.Contains("front left tie at 8 km/h", two.Results, StringComparison.Ordinal);
        Assert.Contains("rear right tie at 15 km/h, at least", two.Results, StringComparison.Ordinal);
        var three = Spoken.Of(["ties", Saloon, "--over", "village-hump", .. passes, "--pass", "20 km/h: front 56 mm, rear 38 mm"]);
        Assert.Equal(0, three.Code);
        Assert.DoesNotContain("Ties were read at", three.Results, StringComparison.Ordinal);
    }

    [Fact]
    public void An_obstacle_that_is_not_there_is_missed_in_the_sheets_line()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            var path = Path.Combine(folder, "evening.yaml");
            File.WriteAllText(path, File.ReadAllText(Sheet).Replace("over: village-hump", "over: vilage-hump", StringComparison.Ordinal));
            var line = File.ReadAllLines(path).ToList().FindIndex(l => l.StartsWith("over:", StringComparison.Ordinal)) + 1;
            foreach (var spoken in new[] { Spoken.Of("ties", Saloon, path), Spoken.Of("check", path) })
            {
                Assert.NotEqual(0, spoken.Code);
                Assert.Contains($"evening.yaml:{line}:7", spoken.Remarks, StringComparison.Ordinal);
                Assert.Contains("\"vilage-hump\" is no named road and no file.", spoken.Remarks, StringComparison.Ordinal);
                Assert.Contains("Did you mean village-hump?", spoken.Remarks, StringComparison.Ordinal);
            }

            // The obstacle that is given in its place is there.
            Assert.Equal(0, Spoken.Of("ties", Saloon, path, "--over", "village-hump").Code);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void The_variant_is_a_car_with_what_was_said()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            var (car, path) = (Path.Combine(folder, "fern-saloon.yaml"), Path.Combine(folder, "by-ties.yaml"));
            File.Copy(Saloon, car);
            Assert.Equal(0, Spoken.Of("ties", car, Sheet, "--variant", path).Code);
            var reading = CarFile.Load(path);
            Assert.True(reading.Value is not null, reading.Format());
            var (before, after) = ((TableDamper)CarFile.Load(car).Value!.Front.Damper.Law, (TableDamper)reading.Value.Front.Damper.Law);
            Assert.InRange(after.Bump.ForceAt(0.3) / before.Bump.ForceAt(0.3), 0.65, 0.85);
            Assert.Equal(after.Bump.ForceAt(0.3) / before.Bump.ForceAt(0.3), after.Rebound.ForceAt(0.6) / before.Rebound.ForceAt(0.6), 2e-3);
            Assert.True(after.Factor.Doubt.HalfWidth > before.Factor.Doubt.HalfWidth);
            Assert.Equal(CarFile.Load(car).Value!.Rear.Damper, reading.Value.Rear.Damper);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("20 km/h front 36 mm", "a colon")]
    [InlineData("20 km/h: frnt 36 mm", "it begins with one of")]
    [InlineData("20 km/h: front 36 kg", "kg")]
    [InlineData("20 kg: front 36 mm", "20 kg")]
    public void A_pass_that_is_none_is_wrong_usage(string pass, string says)
    {
        var spoken = Spoken.Of("ties", Saloon, "--over", "plank", "--pass", pass);
        Assert.Equal(2, spoken.Code);
        Assert.Contains(says, spoken.Remarks, StringComparison.Ordinal);
    }

    [Fact]
    public void Readings_of_exchanged_axles_say_nothing_of_the_car_but_that()
    {
        var spoken = Spoken.Of(
            "ties", Saloon, "--over", "village-hump", "--pass", "20 km/h: front 43 mm, rear 54 mm", "--pass", "10 km/h: front 17 mm, rear 22 mm",
            "--pass", "30 km/h: front 44 mm, rear 53 mm", "--pass", "35 km/h: front 43 mm, rear 50 mm");
        Assert.Equal(0, spoken.Code);
        Assert.Contains("Nothing is said", spoken.Results, StringComparison.Ordinal);
        Assert.Contains("exchanged", spoken.Results, StringComparison.Ordinal);
        Assert.DoesNotContain("found", spoken.Results, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plover-motorcycle", "rider", "20 km/h: front 40 mm, rear 15 mm")]
    [InlineData("drover-van", null, "20 km/h: front 53 mm, rear 24 mm")]
    [InlineData("fern-saloon", "four up with luggage", "20 km/h: front 58 mm, rear 36 mm")]
    public void A_pass_that_is_advised_keeps_the_limits_of_a_test_day(string name, string? load, string pass)
    {
        var path = Path.Combine(Checkout.Root, "examples", "garage", $"{name}.yaml");
        string[] loaded = load is null ? [] : ["--load", load];
        var spoken = Spoken.Of(["ties", path, "--over", "village-hump", "--pass", pass, "--json", .. loaded]);
        Assert.Equal(0, spoken.Code);
        var answer = JsonNode.Parse(spoken.Results)!;
        if (answer["advice"] is { } advice)
        {
            var car = CarFile.Load(path).Value!;
            var model = RideModel.Of(car, car.LoadStates.Single(l => l.Name == (string)answer["load"]!));
            var speed = (double)advice["speed-km-h"]!;
            Assert.InRange(speed, 1.0, 30.0 + 1e-9);
            foreach (var v in new[] { speed, 1.05 * speed })
            {
                var driven = Pass.Of(model, NamedRoads.All["village-hump"], v / 3.6);
                Assert.True(SafePass.LeastLoad(driven) >= 0.2, $"{v} km/h: {SafePass.LeastLoad(driven)}");
            }
        }
        else
        {
            Assert.Contains("pass more over this obstacle", answer["sentences"]!.ToJsonString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_reading_past_the_limits_and_a_pressed_stop_are_cautioned_about()
    {
        var words = Spoken.Of("ties", Saloon, Sheet).Results;
        Assert.Contains("Do not drive so again: at 35 km/h", words, StringComparison.Ordinal);
        Assert.Contains("faster than 30 km/h", words, StringComparison.Ordinal);
        Assert.Matches(@"Stops are pressed.*: .*\d+ mm at 35 km/h", words);
    }
}
