using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Figures;
using Heaveline.Tests.House;
using Heaveline.Tuning;

namespace Heaveline.Tests.Studies;

public class PassStoryIdsTests
{
    [Fact]
    public void A_road_shorter_than_the_wheelbase_is_said_and_an_obstacle_of_any_length_is_not()
    {
        var model = RideModel.Of(DrawnCars.Saloon);
        double[] x = [.. Enumerable.Range(0, 21).Select(i => 0.1 * i)];
        var road = Road.FromMeasured("yard", x, Array.ConvertAll(x, d => 0.01 * Math.Sin(3.0 * d)), null);
        var said = Assert.Single(Story(road), sentence => sentence.Id == "short-road");
        Assert.Contains("only 2 m long, less than the wheelbase", said.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(
            Story(Road.From(new Versine { Height = new(0.02), Length = new(0.5) })), sentence => sentence.Id == "short-road");

        IReadOnlyList<Sentence> Story(Road over)
        {
            var pass = Pass.Of(model, over, 8.0);
            return PassStory.Of(pass, PassMeasures.Of(pass));
        }
    }

    [Fact]
    public void Every_sentence_of_a_crossing_has_an_id_of_its_own()
    {
        var ids = Ids(Road.From(new RoundTopHump { Height = new(0.10), Length = new(2.0) }), 20.0);
        Assert.Equal(["opening", "hit", "settling", "settling-time", "settling-share"], ids.Take(5));
        Assert.Equal(ids.Distinct(), ids);
    }

    [Fact]
    public void A_crossing_without_a_single_bump_is_told_by_its_pitch() =>
        Assert.Equal(
            ["opening", "pitch", "pitch-share"],
            Ids(Road.From(new SineRoad { Wavelength = new(6.0), Amplitude = new(0.01), Waves = 10 }), 10.0).Take(3));

    // The flow is that of the pass: a tiny hump keeps it laminar, a common one does not (Avila and others 2011: 2040).
    [Theory]
    [InlineData(0.0002, false)]
    [InlineData(0.075, true)]
    public void A_pipe_whose_flow_can_be_turbulent_is_said(double height, bool said)
    {
        var pebble = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "pebble-fluid-car.yaml")).Value!;
        var pass = Pass.Of(RideModel.Of(pebble), Road.From(new RoundTopHump { Height = new(height), Length = new(3.7) }), 11.0);
        var sentence = PassStory.Of(pass, PassMeasures.Of(pass)).SingleOrDefault(s => s.Id == "pipe-flow");
        var flow = PipeFlow.Of(pass)!;
        Assert.Equal(said, flow.Reynolds > 2040.0);
        Assert.Equal(said, sentence is not null);
        if (said)
        {
            Assert.Contains(FormattableString.Invariant($"Reynolds number of {flow.Reynolds:F0} "), sentence!.Text);
            Assert.Contains(FormattableString.Invariant($"{flow.FrontForce:F0} N there"), sentence.Text);
        }
    }

    private static List<string> Ids(Road road, double speed)
    {
        var pass = Pass.Of(RideModel.Of(DrawnCars.Saloon, LoadState.Reference), road, speed);
        return [.. PassStory.Of(pass, PassMeasures.Of(pass)).Select(s => s.Id)];
    }
}
