using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Rules;
using Heaveline.Tests.Doubts;
using Heaveline.Tuning;

namespace Heaveline.Tests.Figures;

public class RuleMapFigureTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly double[] Ratios = [0.9, 1.0, 1.1, 1.2, 1.3, 1.4];
    private static readonly double[] Speeds = [10.0, 20.0, 30.0];

    private static RideModel Model { get; } = (MeasuredCar.Saloon with { Ratio = 1.2, FrontDamping = 0.2 }).Model();

    [Fact]
    public void Beside_the_best_ratio_of_the_first_second_stand_the_in_step_curves_and_the_cars_coincidence_speeds()
    {
        var panel = Panel(SettlingCatalogue.RmsPitch);
        var forms = RatioForms.Of(Model);
        var curves = panel.Traces.Where(t => t.Pen.Ink == Ink.Second).ToList();
        foreach (var (cycles, curve) in new[] { 0.7, 0.6, 0.8 }.Zip(curves))
        {
            Assert.All(curve.Xs.Zip(curve.Ys), p => Assert.Equal(forms.InStep(p.First / 3.6, cycles), p.Second, 1e-9));
            Assert.True(curve.Xs.Length > 100);
        }

        // The window asks for 0.6 to 0.8 cycles: nothing else is drawn, and the car's own line has one mark.
        Assert.Equal(["in step, 0.7 cycles", "", ""], curves.Select(c => c.Name));
        var mark = Assert.Single(panel.Marks);
        Assert.Equal(FormattableString.Invariant($"in step: {3.6 * forms.Ends.SuitedSpeed!.Value:F0} km/h"), mark.Label);
        Assert.Equal(RideTuning.Of(Model).Ratio, mark.Y, 1e-12);
        Assert.Equal(mark.Y, forms.InStep(mark.X / 3.6, 0.7), 1e-9);
    }

    [Fact]
    public void The_car_is_a_point_under_each_load_with_its_doubt_and_no_line_says_the_same_twice()
    {
        var map = RuleMap.Of(Model, Hump, RuleAxis.FrequencyRatio(Ratios), Speeds, [HitCatalogue.PeakPitchAcceleration])[0];
        RulePoint[] points =
        [
            new("empty", 1.25, 1.23, 1.27, IsMapped: false), new("driver", 1.2, 1.18, 1.22, IsMapped: true),
            new("sure", 1.1, null, null, IsMapped: false),
            new("off the map", 1.7, null, null, IsMapped: false),
        ];
        var figure = RuleMapFigure.WithPoints(map, points, 15.0);
        var panel = Of(figure);
        Assert.Equal(["driver 1.20 ± 0.02", "empty 1.25 ± 0.02", "sure 1.10"], panel.Marks.Select(m => m.Label));
        var own = panel.Marks[0];
        Assert.Equal((54.0, 1.2, 1.18, 1.22, true), (own.X, own.Y, own.Low, own.High, own.IsHere));
        Assert.All(panel.Marks.Skip(1), mark => Assert.False(mark.IsHere));
        Assert.DoesNotContain(panel.Traces, trace => trace.Xs.Length == 2 && trace.Ys[0] == trace.Ys[1]);
        Assert.Contains("Points: this car under each load", figure.Caption, StringComparison.Ordinal);
        Assert.DoesNotContain("Lines across", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("The car stands at driver 1.20 ± 0.02;", figure.AltText, StringComparison.Ordinal);
        // A speed beside the map draws them at its edge.
        Assert.Equal(36.0, Of(RuleMapFigure.WithPoints(map, points, 1.0)).Marks[0].X, 1e-9);
    }

    // The shade of a quotient means the same on every map, and the better side has as many shades as its ratios ask for.
    [Fact]
    public void Every_relative_map_is_banded_in_the_same_ratios()
    {
        var map = RuleMap.Of(Model, Hump, RuleAxis.Damping([0.1, 0.2, 0.3]), Speeds, [SettlingCatalogue.RmsPitch])[0];
        foreach (var panel in new[] { Panel(HitCatalogue.PeakPitchAcceleration), Of(RuleMapFigure.Of(map, [])) })
        {
            Assert.Equal([0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.25, 1.5, 2.0], panel.Levels);
            Assert.Equal((AxisScale.Logarithmic, 0.43, 2.33), (panel.Value.Scale, panel.Value.From, panel.Value.To));
        }
    }

    [Fact]
    public void Beside_the_best_ratio_of_late_pitch_stands_its_own_form_alone()
    {
        var panel = Panel(SettlingCatalogue.LatePitch);
        var curve = Assert.Single(panel.Traces, t => t.Name == "1 + 0.6 L f/V");
        var forms = RatioForms.Of(Model);
        Assert.All(
            curve.Xs.Zip(curve.Ys), p => Assert.Equal(1.0 + (0.6 * forms.Ends.Wheelbase * forms.MeanFrequency * 3.6 / p.First), p.Second, 1e-9));
        Assert.DoesNotContain(panel.Traces, t => t.Name.StartsWith("in step", StringComparison.Ordinal));
    }

    [Fact]
    public void The_hit_and_other_rules_have_no_closed_form()
    {
        Assert.Empty(Panel(HitCatalogue.PeakPitchAcceleration).Marks);
        var map = RuleMap.Of(Model, Hump, RuleAxis.Damping([0.1, 0.2, 0.3]), Speeds, [SettlingCatalogue.RmsPitch])[0];
        Assert.Equal(["best", "this car"], Of(RuleMapFigure.Of(map, [("this car", map.Own)])).Traces.Select(t => t.Name).Order());
    }

    // Without colour: curves of one kind of line are told apart by their names, closed forms from the best one by their dashes.
    [Fact]
    public void No_closed_form_is_drawn_unbroken()
    {
        var panel = Panel(SettlingCatalogue.RmsPitch);
        Assert.All(panel.Traces, t => Assert.Equal(t.Name == "best", t.Pen.Dash == Dash.Solid));
        var names = panel.Traces.Select(t => t.Name).Where(name => name.Length > 0).ToList();
        Assert.Equal(names.Count, names.Distinct().Count());
    }

    private static MapPanel Panel(Measure<Pass> measure)
    {
        var map = RuleMap.Of(Model, Hump, RuleAxis.FrequencyRatio(Ratios), Speeds, [measure], degree: 2)[0];
        return Of(RuleMapFigure.Of(map, [("this car", map.Own)], RatioForms.Of(Model)));
    }

    private static MapPanel Of(Figure figure) => Assert.IsType<MapPanel>(Assert.Single(figure.Panels));
}
