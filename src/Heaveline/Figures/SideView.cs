using System.Collections.Immutable;
using Heaveline.Cars;

namespace Heaveline.Figures;

/// <summary>
/// A vehicle from its left side, to scale where it was measured: axles, seats, heads, lamp. What a car file does not hold (outline, wheel size) is a
/// plain outline made up from those. x runs forward from the front axle, z up from the ground; scenes show x
/// growing to the left, so that it faces left.
/// </summary>
internal sealed class SideView
{
    private readonly Car car;

    private SideView(Car car, double wheelRadius, ImmutableArray<ScenePoint> outline, ImmutableArray<(ScenePoint Body, ScenePoint Hub)> arms)
    {
        this.car = car;
        WheelRadius = wheelRadius;
        Outline = outline;
        Arms = arms;
        Front = Math.Max(outline.Max(p => p.X), wheelRadius);
        Rear = Math.Min(outline.Min(p => p.X), -car.Wheelbase.Si - wheelRadius);
        Top = Math.Max(outline.Max(p => p.Z), Heads.Select(p => p.Z + HeadRadius).DefaultIfEmpty(0.0).Max());
    }

    /// <summary>Radius of a drawn head, m.</summary>
    public const double HeadRadius = 0.11;

    /// <summary>What a caption says about the outline.</summary>
    public const string Disclaimer = "Axles, heads and lamp stand where they were measured; outline and wheel size are a plain stand-in.";

    /// <summary>Radius of a drawn wheel, m.</summary>
    public double WheelRadius { get; }

    /// <summary>The body's outline in the reference state.</summary>
    public ImmutableArray<ScenePoint> Outline { get; }

    /// <summary>Lines from the body to the wheel centres: fork and swinging arm of a two-wheeler.</summary>
    public ImmutableArray<(ScenePoint Body, ScenePoint Hub)> Arms { get; }

    /// <summary>Foremost drawn place of the body or the front wheel, m.</summary>
    public double Front { get; }

    /// <summary>Rearmost drawn place of the body or the rear wheel, m.</summary>
    public double Rear { get; }

    /// <summary>Highest drawn place, m.</summary>
    public double Top { get; }

    /// <summary>The rear axle's x, m; the front axle's is 0.</summary>
    public double RearAxle => -car.Wheelbase.Si;

    /// <summary>The heads above the seats, m.</summary>
    public IEnumerable<ScenePoint> Heads =>
        car.Seats.Select(seat => new ScenePoint(-seat.BehindFrontAxle.Si, seat.Height.Si + seat.HeadAboveSeat.Si));

    /// <summary>One metre on a car of usual wheelbase (2.7 m), shrunk or stretched with the vehicle, m: room for what stands beside it.</summary>
    public double Unit => car.Wheelbase.Si / 2.7;

    /// <summary>The side view of a vehicle.</summary>
    public static SideView Of(Car car)
    {
        var (radius, outline, arms) = car.Kind == VehicleKind.TwoWheeler ? SideOutline.OfTwoWheeler(car) : SideOutline.OfCar(car);
        return new SideView(car, radius, outline, arms);
    }

    /// <summary>Body with heads, moved from where it stands in the reference state.</summary>
    /// <param name="move">Where each of its places goes.</param>
    /// <param name="fill">The inside.</param>
    /// <param name="pen">The outline.</param>
    public IEnumerable<Shape> Body(Func<ScenePoint, ScenePoint> move, Fill fill, Pen pen)
    {
        yield return new LineShape { Points = [.. Outline.Select(move)], Closed = true, Fill = fill, Pen = pen };
        foreach (var seat in car.Seats)
        {
            var hip = new ScenePoint(-seat.BehindFrontAxle.Si, seat.Height.Si);
            var head = move(new(hip.X, hip.Z + seat.HeadAboveSeat.Si));
            if (fill != Fill.None)
            {
                yield return LineShape.Between(move(hip), head, pen);
            }

            yield return new CircleShape { Centre = head, Radius = HeadRadius, Fill = fill == Fill.None ? Fill.None : Fill.White, Pen = pen };
        }
    }

    /// <summary>Wheels on the ground, and what leads to them from a moved body.</summary>
    public IEnumerable<Shape> Wheels(Func<ScenePoint, ScenePoint> move)
    {
        foreach (var (body, hub) in Arms)
        {
            yield return LineShape.Between(move(body), hub, new Pen { Ink = Ink.Third, Width = 1.6 });
        }

        foreach (var x in new[] { 0.0, RearAxle })
        {
            yield return new CircleShape
            {
                Centre = new(x, WheelRadius),
                Radius = WheelRadius,
                Fill = Arms.IsEmpty ? Fill.White : Fill.None,
                Pen = new Pen { Ink = Ink.Third, Width = 1.6 },
            };
            yield return new CircleShape { Centre = new(x, WheelRadius), Radius = 0.12 * WheelRadius, Fill = Fill.Full, Pen = Pen.Of(Ink.Third) };
        }
    }

    /// <summary>The road, from edge to edge.</summary>
    public static LineShape Ground(double from, double to) =>
        LineShape.Between(new(from, 0.0), new(to, 0.0), new Pen { Ink = Ink.Fourth, Width = 0.8 });

    /// <summary>The dipped beam's cut-off up to a place ahead; nothing without a lamp.</summary>
    /// <param name="move">Where the body has gone.</param>
    /// <param name="drop">Drop of the cut-off per distance (–); null without a lamp.</param>
    /// <param name="until">The place ahead, m.</param>
    /// <param name="pen">What it is drawn with.</param>
    public IEnumerable<Shape> Beam(Func<ScenePoint, ScenePoint> move, double? drop, double until, Pen pen)
    {
        if (car.Headlamp is { } lamp && drop is { } fall)
        {
            var at = move(new(lamp.AheadOfFrontAxle.Si, lamp.Height.Si));
            yield return LineShape.Between(at, new(until, at.Z - (fall * (until - at.X))), pen);
            yield return new CircleShape { Centre = at, Radius = 0.045 * Unit, Fill = Fill.White, Pen = pen with { Dash = Dash.Solid } };
        }
    }

    /// <summary>Edges of a scene widened until it is not higher than a share of its width that leaves a page room for its text.</summary>
    public static (double From, double To) Widened(double from, double to, double height)
    {
        var more = Math.Max(0.0, 0.5 * ((2.6 * height) - (to - from)));
        return (from - more, to + more);
    }
}
