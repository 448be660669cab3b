using System.Collections.Immutable;
using Heaveline.Films;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>
/// A car as its film was followed: drawn from the tracks, no picture; pitch and heights against time, fitted and forecast beside seen.
/// </summary>
public static class FilmFigure
{
    // Heights are drawn so many times taller than lengths.
    private const double Taller = 4.0;
    private const double HubHeight = 0.32;
    private const double BodyHeight = 0.85;
    private const double Overhang = 0.8;
    private const double Apart = 1.2;

    /// <summary>The figure, page wide.</summary>
    /// <param name="title">Which car, where.</param>
    /// <param name="caption">What was found.</param>
    /// <param name="seen">The film.</param>
    /// <param name="car">The car found in it.</param>
    /// <param name="film">Which of that car's films it is.</param>
    /// <param name="forecast">A car file's pass, and what is added to its time, s; null for none.</param>
    public static Figure Of(string title, string caption, SeenPass seen, CarFromFilm car, int film, (Pass Pass, double Shift)? forecast)
    {
        ArgumentNullException.ThrowIfNull(seen);
        ArgumentNullException.ThrowIfNull(car);
        var levelled = car.IsBelieved ? seen.Less(car.Levels[film]) : seen;
        double[] times = [.. Enumerable.Range(0, seen.Count).Select(i => seen.Time(i) - seen.FirstTouch)];
        var fitted = car.IsBelieved ? car.Fitted[film] : null;
        return new Figure
        {
            Title = title,
            AltText = "The car's wheels and body line at several instants drawn from the tracks of its film, heights four times taller; charts "
                + $"of pitch, of both ends' heights and of both wheels' against time{(fitted is null ? "" : ", the fitted car beside them")}.",
            Caption = caption,
            SignNote = "Pitch is nose-down positive, heights are up from level road (ISO 8855). The drawing is made from tracks, heights four "
                + "times taller.",
            Size = FigureSize.Page,
            SharedX = new Axis { Label = "time since the front wheels touched the bump", Unit = "s", From = times[0], To = times[^1] },
            SharedBands =
            [
                new Band { From = 0.0, To = seen.RearLeaves - seen.FirstTouch, Label = "hit", Shade = BandShade.Grey },
                .. seen.Reach > 0.1
                    ? new[]
                    {
                        new Band
                        {
                            From = seen.RearLeaves - seen.FirstTouch,
                            To = Math.Min(times[^1], seen.RearLeaves - seen.FirstTouch + PitchSettling.Second),
                            Label = "settling: first second",
                        },
                    }
                    : [],
            ],
            Panels =
            [
                Scene(levelled),
                new ChartPanel
                {
                    Id = "pitch",
                    Y = new Axis { Label = "pitch", Unit = In.Degrees.Symbol },
                    Traces =
                    [
                        .. Forecast("car file", forecast, times, p => p.Pitch, In.Degrees),
                        .. fitted is null ? [] : new[]
                        {
                            Trace.From(
                                "fitted",
                                times,
                                [.. fitted.Rear.Zip(fitted.Front, (r, f) => In.Degrees.Of((r - f) / seen.Wheelbase))],
                                Pen.Of(Ink.Third, Dash.Dotted)),
                        },
                        Trace.From("seen", times, [.. levelled.Pitch.Select(In.Degrees.Of)], Pen.Of(Ink.First)),
                    ],
                },
                Heights(
                    "body over the axles",
                    levelled.FrontBody,
                    levelled.RearBody,
                    times,
                    Forecast("front, car file", forecast, times, p => p.FrontHeight, In.Millimetres)
                        .Concat(Forecast("rear, car file", forecast, times, p => p.RearHeight, In.Millimetres))),
                Heights("wheels", seen.FrontWheel, seen.RearWheel, times, []),
            ],
        };
    }

    private static ChartPanel Heights(
        string label, ImmutableArray<double> front, ImmutableArray<double> rear, double[] times, IEnumerable<Trace> more) => new()
        {
            Id = label.Replace(' ', '-'),
            Y = new Axis { Label = label, Unit = In.Millimetres.Symbol },
            Traces =
        [
            .. more,
            Trace.From("front", times, [.. front.Select(In.Millimetres.Of)], Pen.Of(Ink.First)),
            Trace.From("rear", times, [.. rear.Select(In.Millimetres.Of)], Pen.Of(Ink.Second, Dash.Dashed)),
        ],
        };

    private static IEnumerable<Trace> Forecast(
        string name, (Pass Pass, double Shift)? forecast, double[] times, Func<Pass, ImmutableArray<double>> of, ShownUnit unit)
    {
        if (forecast is not var (pass, _))
        {
            yield break;
        }

        var touch = PitchHit.Of(pass).Window.From;
        var kept = Enumerable.Range(0, pass.Count).Where(i => pass.Time[i] - touch >= times[0] && pass.Time[i] - touch <= times[^1]).ToArray();
        var trace = of(pass);
        yield return Trace.From(
            name, [.. kept.Select(i => pass.Time[i] - touch)], [.. kept.Select(i => unit.Of(trace[i]))], Pen.Of(Ink.Fourth, Dash.Dashed));
    }

    // Where the hubs went, and the body's line above them at even distances.
    private static ScenePanel Scene(SeenPass seen)
    {
        var (length, speed) = (seen.Wheelbase, seen.Speed);
        ScenePoint Front(int i, double height) => new(speed * (seen.Time(i) - seen.FirstTouch), height + HubHeight);
        var shapes = new List<Shape>
        {
            new LineShape
            {
                Points = [.. Enumerable.Range(0, seen.Count).Select(i => Front(i, Taller * seen.FrontWheel[i]))], Pen = Pen.Of(Ink.First),
            },
            new LineShape
            {
                Points =
                [
                    .. Enumerable.Range(0, seen.Count)
                        .Select(i => Front(i, Taller * seen.RearWheel[i]) is var p ? new ScenePoint(p.X - length, p.Z) : p),
                ],
                Pen = Pen.Of(Ink.Second, Dash.Dashed),
            },
        };
        // As many cars as stand beside each other.
        var positions = Math.Max(2, (int)(speed * (seen.End - seen.Start) / (length + (2.0 * Overhang) + Apart)) + 1);
        for (var k = 0; k < positions; k++)
        {
            var i = (int)Math.Round(k / (positions - 1.0) * (seen.Count - 1));
            var (at, front, rear) = (Front(i, 0.0).X, Taller * seen.FrontBody[i], Taller * seen.RearBody[i]);
            double Line(double x) => BodyHeight + front + ((rear - front) * (at - x) / length);
            shapes.Add(new LineShape
            {
                Points = [new(at + Overhang, Line(at + Overhang)), new(at - length - Overhang, Line(at - length - Overhang))],
                Pen = new Pen { Ink = Ink.Third, Width = 2.0 },
            });
            foreach (var hub in new[] { Front(i, Taller * seen.FrontWheel[i]), new(at - length, (Taller * seen.RearWheel[i]) + HubHeight) })
            {
                shapes.Add(new CircleShape { Centre = hub, Radius = HubHeight - 0.02, Fill = Fill.White });
            }
        }

        var (from, to) = (Front(0, 0.0).X - length - Overhang - 0.5, Front(seen.Count - 1, 0.0).X + Overhang + 0.5);
        var top = BodyHeight + (Taller * seen.FrontBody.Concat(seen.RearBody).Max()) + 0.3;
        return new ScenePanel { Id = "tracks", XFrom = from, XTo = to, ZFrom = -0.1, ZTo = Math.Max(top, 1.4), Shapes = [.. shapes], ScaleBar = 2.0 };
    }
}
