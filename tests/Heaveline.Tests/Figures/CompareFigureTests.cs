using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Figures;

public class CompareFigureTests
{
    private static readonly (string Name, Pass Pass, PassMeasures Measures)[] Three = ResultSamples.Compared(40.0);

    [Fact]
    public void The_reference_is_dashed_grey_and_lies_behind_the_others()
    {
        foreach (var panel in CompareFigure.Of(Three).Panels.Cast<ChartPanel>())
        {
            // The press draws the first curve on top.
            Assert.Equal(["softer front springs", "firmer rear dampers", "as it is"], panel.Traces.Select(t => t.Name));
            Assert.Equal((Ink.Fourth, Dash.Dashed), (panel.Traces[^1].Pen.Ink, panel.Traces[^1].Pen.Dash));
        }
    }

    [Fact]
    public void No_two_of_the_most_that_can_be_compared_are_drawn_alike()
    {
        var six = Enumerable.Range(0, CompareFigure.Most).Select(i => ($"car {i}", Three[0].Pass, Three[0].Measures)).ToArray();
        var pens = CompareFigure.Of(six).Panels.Cast<ChartPanel>().First().Traces.Select(t => t.Pen).ToArray();
        Assert.Equal(pens.Length, pens.Distinct().Count());
        Assert.Throws<RefusedValueException>(() => CompareFigure.Of([.. six, ("one more", Three[0].Pass, Three[0].Measures)]));
    }

    [Fact]
    public void The_caption_gives_each_number_and_its_change_against_the_reference()
    {
        var caption = CompareFigure.Of(Three).Caption;
        var (still, now) = (Three[0].Measures.Pitch.Settling!.RmsAngle, Three[1].Measures.Pitch.Settling!.RmsAngle);
        var change = 100.0 * (now - still) / still;
        Assert.True(change < -1.0);
        Assert.Contains(
            $"as it is {still / Math.PI * 180.0:F2}°; softer front springs {now / Math.PI * 180.0:F2}° (−{-change:F0} %)",
            caption,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Where_each_is_called_after_its_car_the_caption_says_the_load_once()
    {
        var passes = new[] { "fern-saloon.yaml", "fern-saloon-cured.yaml" }
            .Select(file => CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", file)).Value!)
            .Select(car => Pass.Of(RideModel.Of(car, LoadState.Reference), DrawnCars.Hump, 40.0 / 3.6))
            .Select(pass => (pass.Model.Car.Name, pass, PassMeasures.Of(pass)))
            .ToList();
        var caption = CompareFigure.Of(passes).Caption;
        Assert.Contains(" Load: empty. ", caption, StringComparison.Ordinal);
        Assert.DoesNotContain("Fern saloon: ", caption, StringComparison.Ordinal);
    }

    [Fact]
    public void Less_is_better_panels_begin_at_nothing()
    {
        var figure = CompareSpeedsFigure.Of([("one", [(Three[0].Pass, Three[0].Measures)])]);
        Assert.All(figure.Panels.Cast<ChartPanel>(), panel => Assert.Equal(0.0, panel.Y.From));
        Assert.Contains(Three[0].Pass.Model.Load.Name, figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void Another_speed_or_road_is_refused_by_the_name_of_its_pass()
    {
        var fast = DrawnCars.Over(DrawnCars.Hump, DrawnCars.Saloon, 50.0);
        Assert.Contains(
            "'fast'",
            Assert.Throws<RefusedValueException>(() => CompareFigure.Of([Three[0], ("fast", fast.Pass, fast.Measures)])).Message,
            StringComparison.Ordinal);
        var waves = DrawnCars.Over(DrawnCars.Waves, DrawnCars.Saloon, 40.0);
        Assert.Contains(
            "'waves'",
            Assert.Throws<RefusedValueException>(() => CompareFigure.Of([Three[0], ("waves", waves.Pass, waves.Measures)])).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Measures_against_speed_are_those_of_the_passes_in_users_units()
    {
        var cars = ResultSamples.Speeds();
        var figure = CompareSpeedsFigure.Of(cars);
        var traces = figure.Panels.Cast<ChartPanel>().Select(p => p.Traces.Single(t => t.Name == "interconnected")).ToArray();
        var passes = cars[2].Passes;
        Assert.Equal(passes.Select(p => 3.6 * p.Pass.Speed), traces[0].Xs, PassFigureTests.Close);
        Assert.Equal(passes.Select(p => p.Measures.Pitch.Settling!.RmsAngle / Math.PI * 180.0), traces[0].Ys, PassFigureTests.Close);
        Assert.Equal(passes.Select(p => p.Measures.Pitch.Hit!.PeakAcceleration), traces[1].Ys, PassFigureTests.Close);
        Assert.Equal(passes.Select(p => p.Measures.Seats.Single(s => s.Seat == "driver").PeakVertical), traces[2].Ys, PassFigureTests.Close);
        Assert.Equal(27, ((ChartPanel)figure.Panels[0]).Marks.Length);
    }

    [Fact]
    public void A_pass_that_broke_off_leaves_a_gap_and_is_named()
    {
        var stop = DrawnCars.Saloon.Front.BumpStop! with { SolidAfter = new(0.010) };
        var car = DrawnCars.Saloon with { Front = DrawnCars.Saloon.Front with { BumpStop = stop } };
        (Pass Pass, PassMeasures Measures)[] passes = [DrawnCars.Over(DrawnCars.Hump, car, 10.0), DrawnCars.Over(DrawnCars.Hump, car, 40.0)];
        Assert.Equal([PassOutcome.Completed, PassOutcome.TravelOutOfRange], passes.Select(p => p.Pass.Outcome));
        var figure = CompareSpeedsFigure.Of([("low", passes)]);
        Assert.All(figure.Panels.Cast<ChartPanel>(), p => Assert.True(double.IsNaN(p.Traces[0].Ys[1]) && p.Marks.Length == 1));
        Assert.Contains(passes[1].Pass.OutcomeSentence, figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void Speeds_that_do_not_rise_are_refused()
    {
        var one = DrawnCars.Over(DrawnCars.Hump, DrawnCars.Saloon, 40.0);
        Assert.Throws<RefusedValueException>(() => CompareSpeedsFigure.Of([("a", [one, one])]));
    }
}
