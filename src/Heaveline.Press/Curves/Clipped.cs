using Heaveline.Press.Paper;

namespace Heaveline.Press.Curves;

/// <summary>
/// A curve cut at the edges of a box, as one run of points for each visit to it [Liang and Barsky, ACM Transactions on Graphics 3(1), 1984].
/// Cut here rather than by the canvas, so that no format needs clip paths and their ids.
/// </summary>
internal static class Clipped
{
    /// <summary>The runs inside the box. A point that is not a number ends a run.</summary>
    public static List<Spot[]> Of(IReadOnlyList<Spot> points, Box box)
    {
        var runs = new List<Spot[]>();
        var run = new List<Spot>();
        for (var i = 1; i < points.Count; i++)
        {
            if (Segment(points[i - 1], points[i], box) is not { } inside)
            {
                Close(run, runs);
                continue;
            }

            if (run.Count == 0 || run[^1] != inside.From)
            {
                Close(run, runs);
                run.Add(inside.From);
            }

            run.Add(inside.To);
        }

        Close(run, runs);
        return runs;
    }

    private static void Close(List<Spot> run, List<Spot[]> runs)
    {
        if (run.Count > 1)
        {
            runs.Add([.. run]);
        }

        run.Clear();
    }

    private static (Spot From, Spot To)? Segment(Spot from, Spot to, Box box)
    {
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        if (!double.IsFinite(dx) || !double.IsFinite(dy))
        {
            return null;
        }

        var (enter, leave) = (0.0, 1.0);
        return Edge(-dx, from.X - box.Left, ref enter, ref leave) && Edge(dx, box.Right - from.X, ref enter, ref leave)
            && Edge(-dy, from.Y - box.Top, ref enter, ref leave) && Edge(dy, box.Bottom - from.Y, ref enter, ref leave)
            ? (
                enter > 0.0 ? new Spot(from.X + enter * dx, from.Y + enter * dy) : from,
                leave < 1.0 ? new Spot(from.X + leave * dx, from.Y + leave * dy) : to)
            : null;
    }

    private static bool Edge(double speed, double distance, ref double enter, ref double leave)
    {
        if (speed == 0.0)
        {
            return distance >= 0.0;
        }

        var at = distance / speed;
        if (speed < 0.0)
        {
            enter = Math.Max(enter, at);
        }
        else
        {
            leave = Math.Min(leave, at);
        }

        return enter <= leave;
    }
}
