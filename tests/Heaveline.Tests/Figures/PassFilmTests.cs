using Heaveline.Figures;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Figures;

/// <summary>The pictures of a film against the pass that they are of.</summary>
public class PassFilmTests
{
    private static readonly Pass Driven = Pass.Of(
        RideModel.Of(CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!),
        NamedRoads.All["village-hump"],
        11.0);

    [Fact]
    public void Each_picture_stands_under_its_own_moment_and_they_follow_evenly()
    {
        Figure[] film = [.. PassFilm.Of(Driven, PassMeasures.Of(Driven))];
        double[] times = [.. film.Select(frame => frame.Panels.OfType<ChartPanel>().Single().Limits.Single().At)];
        Assert.Equal(Driven.Time[0], times[0]);
        Assert.All(times.Zip(times.Skip(1)), pair => Assert.Equal(PassFilm.Shown / PassFilm.Slower, pair.Second - pair.First, 12));
        Assert.InRange(times[^1], Driven.RearLeaves + 1.5, Driven.RearLeaves + 1.6);
    }

    [Fact]
    public void Wheels_rise_as_much_larger_as_is_said()
    {
        var wheel = Driven.Trace(RideSignal.WheelHeight(0));
        foreach (var frame in PassFilm.Of(Driven, PassMeasures.Of(Driven)).Where((_, i) => i % 20 == 0))
        {
            var time = frame.Panels.OfType<ChartPanel>().Single().Limits.Single().At;
            var k = (int)Math.Round((time - Driven.Time[0]) / Driven.SampleStep);
            if (Math.Abs(Driven.Time[k] - time) > 1e-9)
            {
                continue;
            }

            var hubs = frame.Panels.OfType<ScenePanel>().Single().Shapes.OfType<CircleShape>().ToArray();
            var standing = FirstHub.Z;
            Assert.Equal(PassFilm.Enlarged * (wheel[k] - wheel[0]), hubs[0].Centre.Z - standing, 9);
            Assert.Equal(Driven.Model.Car.Wheelbase.Si, hubs[0].Centre.X, 9);
        }
    }

    private static ScenePoint FirstHub => PassFilm.Of(Driven, PassMeasures.Of(Driven)).First()
        .Panels.OfType<ScenePanel>().Single().Shapes.OfType<CircleShape>().First().Centre;
}
