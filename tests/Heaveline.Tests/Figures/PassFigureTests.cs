using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Tests.Figures;

public class PassFigureTests
{
    private static readonly (Pass Pass, PassMeasures Measures) Bump = DrawnCars.Over(DrawnCars.Hump, DrawnCars.Saloon, 40.0);

    [Fact]
    public void The_bands_are_the_windows_of_hit_and_settling()
    {
        var bands = PassFigure.Of(Bump.Pass, Bump.Measures).SharedBands;
        Assert.Equal(2, bands.Length);
        Assert.Equal((Bump.Measures.Pitch.Hit!.Window.From, Bump.Measures.Pitch.Hit.Window.To), (bands[0].From, bands[0].To));
        Assert.Equal((Bump.Measures.Pitch.Settling!.Window.From, Bump.Measures.Pitch.Settling.Window.To), (bands[1].From, bands[1].To));
    }

    [Fact]
    public void Pitch_is_drawn_in_degrees_with_the_nose_up_positive_and_the_note_says_so()
    {
        var figure = PassFigure.Of(Bump.Pass, Bump.Measures);
        var panel = PanelOf(figure, "pitch, nose up");
        Assert.Equal("°", panel.Y.Unit);
        Assert.Equal(Bump.Pass.Pitch.Select(p => -p / Math.PI * 180.0), panel.Traces[0].Ys, Close);
        // The front wheels meet the hump first: the nose rises before it falls.
        Assert.True(panel.Traces[0].Ys.First(y => Math.Abs(y) > 0.05) > 0.0);
        Assert.Contains("nose up positive", figure.SignNote, StringComparison.Ordinal);
    }

    [Fact]
    public void Heights_and_travel_are_drawn_in_millimetres()
    {
        var figure = PassFigure.Of(Bump.Pass, Bump.Measures);
        var heights = figure.Panels.OfType<ChartPanel>().Single(p => p.Y.Label.StartsWith("height", StringComparison.Ordinal));
        Assert.Equal(Bump.Pass.FrontHeight.Select(h => 1000.0 * h), heights.Traces[0].Ys, Close);
        Assert.Equal(Bump.Pass.RearHeight.Select(h => 1000.0 * h), heights.Traces[1].Ys, Close);
        Assert.Equal(Bump.Pass.Travel(2).Select(s => 1000.0 * s), PanelOf(figure, "wheel travel, bump upwards").Traces[1].Ys, Close);
        Assert.Equal(60.0, PanelOf(figure, "road under the wheels").Traces[0].Ys.Max(), 0.2);
    }

    [Fact]
    public void The_limits_of_travel_are_the_stops_and_stops_alike_share_a_line()
    {
        var limits = PanelOf(PassFigure.Of(Bump.Pass, Bump.Measures), "wheel travel, bump upwards").Limits;
        Assert.Equal([62.0, 78.0, -85.0, -90.0], limits.Select(l => l.At), Close);

        var alike = DrawnCars.Saloon with { Rear = DrawnCars.Saloon.Rear with { BumpStop = DrawnCars.Saloon.Front.BumpStop, ReboundStop = null } };
        var (pass, measures) = DrawnCars.Over(DrawnCars.Hump, alike, 20.0);
        limits = PanelOf(PassFigure.Of(pass, measures), "wheel travel, bump upwards").Limits;
        Assert.Equal([("bump stops", 62.0), ("front rebound stop", -85.0)], limits.Select(l => (l.Label, Math.Round(l.At, 9))));
    }

    [Fact]
    public void The_marked_peak_is_the_peak_of_the_hit()
    {
        var mark = Assert.Single(PanelOf(PassFigure.Of(Bump.Pass, Bump.Measures), "pitch acceleration, nose up").Marks);
        Assert.Equal(Bump.Measures.Pitch.Hit!.PeakAcceleration, Math.Abs(mark.Y), 1e-12);
        Assert.InRange(mark.X, Bump.Measures.Pitch.Hit.Window.From, Bump.Measures.Pitch.Hit.Window.To);
    }

    [Fact]
    public void The_caption_holds_the_headline_the_peaks_the_load_and_the_road()
    {
        var caption = PassFigure.Of(Bump.Pass, Bump.Measures).Caption;
        Assert.Contains($"{Bump.Measures.Pitch.Settling!.RmsAngle / Math.PI * 180.0:F2}°", caption, StringComparison.Ordinal);
        Assert.Contains($"{Bump.Measures.Pitch.Hit!.PeakAcceleration:F2} rad/s²", caption, StringComparison.Ordinal);
        Assert.Contains("empty, at 40 km/h", caption, StringComparison.Ordinal);
        Assert.Contains(DrawnCars.Hump.Caption, caption, StringComparison.Ordinal);
    }

