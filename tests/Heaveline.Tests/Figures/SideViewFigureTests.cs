using CsCheck;
using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Press;
using Heaveline.Quantities;

namespace Heaveline.Tests.Figures;

public class SideViewFigureTests
{
    [Fact]
    public void The_motion_centre_is_drawn_and_measured_where_the_mode_has_it()
    {
        var model = RideModel.Of(DrawnCars.Linked, DrawnCars.FourUp);
        var modes = BodyModes.Of(model);
        var scene = (ScenePanel)ModesFigure.Of(model, modes).Panels[1];
        var ring = scene.Shapes.OfType<SymbolShape>().Single(s => s.Symbol == MarkSymbol.Ring);
        Assert.Equal(-modes.Second.NodeBehindFrontAxle, ring.At.X, 1e-12);
        var dimension = scene.Shapes.OfType<DimensionShape>().Single();
        Assert.Equal((0.0, -modes.Second.NodeBehindFrontAxle), (dimension.From.X, dimension.To.X));
        Assert.StartsWith($"{Math.Abs(modes.Second.NodeBehindFrontAxle):F2} m", dimension.Text, StringComparison.Ordinal);
        Assert.Contains($"{modes.Second.Frequency:F2} Hz", scene.Title, StringComparison.Ordinal);
    }

    /// <summary>A rigid body swinging about a point moves in proportion to the distance from it, to second order in the angle.</summary>
    [Fact]
    public void The_body_swings_about_the_motion_centre()
    {
        var model = RideModel.Of(DrawnCars.Saloon, DrawnCars.Driver);
        var modes = BodyModes.Of(model);
        var bodies = ((ScenePanel)ModesFigure.Of(model, modes).Panels[0]).Shapes.OfType<LineShape>().Where(l => l.Closed).ToArray();
        var centre = -modes.First.NodeBehindFrontAxle;
        var (moved, still) = (bodies[0].Points, bodies[1].Points);
        var slopes = still.Zip(moved, (s, m) => (m.Z - s.Z) / (s.X - centre)).ToArray();
        Assert.True(slopes.Max() - slopes.Min() < 0.1 * Math.Abs(slopes[0]), $"{slopes.Min()} to {slopes.Max()}");
    }

    [Fact]
    public void A_far_motion_centre_is_pointed_at()
    {
        var model = RideModel.Of(DrawnCars.Saloon);
        var modes = BodyModes.Of(model);
        var far = modes with
        {
            First = modes.First with { NodeBehindFrontAxle = 14.2 },
            Second = modes.Second with { NodeBehindFrontAxle = double.PositiveInfinity },
        };
        var scenes = ModesFigure.Of(model, far).Panels.Cast<ScenePanel>().ToArray();
        var arrow = scenes[0].Shapes.OfType<ArrowShape>().Last();
        Assert.True(arrow.To.X < arrow.From.X, "behind is towards −x");
        Assert.Contains(scenes[0].Shapes.OfType<TextShape>(), t => t.Text == "motion centre 14.2 m behind the front axle");
        Assert.DoesNotContain(scenes[0].Shapes, s => s is DimensionShape);
        Assert.Contains(scenes[1].Shapes.OfType<TextShape>(), t => t.Text.Contains("only heaves", StringComparison.Ordinal));
    }

    [Fact]
    public void The_table_holds_weights_heights_frequencies_and_travel_of_each_load_state()
    {
        var models = DrawnCars.Loaded(DrawnCars.Saloon);
        var table = LoadStatesFigure.Of(models).Panels.OfType<TablePanel>().Single();
        Assert.Equal(["empty", "driver alone", "four and luggage"], table.Rows.Select(r => r.Cells[0]));
        // 742 kg and 568 kg on the scales; four of 75 kg and 60 kg of luggage more.
        Assert.Equal(["1310", "742", "568"], table.Rows[0].Cells.Skip(1).Take(3));
        Assert.Equal("1670", table.Rows[2].Cells[1]);
        var laden = models[2];
        var axles = AxleRide.Of(laden);
        string Minus(string text) => text.Replace('-', '−');
        Assert.Equal(
            [
                $"{axles[0].Rates.Frequency:F2}", $"{axles[1].Rates.Frequency:F2}", $"{axles[1].Rates.Frequency / axles[0].Rates.Frequency:F2}",
                Minus($"{1000.0 * laden.Trim.FrontHeight:F0}"),
                Minus($"{1000.0 * laden.Trim.RearHeight:F0}"),
                $"+{-laden.Trim.Pitch / Math.PI * 180.0:F2}",
                Minus($"{100.0 * HeadlampMeasures.DropAtTrim(laden):F2}"),
                $"{1000.0 * laden.Trim.BumpLeft.Take(2).Min():F0}",
                $"{1000.0 * laden.Trim.BumpLeft.Skip(2).Min():F0}",
            ],
            table.Rows[2].Cells.Skip(4));
    }

    [Fact]
    public void Models_of_two_cars_in_one_table_are_refused()
    {
        Assert.Throws<RefusedValueException>(() => LoadStatesFigure.Of([RideModel.Of(DrawnCars.Saloon), RideModel.Of(DrawnCars.Linked)]));
        Assert.Throws<RefusedValueException>(() => LoadStatesFigure.Of([]));
    }

    /// <summary>The records of a figure refuse what cannot be drawn, so that a figure that comes about and prints is one without NaN.</summary>
    [Fact]
    public void Any_car_under_any_load_can_be_drawn() =>
        Gen.Select(AnyCar.Any, AnyCar.Loads).Sample(
            (car, load) =>
            {
                // Three loads of a car would take a two-wheeler's springs to their end.
                var model = RideModel.Of(car, car.Kind == VehicleKind.Car ? load : LoadState.Reference);
                var pass = Pass.Of(model, DrawnCars.Hump, 8.0, new() { Method = FixedStep.Once });
                Figure[] figures =
                [
                    LoadStatesFigure.Of([RideModel.Of(car), model]), ModesFigure.Of(model, BodyModes.Of(model)),
                    .. pass.Count >= 2 ? [PassFigure.Of(pass, PassMeasures.Of(pass))] : Array.Empty<Figure>(),
                ];
                return figures.All(f => Svg.Of(f).Length > 1000 && f.AltText.Length > 40 && !f.Caption.Contains("NaN", StringComparison.Ordinal)
                    && f.Panels.OfType<ChartPanel>().SelectMany(p => p.Traces).All(t => t.Ys.All(double.IsFinite)));
            },
            iter: 60);
}
