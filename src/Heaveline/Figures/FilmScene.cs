using System.Collections.Immutable;
using Heaveline.Figures.Silhouettes;
using Heaveline.Passes;

namespace Heaveline.Figures;

/// <summary>
/// The scene of one moment of a pass: m, x forward from the rear axle, z up from the road before the obstacle. The left wheels are seen.
/// </summary>
internal sealed class FilmScene
{
    private const double Under = 0.35;
    private const double Finest = 0.04;
    private const int Curved = 5;
    private const int Heights = 400;

    private static readonly Pen Dark = new() { Ink = Ink.Third, Width = 1.0 };

    private readonly Pass pass;
    private readonly double enlarged;
    private readonly Silhouette drawn;
    private readonly Aboard aboard;
    private readonly double[][] movements;
    private readonly double from;
    private readonly double to;
    private readonly double low;
    private readonly double top;

    /// <param name="pass">The pass.</param>
    /// <param name="enlarged">How many times as large movements are drawn.</param>
    public FilmScene(Pass pass, double enlarged)
    {
        (this.pass, this.enlarged) = (pass, enlarged);
        var (car, trim) = (pass.Model.Car, pass.Model.Trim);
        (drawn, aboard) = (Silhouette.Of(car), Aboard.Of(car, pass.Model.Load));
        var m = drawn.Measures;
        var arm = pass.Model.Rolls ? pass.Model.Body.LeftOfMiddle : 0.0;
        double[] Body(IReadOnlyList<double> height, double standing, int corner) =>
            [.. height.Select((h, k) => standing + h + ((pass.Model.Rolls ? pass.Model.Y[corner] + arm : 0.0) * (trim.Roll + pass.Roll[k])))];
        var (front, rear) = (Body(pass.FrontHeight, trim.FrontHeight, 0), Body(pass.RearHeight, trim.RearHeight, 2));
        double[] Hub(double[] body, int corner) => [.. body.Zip(pass.Travel(corner), (b, s) => b + s)];
        movements = [front, rear, Hub(front, 0), Hub(rear, 2)];
        var (nose, rump) = (Math.Max(m.Nose, m.Wheelbase + m.WheelRadius), Math.Min(m.Rump, -m.WheelRadius));
        var room = 0.75 * (nose - rump);
        (from, to) = (rump - (1.2 * room), nose + (0.55 * room));
        top = Math.Max(m.Height, m.Heads.Select(head => head.Z + SeatedPerson.HelmetRadius).DefaultIfEmpty(0.0).Max());
        // Room for what the road lifts and lets down, and for a swing beyond that.
        var length = pass.Road.End - pass.Road.Start;
        double[] heights = [0.0, .. Enumerable.Range(0, Heights + 1).Select(i => Ground(pass.Road.Start + (i * length / Heights)))];
        (low, top) = (heights.Min() - Under, top + Math.Max(heights.Max(), 0.09 * enlarged) + 0.15);
    }

    /// <summary>The scene at a time, s.</summary>
    public ScenePanel At(double time)
    {
        var axle = (pass.Speed * time) - drawn.Measures.Wheelbase;
        return new ScenePanel
        {
            XFrom = from, XTo = to, ZFrom = low, ZTo = top, Shapes = [.. Road(axle), .. Wakes(time), .. Car(time), .. Numbers(axle)],
        };
    }

    private double Movement(int which, double time)
    {
        var values = movements[which];
        var place = Math.Clamp((time - pass.Time[0]) / pass.SampleStep, 0.0, values.Length - 1.0);
        var k = Math.Min((int)place, values.Length - 2);
        var value = values[k] + ((place - k) * (values[k + 1] - values[k]));
        return values[0] + (enlarged * (value - values[0]));
    }

    // A place of the body after its movement: it turns about the road under its rear axle.
    private Func<ScenePoint, ScenePoint> Moved(double time)
    {
        var (front, rear) = (Movement(0, time), Movement(1, time));
        var (sin, cos) = Math.SinCos(Math.Atan2(front - rear, drawn.Measures.Wheelbase));
        return at => new((at.X * cos) - (at.Z * sin), rear + (at.X * sin) + (at.Z * cos));
    }

    private double Ground(double x) => enlarged * (pass.Road.Left.Height(x) - pass.Road.Left.StartHeight);

    private IEnumerable<Shape> Road(double axle)
    {
        var count = (int)Math.Ceiling((to - from) / Finest);
        ScenePoint[] surface =
        [
            .. Enumerable.Range(0, count + 1).Select(i => from + (i * (to - from) / count)).Select(x => new ScenePoint(x, Ground(x + axle))),
        ];
        yield return new LineShape
        {
            Points = [.. surface, new(to, low), new(from, low)], Closed = true, Fill = Fill.Grey, Pen = null,
        };
        yield return new LineShape { Points = [.. surface], Pen = new() { Ink = Ink.Third, Width = 1.2 } };
    }

    private IEnumerable<Shape> Numbers(double axle)
    {
        for (var metre = Math.Ceiling(from + axle); metre <= to + axle; metre++)
        {
            var x = metre - axle;
            var isTold = metre % 5.0 == 0.0;
            yield return LineShape.Between(new(x, Ground(metre)), new(x, Ground(metre) - (isTold ? 0.1 : 0.05)), Pen.Of(Ink.Third));
            if (isTold && x > from + 0.4 && x < to - 0.4)
            {
                yield return new TextShape { At = new(x, low + 0.13), Text = $"{Quantities.Numeral.Of(metre, 0)} m" };
            }
        }
    }