    [Fact]
    public void Sides_that_differ_are_drawn_apart_and_roll_gets_its_panel()
    {
        var (pass, measures) = DrawnCars.Over(DrawnCars.OneSided, DrawnCars.Saloon, 60.0);
        var figure = PassFigure.Of(pass, measures);
        Assert.Equal(
            ["front left", "front right", "rear left", "rear right"], PanelOf(figure, "wheel travel, bump upwards").Traces.Select(t => t.Name));
        Assert.Equal(pass.Roll.Select(r => r / Math.PI * 180.0), PanelOf(figure, "roll, right side down").Traces[0].Ys, Close);

        var both = PassFigure.Of(Bump.Pass, Bump.Measures);
        Assert.Equal(["front", "rear"], PanelOf(both, "wheel travel, bump upwards").Traces.Select(t => t.Name));
        Assert.DoesNotContain(both.Panels.OfType<ChartPanel>(), p => p.Y.Label.StartsWith("roll", StringComparison.Ordinal));
    }

    [Fact]
    public void Tyre_load_has_a_panel_only_where_a_wheel_comes_near_to_leaving_the_road()
    {
        var panel = PanelOf(PassFigure.Of(Bump.Pass, Bump.Measures), "tyre load, share of standing");
        Assert.Contains(Bump.Measures.Wheels, w => w.LiftOff > 0.0);
        Assert.Equal(100.0, panel.Traces[0].Ys[0], 1e-6);
        Assert.Equal(0.0, panel.Traces[0].Ys.Min());
        Assert.Equal(0.0, Assert.Single(panel.Limits).At);

        var (pass, measures) = DrawnCars.Over(DrawnCars.Waves, DrawnCars.Saloon, 30.0);
        Assert.DoesNotContain(
            PassFigure.Of(pass, measures).Panels.OfType<ChartPanel>(), p => p.Y.Label.StartsWith("tyre load", StringComparison.Ordinal));
    }

    [Fact]
    public void A_road_without_an_obstacle_has_no_bands_and_its_caption_speaks_of_the_whole_pass()
    {
        var (pass, measures) = DrawnCars.Over(DrawnCars.Waves, DrawnCars.Linked, 80.0);
        var figure = PassFigure.Of(pass, measures);
        Assert.Empty(figure.SharedBands);
        Assert.Contains($"RMS pitch over the whole pass: {measures.Pitch.RmsAngle / Math.PI * 180.0:F2}°", figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void A_two_wheeler_has_no_sides_and_its_tyre_load_is_that_of_the_whole_wheel()
    {
        var (pass, measures) = DrawnCars.Over(DrawnCars.Hump, DrawnCars.TwoWheeler, 40.0);
        var figure = PassFigure.Of(pass, measures);
        Assert.All(figure.Panels.OfType<ChartPanel>(), p => Assert.DoesNotContain(p.Traces, t => t.Name.Contains("left", StringComparison.Ordinal)));
        Assert.Equal(100.0, PanelOf(figure, "tyre load, share of standing").Traces[1].Ys[0], 1e-6);
    }

    [Fact]
    public void A_record_that_ends_early_claims_no_headline()
    {
        var pass = Pass.Of(RideModel.Of(DrawnCars.Saloon), DrawnCars.Hump, 40.0 / 3.6, new() { Record = new() { SettlingTime = 0.5 } });
        var measures = PassMeasures.Of(pass);
        var caption = PassFigure.Of(pass, measures).Caption;
        Assert.Contains("RMS pitch in the first second of the settling: not recorded to its end.", caption, StringComparison.Ordinal);
        Assert.Contains("Peaks of the hit", caption, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pass_that_left_the_range_of_the_model_says_so()
    {
        var stop = DrawnCars.Saloon.Front.BumpStop! with { SolidAfter = new(0.002) };
        var car = DrawnCars.Saloon with { Front = DrawnCars.Saloon.Front with { BumpStop = stop } };
        var (pass, measures) = DrawnCars.Over(DrawnCars.Hump, car, 60.0);
        Assert.Equal(PassOutcome.TravelOutOfRange, pass.Outcome);
        var figure = PassFigure.Of(pass, measures);
        Assert.Contains(pass.OutcomeSentence, figure.Caption, StringComparison.Ordinal);
        Assert.DoesNotContain("Peaks of the hit", figure.Caption, StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => CompareFigure.Of([("a", pass, measures)]));
    }

    internal static ChartPanel PanelOf(Figure figure, string label) => figure.Panels.OfType<ChartPanel>().Single(p => p.Y.Label == label);

    internal static bool Close(double a, double b) => Math.Abs(a - b) < 1e-9;
}
