using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>What load does to a car: a side view of how far it sinks, and a table of every load state.</summary>
public static class LoadStatesFigure
{
    /// <summary>The figure, page wide.</summary>
    /// <param name="models">One car under each load state, in the order of the rows; at least one.</param>
    /// <exception cref="RefusedValueException">None, or of different cars.</exception>
    public static Figure Of(IReadOnlyList<RideModel> models)
    {
        ArgumentNullException.ThrowIfNull(models);
        if (models.Count == 0 || models.Any(model => !ReferenceEquals(model.Car, models[0].Car) && model.Car != models[0].Car))
        {
            throw new RefusedValueException(
                "models of the load states",
                models.Count == 0 ? "none" : "of different cars",
                "of one car, at least one",
                "Give one model for each load state of one car.");
        }

        var car = models[0].Car;
        var heaviest = models.MaxBy(model => model.Body.Mass)!;
        return new Figure
        {
            Title = $"{car.Name}: load states",
            AltText = $"A side view of the car facing left, empty and sunk under {heaviest.Load.Name}, over a table of {models.Count} load "
                + $"states. {Shift(models, heaviest)} {Sinking(heaviest)}",
            Caption = Drawn(models)
                + " f: ride frequency with the tyres in series, undamped, the other axle held; ratio: rear over front. Bump: "
                + "travel left before the stop, at the wheel with the least. "
                + (car.Headlamp is null
                    ? ""
                    : "Lamp: fall of the dipped beam's cut-off per distance, drawn ahead of the car; below 0 it points above the horizon. ")
                + SideView.Disclaimer,
            SignNote =
                "Heights from the empty car, upwards positive; pitch is given nose up positive (computed nose down positive, ISO 8855).",
            Size = FigureSize.Page,
            Panels = [SceneOf(heaviest), LoadStatesTable.Of(models)],
        };
    }

    /// <summary>What the side view shows: the first sentences of the caption, without what explains the table.</summary>
    /// <param name="models">One car under each load state; at least one.</param>
    public static string Drawn(IReadOnlyList<RideModel> models)
    {
        ArgumentNullException.ThrowIfNull(models);
        var heaviest = models.MaxBy(model => model.Body.Mass)!;
        return $"Grey: {models[0].Car.Name} empty. Dashed: {heaviest.Load.Name}, to scale; arrows only point. "
            + $"{Sinking(heaviest)} {Shift(models, heaviest)}";
    }

    private static ScenePanel SceneOf(RideModel heaviest)
    {
        var view = SideView.Of(heaviest.Car);
        var trim = heaviest.Trim;
        // As the ends of the body sink; the slope is small, so that places move straight up and down.
        ScenePoint Sunk(ScenePoint place) =>
            new(place.X, place.Z + trim.FrontHeight + ((trim.RearHeight - trim.FrontHeight) * place.X / view.RearAxle));
        var moves = Math.Max(Math.Abs(trim.FrontHeight), Math.Abs(trim.RearHeight)) > 0.0005;
        var (below, above) = (0.12 * view.Unit, (moves ? 0.56 : 0.15) * view.Unit);
        var (from, to) = SideView.Widened(
            view.Rear - (0.3 * view.Unit), view.Front + ((heaviest.Car.Headlamp is null ? 0.3 : 1.2) * view.Unit), view.Top + below + above);
        var loaded = new Pen { Ink = Ink.First, Dash = Dash.Dashed, Width = 0.8 };
        return new ScenePanel
        {
            XFrom = from,
            XTo = to,
            ZFrom = -below,
            ZTo = view.Top + above,
            XGrowsLeft = true,
            ScaleBar = view.Unit > 0.7 ? 1.0 : 0.5,
            Shapes =
            [
                SideView.Ground(from, to),
                .. view.Body(place => place, Fill.LightGrey, Pen.Of(Ink.Third)),
                .. moves ? view.Body(Sunk, Fill.None, loaded) : [],
                .. view.Wheels(place => place),
                .. moves ? view.Beam(Sunk, HeadlampMeasures.DropAtTrim(heaviest), to, loaded) : [],
                .. view.Beam(place => place, heaviest.Car.Headlamp?.Drop.Si, to, new Pen { Ink = Ink.Second, Dash = Dash.DashDot, Width = 0.8 }),
                .. moves
                    ? [.. ArrowAt(0.0, "front", trim.FrontHeight, view), .. ArrowAt(view.RearAxle, "rear", trim.RearHeight, view)]
                    : ImmutableArray<Shape>.Empty,
            ],
        };
    }

    private static ImmutableArray<Shape> ArrowAt(double x, string end, double change, SideView view)
    {
        var (low, high) = (new ScenePoint(x, view.Top + (0.08 * view.Unit)), new ScenePoint(x, view.Top + (0.36 * view.Unit)));
        return
        [
            new ArrowShape { From = change > 0.0 ? low : high, To = change > 0.0 ? high : low, Pen = Pen.Of(Ink.First) },
            new TextShape
            {
                At = new(x, view.Top + (0.40 * view.Unit)),
                Text = $"{end} {Numeral.Change(In.Millimetres.Of(change), 0)} mm",
                Anchor = Anchor.Bottom,
            },
        ];
    }

    private static string Shift(IReadOnlyList<RideModel> models, RideModel heaviest) =>
        $"Rear over front ride frequency: {Ratio(models[0])} {models[0].Load.Name}"
        + (models.Count > 1 ? $", {Ratio(heaviest)} {heaviest.Load.Name}." : ".");

    private static string Ratio(RideModel model) =>
        Numeral.Of(AxleCatalogue.FrequencyRatio.Of(new CarAtRest(model)), AxleCatalogue.FrequencyRatio.HeadingDigits);

    private static string Sinking(RideModel model) =>
        $"{FirstLetter.Raised(model.Load.Name)}: front {Numeral.Change(In.Millimetres.Of(model.Trim.FrontHeight), 0)} mm, "
        + $"rear {Numeral.Change(In.Millimetres.Of(model.Trim.RearHeight), 0)} mm.";
}
