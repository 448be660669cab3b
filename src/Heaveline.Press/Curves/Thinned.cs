using Heaveline.Press.Paper;

namespace Heaveline.Press.Curves;

/// <summary>
/// A curve with fewer points that looks the same: points within a small distance of the line they are left out of are dropped
/// [Douglas and Peucker, Cartographica 10(2), 1973].
/// </summary>
internal static class Thinned
{
    /// <summary>Farthest a dropped point may lie from the line drawn, points: 0.02 mm on paper, a third of a pixel at 300 dpi.</summary>
    public const double Tolerance = 0.06;

    // Longer runs are cut first: the search is quadratic at worst, and a curve this dense bends within every stretch anyway.
    private const int Stretch = 2000;

    /// <summary>The points kept; both ends always are.</summary>
    public static Spot[] Of(Spot[] points)
    {
        points = PerColumn(points);
        if (points.Length < 3)
        {
            return points;
        }

        var kept = new bool[points.Length];
        kept[^1] = true;
        for (var start = 0; start < points.Length - 1; start += Stretch)
        {
            kept[start] = true;
            Keep(points, start, Math.Min(start + Stretch, points.Length - 1), kept);
        }

        return [.. points.Where((_, i) => kept[i])];
    }

    // A dense curve that only runs forwards, noise above all: of the points over each sliver of the axis the first, the lowest, the highest and
    // the last paint what all of them would. A sliver is a quarter of the thinnest usual line.
    private static Spot[] PerColumn(Spot[] points)
    {
        const double Sliver = 0.25;
        if (points.Length < 4 * (points[^1].X - points[0].X) / Sliver || !Forwards(points))
        {
            return points;
        }

        var kept = new List<Spot>();
        for (var start = 0; start < points.Length;)
        {
            var column = Math.Floor(points[start].X / Sliver);
            var (end, low, high) = (start, start, start);
            for (; end < points.Length && Math.Floor(points[end].X / Sliver) == column; end++)
            {
                low = points[end].Y < points[low].Y ? end : low;
                high = points[end].Y > points[high].Y ? end : high;
            }

            kept.AddRange(new SortedSet<int> { start, low, high, end - 1 }.Select(i => points[i]));
            start = end;
        }

        return [.. kept];
    }

    private static bool Forwards(Spot[] points)
    {
        for (var i = 1; i < points.Length; i++)
        {
            if (points[i].X < points[i - 1].X)
            {
                return false;
            }
        }

        return true;
    }

    private static void Keep(Spot[] points, int first, int last, bool[] kept)
    {
        var open = new Stack<(int First, int Last)>();
        open.Push((first, last));
        while (open.TryPop(out var stretch))
        {
            var (farthest, distance) = (-1, Tolerance);
            for (var i = stretch.First + 1; i < stretch.Last; i++)
            {
                var away = Distance(points[i], points[stretch.First], points[stretch.Last]);
                if (away > distance)
                {
                    (farthest, distance) = (i, away);
                }
            }

            if (farthest > 0)
            {
                kept[farthest] = true;
                open.Push((stretch.First, farthest));
                open.Push((farthest, stretch.Last));
            }
        }
    }

    // To the stretch of line between the two ends, not the endless line: a curve may turn back on itself.
    private static double Distance(Spot point, Spot from, Spot to)
    {
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var square = dx * dx + dy * dy;
        var along = square == 0.0 ? 0.0 : Math.Clamp(((point.X - from.X) * dx + (point.Y - from.Y) * dy) / square, 0.0, 1.0);
        var (ex, ey) = (point.X - from.X - along * dx, point.Y - from.Y - along * dy);
        return Math.Sqrt(ex * ex + ey * ey);
    }
}
