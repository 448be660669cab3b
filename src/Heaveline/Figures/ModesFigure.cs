using System.Collections.Immutable;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>The two body modes in side view: the body at one extreme of each, its motion centre, its frequency.</summary>
public static class ModesFigure
{
    // Room under the ground for the dimension, over the roof for the motion, and beside the car, in units of the view.
    private const double Under = 0.55, Over = 0.25, Beside = 0.25, LineUnder = 0.38;

    /// <summary>The figure, page wide. A centre farther than a wheelbase from the car is pointed at instead of drawn.</summary>
    /// <param name="model">The car under its load.</param>
    /// <param name="modes">Its body modes.</param>
    public static Figure Of(RideModel model, BodyModes modes)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(modes);
        var view = SideView.Of(model.Car);
        BodyMode[] both = [modes.First, modes.Second];
        double[] shown = [.. both.Where(mode => Shown(view, mode)).Select(mode => -mode.NodeBehindFrontAxle)];
        var beside = Beside * view.Unit;
        var (from, to) = SideView.Widened(
            shown.Append(view.Rear).Min() - beside, shown.Append(view.Front).Max() + beside, view.Top + ((Under + Over) * view.Unit));
        return new Figure
        {
            Title = $"{model.Car.Name}, {model.Load.Name}: the body's two modes",
            AltText = "Two side views of the car facing left, one for each mode, with the undisturbed body dashed. "
                + $"{Words(modes.First)} {Words(modes.Second)}",
            Caption = $"{Words(modes.First)} {Words(modes.Second)} Dynamic index k²/(b·c): {Numeral.Of(modes.DynamicIndex, 2)}. "
                + "Ring: motion centre (its height has no meaning). Dot: loaded centre of gravity. Body at one extreme of the mode, "
                + "enlarged; dashed: standing. The undamped body on its axles' ride rates, wheels without mass: "
                + "in a damped car heave and pitch are out of phase, the centre wanders, and no point stands still. "
                + SideView.Disclaimer,
            SignNote = "Distances from the front axle.",
            Size = FigureSize.Page,
            Panels = [SceneOf(modes.First, model, view, from, to), SceneOf(modes.Second, model, view, from, to)],
        };
    }

    private static bool Shown(SideView view, BodyMode mode) =>
        -mode.NodeBehindFrontAxle is var x && x > view.Rear + view.RearAxle && x < view.Front - view.RearAxle;

    private static ScenePanel SceneOf(BodyMode mode, RideModel model, SideView view, double from, double to)
    {
        var centre = new ScenePoint(-model.Body.BehindFrontAxle, model.Body.Height);
        var move = MotionOf(mode, view, centre.Z);
        return new ScenePanel
        {
            Title = $"{FirstLetter.Raised(BodySwings.Name(mode.Swing))}: {Numeral.Of(mode.Frequency, 2)} Hz",
            XFrom = from,
            XTo = to,
            ZFrom = -Under * view.Unit,
            ZTo = view.Top + (Over * view.Unit),
            XGrowsLeft = true,
            Shapes =
            [
                SideView.Ground(from, to),
                .. view.Body(move, Fill.LightGrey, Pen.Of(Ink.Third)),
                .. view.Body(place => place, Fill.None, new Pen { Ink = Ink.Fourth, Dash = Dash.Dashed, Width = 0.7 }),
                .. view.Wheels(move),
                .. ArrowAt(0.0, move, view), .. ArrowAt(view.RearAxle, move, view),
                new SymbolShape { At = centre, Symbol = MarkSymbol.Dot },
                .. Shown(view, mode) ? CentreIn(mode, centre.Z, view, to - from) : CentreBeyond(mode, from, to, view),
            ],
        };
    }

    // A rotation about the centre whose farther end of the body rises by a twentieth of the wheelbase; pure heave when the centre is infinitely far.
    private static Func<ScenePoint, ScenePoint> MotionOf(BodyMode mode, SideView view, double height)
    {
        var most = Rise(view);
        if (!double.IsFinite(mode.NodeBehindFrontAxle))
        {
            return place => new(place.X, place.Z + most);
        }

        var x = -mode.NodeBehindFrontAxle;
        var arm = Math.Abs(view.Front - x) >= Math.Abs(view.Rear - x) ? view.Front - x : view.Rear - x;
        var (sin, cos) = Math.SinCos(most / arm);
        return place => new(
            x + (cos * (place.X - x)) - (sin * (place.Z - height)),
            height + (sin * (place.X - x)) + (cos * (place.Z - height)));
    }

    private static double Rise(SideView view) => -0.05 * view.RearAxle;

    // None where the body moves less than an arrowhead is long.
    private static ImmutableArray<Shape> ArrowAt(double x, Func<ScenePoint, ScenePoint> move, SideView view)
    {
        var standing = new ScenePoint(x, (2.0 * view.WheelRadius) + (0.16 * view.Unit));
        var moved = move(standing).Z;
        return Math.Abs(moved - standing.Z) > 0.4 * Rise(view)
            ? [new ArrowShape { From = standing, To = new(x, moved), Pen = Pen.Of(Ink.First) }]
            : [];
    }

    private static ImmutableArray<Shape> CentreIn(BodyMode mode, double height, SideView view, double width)
    {
        var x = -mode.NodeBehindFrontAxle;
        var ring = new SymbolShape { At = new(x, height), Symbol = MarkSymbol.Ring, Ink = Ink.Second };
        var drop = LineShape.Between(new(x, height), new(x, 0.0), new Pen { Ink = Ink.Second, Dash = Dash.Dotted, Width = 0.8 });
        // Below the ground, whichever side of the axle it lies on; a short one has no room for words.
        var text = $"{Numeral.Of(Math.Abs(x), 2)} m" + (Math.Abs(x) > 0.22 * width ? " " + Side(mode) : "");
        return
        [
            drop,
            ring,
            new DimensionShape { From = new(0.0, 0.0), To = new(x, 0.0), Offset = (x < 0.0 ? LineUnder : -LineUnder) * view.Unit, Text = text },
        ];
    }

    private static ImmutableArray<Shape> CentreBeyond(BodyMode mode, double from, double to, SideView view)
    {
        var level = -0.28 * view.Unit;
        if (!double.IsFinite(mode.NodeBehindFrontAxle))
        {
            return [new TextShape { At = new(0.5 * (from + to), level), Text = "no motion centre: the body only heaves" }];
        }

        // Pointing out of the box on the side where the centre lies.
        var behind = mode.NodeBehindFrontAxle > 0.0;
        var (tail, tip) = behind ? (from + (0.55 * view.Unit), from + (0.05 * view.Unit)) : (to - (0.55 * view.Unit), to - (0.05 * view.Unit));
        return
        [
            new ArrowShape { From = new(tail, level), To = new(tip, level), Pen = Pen.Of(Ink.Second) },
            new TextShape
            {
                At = new(behind ? tail + (0.06 * view.Unit) : tail - (0.06 * view.Unit), level),
                Text = $"motion centre {Numeral.Of(Math.Abs(mode.NodeBehindFrontAxle), 1)} m {Side(mode)}",
                Anchor = behind ? Anchor.Right : Anchor.Left,
            },
        ];
    }

    private static string Side(BodyMode mode) => mode.NodeBehindFrontAxle >= 0.0 ? "behind the front axle" : "ahead of the front axle";

    private static string Words(BodyMode mode)
    {
        var where = double.IsFinite(mode.NodeBehindFrontAxle)
            ? $"about a point {Numeral.Of(Math.Abs(mode.NodeBehindFrontAxle), 2)} m {Side(mode)}, "
                + $"{(mode.NodeBetweenAxles ? "between the axles" : "outside the wheelbase")}"
            : "without a motion centre: it only heaves";
        return $"{FirstLetter.Raised(BodySwings.Name(mode.Swing))}: {Numeral.Of(mode.Frequency, 2)} Hz {where}.";
    }
}
