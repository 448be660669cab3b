using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Studies;
using Heaveline.Tests.Figures;

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

    private static List<string> Ids(Road road, double speed)
    {
        var pass = Pass.Of(RideModel.Of(DrawnCars.Saloon, LoadState.Reference), road, speed);
        return [.. PassStory.Of(pass, PassMeasures.Of(pass)).Select(s => s.Id)];
    }
}
