using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.Rides;

public class PanelChoiceTests
{
    private const double Speed = 20.0;
    private const int Finest = 512;

    private static readonly RoadSpectrum ClassC = RoadSpectrum.Of(RoadClass.C);

    /// <summary>A tenth and a seventeenth of a saloon's damping: narrow panels round its modes tell what narrow ones everywhere do.</summary>
    [Theory]
    [InlineData(0.2)]
    [InlineData(0.12)]
    public void A_car_that_is_hardly_damped_has_narrow_panels_round_its_modes_alone(double slope)
    {
        var model = RideModel.Of(RandomResponseTests.Even(slope));
        var response = RandomResponse.Of(model, ClassC, Speed);
        Assert.Equal(RandomOutcome.Linear, response.Outcome);
        Assert.InRange(response.Frequencies.Count, 33 * RideGrid.Block, Finest * RideGrid.Block / 4);
        Assert.Equal(response.Frequencies.Order(), response.Frequencies);
        var all = RandomLines.Of(model, new RideRoad(ClassC, Speed, null).In(Finest)).Under(LinearRide.Of(model));
        foreach (var signal in EverySignal.Of(model))
        {
            var whole = Math.Sqrt(all.MeanSquare(signal));
            Assert.Equal(whole, response.Rms(signal), 1e-6 * whole);
        }
    }

    [Fact]
    public void Panels_that_were_halved_make_up_the_whole_band_once()
    {
        var (model, ridden) = (RideModel.Of(RandomResponseTests.Even(0.12)), new RideRoad(ClassC, Speed, null));
        var (panels, ride) = (RidePanel.All(32), LinearRide.Of(model));
        var lines = RandomLines.Of(model, ridden.In(panels)).Under(ride);
        var choice = new PanelChoice(model, ridden, [RideSignal.HeaveAcceleration, RideSignal.PitchAcceleration], 1e-6);
        var (change, wide) = choice.Change(panels, lines, ride);
        Assert.True(change > 1e-6);
        Assert.NotEmpty(wide);
        Assert.True(wide.Length < panels.Length);
        var narrowed = choice.Narrowed(panels, lines, ride, wide, TestContext.Current.CancellationToken);
        Assert.Empty(narrowed.Intersect(wide));
        var at = 0.0;
        foreach (var panel in narrowed)
        {
            Assert.Equal(at, (double)panel.Index / panel.Of, 1e-15);
            at = (panel.Index + 1.0) / panel.Of;
        }

        Assert.Equal(1.0, at);
        var (left, none) = choice.Change(narrowed, RandomLines.Of(model, ridden.In(narrowed)).Under(ride), ride);
        Assert.InRange(left, 0.0, 1e-6);
        Assert.Empty(none);
    }
}
