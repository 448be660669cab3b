using System.Collections.Immutable;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Figures;

/// <summary>A road that is drawn from its sizes: to scale with its dimensions where it is short, and its heights over distance.</summary>
public static class ObstacleFigure
{
    // Longer than this a height to scale is a hair's breadth, m (judged by eye).
    private const double LongestToScale = 15.0;

    // More straight pieces than these are a curve in pieces.
    private const int MostStraight = 5;

    private const int Points = 600;

    /// <summary>The figure, page wide.</summary>
    /// <param name="road">The road: one obstacle or waves.</param>
    public static Figure Of(Road road)
    {
        ArgumentNullException.ThrowIfNull(road);
        var (from, to) = (Math.Min(road.Start, 0.0), Math.Max(road.End, 0.05));
        var margin = Math.Max(0.3 * (to - from), 0.4);
        var isShort = to - from <= LongestToScale;
        var heights = Heights(road, from - margin, to + margin);
        var caption = FirstLetter.Raised(road.Caption);
        var lowest = Lowest(road, from, to);
        var highest = Highest(road, from, to);
        return new Figure
        {
            Title = FirstLetter.Raised(road.Name),
            AltText = $"{caption}: {(isShort ? "drawn to scale with its sizes, and " : "")}heights over distance.",
            Caption = $"{caption}.{(isShort ? " Above to scale, below with its heights stretched." : " Its heights are stretched.")}",
            SignNote = "Heights upwards, driven from left to right.",
            Size = FigureSize.Page,
            Panels = isShort ? [Scene(road, from, to, margin, lowest, highest), heights] : [heights],
        };
    }

    private static ScenePanel Scene(Road road, double from, double to, double margin, double lowest, double highest)
    {
        var width = to - from + (2.0 * margin);
        var track = Shown(road);
        var row = 0.055 * width;
        var shapes = ImmutableArray.CreateBuilder<Shape>();
        shapes.Add(new LineShape { Points = [.. Outline(track, from - margin, to + margin)], Pen = Pen.Of(Ink.Third) with { Width = 1.2 } });
        var pieces = Pieces(track, 0.09 * width);
        var down = row - Math.Min(lowest, 0.0);
        foreach (var (start, end) in pieces)
        {
            shapes.Add(Along(start, end, down));
        }

        if (to > from && road.Event is not null)
        {
            shapes.Add(Along(from, to, down + (pieces.Count > 0 ? row : 0.0)));
        }

        // Beside the obstacle, where nothing else stands.
        foreach (var height in new[] { highest, lowest }.Where(height => height != 0.0))
        {
            var beside = to + (0.45 * margin);
            var pen = Pen.Of(Ink.Fourth, Dash.Dotted) with { Width = 0.6 };
            shapes.Add(LineShape.Between(new(At(track, from, to, height), height), new(beside, height), pen));
            shapes.Add(new TextShape
            {
                At = new(beside, height > 0.0 ? height + (0.35 * row) : height - (0.35 * row)),
                Text = $"{Numeral.Of(In.Millimetres.Of(height), 0)} mm",
            });
        }

        return new ScenePanel
        {
            XFrom = from - margin,
            XTo = to + margin,
            ZFrom = Math.Min(lowest, 0.0) - row * (pieces.Count > 0 ? 2.8 : 1.8),
            ZTo = Math.Max(highest, 0.0) + row,
            Shapes = shapes.ToImmutable(),
        };

        static DimensionShape Along(double start, double end, double below) => new()
        {
            From = new(start, 0.0), To = new(end, 0.0), Offset = -below, Text = Words(end - start),
        };
    }

    private static string Words(double length) => length < 1.0 ? $"{Numeral.Of(In.Millimetres.Of(length), 0)} mm" : $"{Numeral.Of(length, 2)} m";

    // Where the road reaches a height for the last time.
    private static double At(Profile track, double from, double to, double height)
    {
        var xs = Enumerable.Range(0, Points + 1).Select(k => from + ((to - from) * k / Points));
        return xs.LastOrDefault(x => Math.Abs(track.Height(x) - height) < 1e-4, to);
    }

    // The straight pieces of an obstacle that are long enough for their lengths to be written; none of one in curves, or of a single piece.
    private static List<(double Start, double End)> Pieces(Profile track, double least)
    {
        double[] knots = [.. track.Knots.ToArray().Distinct()];
        return knots.Length is < 3 or > MostStraight + 1
            ? []
            : [.. knots.Zip(knots.Skip(1)).Where(piece => piece.Second - piece.First >= least)];
    }

    // A jump is drawn upright: a point just before it and one on it.
    private static IEnumerable<ScenePoint> Outline(Profile track, double from, double to)
    {
        var knots = track.Knots.ToArray();
        return Enumerable.Range(0, Points + 1).Select(k => from + ((to - from) * k / Points))
            .Concat(knots.SelectMany(x => new[] { x - 1e-9, x })).Order().Select(x => new ScenePoint(x, track.Height(x)));
    }

    private static ChartPanel Heights(Road road, double from, double to)
    {
        Trace Track(string name, Profile track, Pen pen)
        {
            ScenePoint[] points = [.. Outline(track, from, to)];
            return Trace.From(name, [.. points.Select(p => p.X)], [.. points.Select(p => In.Millimetres.Of(p.Z))], pen);
        }

        return new ChartPanel
        {
            X = new Axis { Label = "distance", Unit = "m" },
            Y = new Axis { Label = "height", Unit = "mm" },
            Traces = ReferenceEquals(road.Left, road.Right)
                ? [Track("", road.Left, Pen.Of(Ink.First))]
                : [Track("right", road.Right, Pen.Of(Ink.Second, Dash.Dashed)), Track("left", road.Left, Pen.Of(Ink.First))],
        };
    }

    // The track that has the obstacle.
    private static Profile Shown(Road road) => ReferenceEquals(road.Left, Profile.Flat) ? road.Right : road.Left;

    private static double Highest(Road road, double from, double to) => Outline(Shown(road), from, to).Max(point => point.Z);

    private static double Lowest(Road road, double from, double to) => Outline(Shown(road), from, to).Min(point => point.Z);
}
