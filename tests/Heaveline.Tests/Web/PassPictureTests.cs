using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Cars;
using Heaveline.Figures.Silhouettes;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Press.Colours;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Tests.Figures;
using Heaveline.Tests.House;
using Heaveline.Web.Pages.Passes;
using Heaveline.Web.Serving;

namespace Heaveline.Tests.Web;

public class PassPictureTests
{
    private static readonly GarageView Demo = new(new ServeOptions { Garage = Path.Combine(Checkout.Root, "examples", "garage") });

    [Fact]
    public void A_path_is_written_in_centimetres_downwards_with_its_arch_the_long_way_round()
    {
        var path = SilhouettePath.Rounded([new(1.0, 0.2), new(0.5, 0.2, 0.0, 0.3), new(0.0, 0.2), new(0.0, 1.0, 0.1), new(1.0, 1.0)]);
        Assert.Equal("M100 -20A30 30 0 1 0 50 -20L0 -20L0 -90Q0 -100 10 -100L100 -100Z", PathText.Of(path));
        Assert.Equal("M0 -50L25 -50", PathText.Of(SilhouettePath.Between(0.0, 0.5, 0.25, 0.5)));
    }

    [Theory]
    [InlineData("fern-saloon", "four up with luggage", 4, 1)]
    [InlineData("plover-motorcycle", "rider", 1, 0)]
    [InlineData("drover-van", "empty", 0, 0)]
    public void Who_is_aboard_is_in_the_picture(string car, string load, int people, int luggage)
    {
        var now = new PassTrial(Demo).See(new PassState { Car = car, Load = load }, full: false).View!.Now;
        var scene = SceneCar.Of(now.Model);
        Assert.Equal(people, scene["people"]!.AsArray().Count);
        Assert.Equal(luggage, scene["luggage"]!.AsArray().Count);
        Assert.Equal(now.Model.Car.Kind == VehicleKind.TwoWheeler, (bool)scene["two"]!);
        Assert.StartsWith("M", (string)scene["outline"]!, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_a_solid_axle_is_drawn_as_a_bar()
    {
        var now = new PassTrial(Demo).See(new PassState { Car = "drover-van" }, full: false).View!.Now;
        Assert.Equal([false, true], SceneCar.Of(now.Model)["solid"]!.AsArray().Select(solid => (bool)solid!));
    }

    [Fact]
    public void The_far_wheels_meet_what_lies_in_the_right_track_alone()
    {
        var right = Road.From(new Pothole { Depth = new(0.05), Length = new(0.6), Edge = new(0.05) }, Tracks.Right);
        var ground = SceneRoad.Of(right);
        Assert.All(ground.Heights, height => Assert.Equal(0.0f, height));
        Assert.Equal(-0.05f, ground.FarHeights.Min(), 1e-6f);
        Assert.Empty(SceneRoad.Of(Road.From(new Pothole { Depth = new(0.05), Length = new(0.6), Edge = new(0.05) })).FarHeights);
    }

    [Fact]
    public void Six_phases_follow_each_other_from_the_obstacle_to_rest_and_say_the_nods_in_the_pitch_curve()
    {
        var pass = new PassTrial(Demo).See(new PassState { Car = "fern-saloon", Load = "four up with luggage" }, full: false).View!.Now.Pass;
        var phases = PassPhase.Of(pass);
        Assert.Equal(PassPhase.Count, phases.Count);
        Assert.Equal((0.0, "meets it"), (phases[0].Time, phases[0].Words));
        Assert.Equal("nearly still", phases[^1].Words);
        Assert.All(phases.Zip(phases.Skip(1)), pair => Assert.True(pair.First.Time < pair.Second.Time));

        // The largest nod of all is one of them, with its size; after it the curve never comes back to a twentieth of it behind the last.
        var pitch = pass.Pitch;
        var largest = Enumerable.Range(0, pass.Count).MaxBy(k => Math.Abs(pitch[k]));
        var named = phases.Single(phase => Math.Abs(phase.Time - pass.Time[largest]) < 1e-9);
        Assert.Equal(
            $"{(pitch[largest] < 0.0 ? "nose" : "tail")} up {Numeral.Of(Math.Abs(pitch[largest]) * 180.0 / Math.PI, 1)}°", named.Words);
        Assert.All(phases, phase => Assert.Equal(phase.Words.EndsWith($" {phase.Size}°", StringComparison.Ordinal), phase.Size is not null));
        Assert.All(
            Enumerable.Range(0, pass.Count).Where(k => pass.Time[k] > phases[^1].Time),
            k => Assert.True(Math.Abs(pitch[k]) <= Math.Abs(pitch[largest]) / 20.0));
    }

    [Theory]
    [InlineData("fern-saloon", "four up with luggage", "rear-spring", 18.0, 30.0, 52.0)]
    [InlineData("fern-saloon", "driver", "front-spring", 15.0, 22.0, 40.0)]
    [InlineData("plover-motorcycle", "rider", "rear-spring", 15.0, 25.0, 40.0)]
    [InlineData("drover-van", "empty", "front-spring", 20.0, 30.0, 45.0)]
    public void Nods_follow_each_other_to_one_side_and_the_other_and_none_between_is_left_out(
        string car, string load, string slider, double soft, double plain, double stiff)
    {
        foreach (var value in new[] { soft, plain, stiff })
        {
            var pass = new PassTrial(Demo).See(new PassState { Car = car, Load = load }.With(slider, value), full: false).View!.Now.Pass;
            var nods = PassPhase.Nods(pass);
            Assert.NotEmpty(nods);
            Assert.All(nods.Zip(nods.Skip(1)), pair => Assert.True(pair.First.Pitch * pair.Second.Pitch < 0.0 && pair.First.Time < pair.Second.Time));

            // Between two of them nothing larger lies, on either side.
            foreach (var (one, next) in nods.Zip(nods.Skip(1)))
            {
                var between = Enumerable.Range(0, pass.Count).Where(k => pass.Time[k] >= one.Time && pass.Time[k] <= next.Time);
                Assert.All(between, k => Assert.InRange(
                    pass.Pitch[k], Math.Min(one.Pitch, next.Pitch) - 1e-12, Math.Max(one.Pitch, next.Pitch) + 1e-12));
            }

            string[] words = [.. PassPhase.Of(pass).Select(phase => phase.Words)];
            Assert.Equal(PassPhase.Count, words.Length);
            Assert.All(words.Zip(words.Skip(1)), pair => Assert.False(
                pair.First.Contains(" up ", StringComparison.Ordinal) && pair.First[..7] == pair.Second[..7], $"{pair.First}, {pair.Second}"));
        }
    }

    [Fact]
    public void A_car_that_never_nods_still_has_six_moments()
    {
        var flat = Pass.Of(RideModel.Of(DrawnCars.Saloon), Road.Flat, 11.0);
        var phases = PassPhase.Of(flat);
        Assert.Equal(PassPhase.Count, phases.Count);
        Assert.All(phases, phase => Assert.InRange(phase.Time, flat.Time[0], flat.Time[^1]));
        Assert.Equal("setting off", phases[0].Words);
    }

    [Fact]
    public void The_picture_rests_where_two_states_differ_most_and_else_where_it_pitches_most()
    {
        var trial = new PassTrial(Demo);
        var state = new PassState { Car = "fern-saloon", Load = "four up with luggage" };
        var alone = trial.See(state, full: false).View!.Now.Pass;
        var pitch = alone.Pitch;
        Assert.Equal(alone.Time[Enumerable.Range(0, alone.Count).MaxBy(k => Math.Abs(pitch[k]))], PassPhase.Rest(alone, null));
        Assert.Equal(PassPhase.Rest(alone, null), PassPhase.Rest(alone, alone));

        var view = trial.See(state.With("rear-spring", 52.0), full: false).View!;
        var (now, former) = (view.Now.Pass, view.Former!.Pass);
        var rest = PassPhase.Rest(now, former);
        double Difference(double at) => Math.Abs(At(now, at) - At(former, at));
        Assert.All(now.Time.Where(time => time <= former.Time[^1]), time => Assert.True(Difference(time) <= Difference(rest) + 1e-12));
    }

    /// <summary>
    /// Contrast by the relative luminance of WCAG 2.2: at least 3 for what has to be seen (1.4.11), 4.5 for words (1.4.3), in both colour schemes.
    /// </summary>
    [Theory]
    [InlineData("skin-line", "skin", 3.0)]
    [InlineData("skin-line", "sky-a", 3.0)]
    [InlineData("former", "sky-b", 3.0)]
    [InlineData("tyre-edge", "road", 3.0)]
    [InlineData("road-edge", "sky-b", 3.0)]
    [InlineData("beam", "sky-b", 3.0)]
    [InlineData("front-part", "sky-a", 4.5)]
    [InlineData("front-part", "sky-b", 4.5)]
    [InlineData("rear-part", "sky-a", 4.5)]
    [InlineData("rear-part", "sky-b", 4.5)]
    [InlineData("text", "road-side", 4.5)]
    [InlineData("text", "sky-a", 4.5)]
    [InlineData("quiet", "sky-a", 4.5)]
    [InlineData("text", "ground-deep", 4.5)]
    [InlineData("text", "ground", 4.5)]
    public void Inks_of_the_picture_stand_out_in_light_and_in_dark(string ink, string ground, double least)
    {
        var sheet = File.ReadAllText(Path.Combine(Checkout.Root, "src", "Heaveline.Web", "wwwroot", "inks.css"));
        var dark = sheet.IndexOf("@media (prefers-color-scheme: dark)", StringComparison.Ordinal);
        var light = Colours(sheet[..dark]);
        Assert.True(Contrast(light[ink], light[ground]) >= least, $"light: {Contrast(light[ink], light[ground]):F2}");
        var night = light.Concat(Colours(sheet[dark..])).ToLookup(pair => pair.Key, pair => pair.Value);
        Assert.True(Contrast(night[ink].Last(), night[ground].Last()) >= least, $"dark: {Contrast(night[ink].Last(), night[ground].Last()):F2}");
    }

    private static double At(Pass pass, double time)
    {
        var place = (time - pass.Time[0]) / pass.SampleStep;
        var k = Math.Clamp((int)place, 0, pass.Count - 2);
        return pass.Pitch[k] + ((place - k) * (pass.Pitch[k + 1] - pass.Pitch[k]));
    }

    private static Dictionary<string, string> Colours(string sheet) =>
        Regex.Matches(sheet, @"--([\w-]+): (#[0-9a-f]{6});").DistinctBy(match => match.Groups[1].Value)
            .ToDictionary(match => match.Groups[1].Value, match => match.Groups[2].Value);

    private static double Contrast(string one, string other)
    {
        var (a, b) = (Luminance(one), Luminance(other));
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string colour)
    {
        byte Part(int at) => byte.Parse(colour.AsSpan(at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
        return new Colour(Part(1), Part(3), Part(5)).Luminance;
    }
}