    // Where nose and tail have been, behind the vehicle alone.
    private IEnumerable<Shape> Wakes(double time)
    {
        foreach (var (of, pen) in new[] { (drawn.Nose, Pen.Of(Ink.First)), (drawn.Rump, Pen.Of(Ink.Second, Dash.Dashed)) })
        {
            var points = ImmutableArray.CreateBuilder<ScenePoint>();
            for (var x = Math.Min(drawn.Measures.Rump, -drawn.Measures.WheelRadius) - 0.2; x > from; x -= Finest)
            {
                var then = time + ((x - of.X) / pass.Speed);
                points.Add(new(x, Moved(then)(of).Z));
            }

            yield return new LineShape { Points = points.ToImmutable(), Pen = pen with { Width = 1.6 } };
        }
    }

    private IEnumerable<Shape> Car(double time)
    {
        var (m, move) = (drawn.Measures, Moved(time));
        var body = new Pen { Ink = Ink.First, Width = 1.1 };
        LineShape Closed(SilhouettePath path, Fill fill, Pen pen) =>
            new() { Points = [.. Flat(path).Select(move)], Closed = true, Fill = fill, Pen = pen };
        ScenePoint[] hubs = [new(m.Wheelbase, m.WheelRadius + Movement(2, time)), new(0.0, m.WheelRadius + Movement(3, time))];
        foreach (var hub in hubs)
        {
            yield return new CircleShape { Centre = hub, Radius = m.WheelRadius, Fill = Fill.Full, Pen = Dark };
            yield return new CircleShape { Centre = hub, Radius = 0.64 * m.WheelRadius, Fill = Fill.LightGrey, Pen = Dark };
            yield return new CircleShape { Centre = hub, Radius = 0.14 * m.WheelRadius, Fill = Fill.Full, Pen = Dark };
        }

        foreach (var panel in drawn.Panels)
        {
            yield return Closed(panel, Fill.Tint, body);
        }

        yield return Closed(drawn.Outline, Fill.Tint, body);
        foreach (var pane in drawn.Glass)
        {
            yield return Closed(pane, Fill.White, body with { Width = 0.7 });
        }

        foreach (var person in aboard.People)
        {
            var radius = drawn.Kind == SilhouetteKind.Motorcycle ? SeatedPerson.HelmetRadius : SeatedPerson.HeadRadius;
            // Behind a pane nobody is seen below it.
            var low = drawn.IsOpen || drawn.Glass.IsEmpty ? double.NegativeInfinity : drawn.Glass.Min(pane => pane.Steps.Min(step => step.To.Z));
            yield return new LineShape
            {
                Points = [.. Flat(person.Body).Select(at => move(new(at.X, Math.Max(at.Z, low))))],
                Closed = true,
                Fill = Fill.LightGrey,
                Pen = Pen.Of(Ink.Fourth),
            };
            yield return new CircleShape { Centre = move(person.Head), Radius = radius, Fill = Fill.LightGrey, Pen = Pen.Of(Ink.Fourth) };
        }

        foreach (var (middle, wide, high) in aboard.Luggage)
        {
            var (x, z) = (0.5 * wide, 0.5 * high);
            ScenePoint[] box = [new(-x, -z), new(x, -z), new(x, z), new(-x, z)];
            yield return new LineShape
            {
                Points = [.. box.Select(at => move(new(middle.X + at.X, middle.Z + at.Z)))],
                Closed = true,
                Fill = Fill.Tint,
                Pen = Pen.Of(Ink.Second),
            };
        }

        // Springs and dampers, as one line that closes up.
        for (var i = 0; i < hubs.Length; i++)
        {
            var pen = new Pen { Ink = i == 0 ? Ink.First : Ink.Second, Width = 3.0 };
            yield return LineShape.Between(hubs[i], move(i == 0 ? drawn.FrontTower : drawn.RearTower), pen);
        }

        if (drawn.Pivot is { } pivot)
        {
            yield return LineShape.Between(hubs[1], move(pivot), Dark with { Width = 2.0 });
        }
    }

    // A path's places close enough together.
    private static IEnumerable<ScenePoint> Flat(SilhouettePath path)
    {
        var at = path.Steps[0].To;
        foreach (var (step, i) in path.Steps.Select((step, i) => (step, i)))
        {
            if (i > 0 && step.Round is { } round)
            {
                for (var k = 1; k < Curved; k++)
                {
                    var (s, r) = (k / (double)Curved, 1.0 - (k / (double)Curved));
                    yield return new(
                        (r * r * at.X) + (2.0 * r * s * round.X) + (s * s * step.To.X),
                        (r * r * at.Z) + (2.0 * r * s * round.Z) + (s * s * step.To.Z));
                }
            }
            else if (i > 0 && step.ArchRadius > 0.0)
            {
                foreach (var place in Arch(at, step.To, step.ArchRadius))
                {
                    yield return place;
                }
            }

            yield return step.To;
            at = step.To;
        }
    }

    // The long way round over a wheel: the centre lies below the line between both ends.
    private static IEnumerable<ScenePoint> Arch(ScenePoint a, ScenePoint b, double radius)
    {
        var (x, z, half) = (0.5 * (a.X + b.X), 0.5 * (a.Z + b.Z), 0.5 * Math.Abs(b.X - a.X));
        var up = Math.Sqrt(Math.Max(0.0, (radius * radius) - (half * half)));
        var (first, last) = (Math.Atan2(a.Z - (z + up), a.X - x), Math.Atan2(b.Z - (z + up), b.X - x));
        var turn = last - first;
        var way = a.X > b.X ? (turn < 0.0 ? turn + (2.0 * Math.PI) : turn) : (turn > 0.0 ? turn - (2.0 * Math.PI) : turn);
        const int places = 24;
        for (var k = 1; k < places; k++)
        {
            var (sin, cos) = Math.SinCos(first + (way * k / places));
            yield return new(x + (radius * cos), z + up + (radius * sin));
        }
    }
}
