namespace Heaveline.Films;

/// <summary>When both wheels meet the bump: it lies at one place, so each wheel tells of the other.</summary>
internal sealed class WheelClock
{
    // The tyre meets the bump with half its contact and rolls off it so: its first touch lies farther out than its rise tells, and its middle leaves
    // before its fall ends. In parts of the way between the share and three times it; found on planted films.
    private const double Before = 1.0;
    private const double Beyond = 0.1;

    // Half-width of what is left of that, m: contact and the bump's edges are not known.
    private const double Contact = 0.10;

    private readonly StillPoints points;

    public WheelClock(StillPoints points, double[] front, double[] rear, (double From, double To) bump, double share)
    {
        this.points = points;
        var (f, r) = (Ends(points.Front, front, bump, share), Ends(points.Rear, rear, bump, share));
        if (f is not { } one || r is not { } other)
        {
            return;
        }

        IsFound = true;
        Lift = 0.5 * (one.Lift + other.Lift);
        var (on, off) = (0.5 * (one.On + other.On), 0.5 * (one.Off + other.Off));
        FirstTouch = TimeAt(points.Front, on);
        RearLeaves = TimeAt(points.Rear, off);
        Delay = 0.5 * (TimeAt(points.Rear, other.On) - TimeAt(points.Front, one.On) + TimeAt(points.Rear, other.Off) - TimeAt(points.Front, one.Off));
        var pace = (points.Front[^1].X - points.Front[0].X) / (points.Count - 1);
        // How far both wheels disagree, and half a frame.
        double Apart(double a, double b) => Math.Pow(0.5 * (a - b) / pace, 2.0);
        InstantDoubt = points.Step * Math.Sqrt(0.25 + Apart(one.On, other.On) + Apart(one.Off, other.Off));
        IsFound = Delay > 0.0 && RearLeaves > FirstTouch;
    }

    public bool IsFound { get; }

    public double Lift { get; }

    public double FirstTouch { get; }

    public double RearLeaves { get; }

    public double Delay { get; }

    /// <summary>Half-width of what a frame and both wheels leave open of the instants, s of film; <see cref="Contact"/> comes on top.</summary>
    public double InstantDoubt { get; }

    /// <summary>The same of the contact, s, at a speed.</summary>
    public static double ContactDoubt(double speed) => Contact / speed;

    public int Near(double time) => Math.Clamp((int)Math.Round((time - points.Start) / points.Step), 0, points.Count - 1);

    /// <summary>Where the bump lies, roughly: round the place at which both wheels are farthest from the level, as far as they stay off it.</summary>
    public static (double From, double To) BumpOf(
        StillPoints p, Func<double, double> frontLevel, Func<double, double> rearLevel, Func<double, double> upright)
    {
        double[] Heights(PicturePoint[] of, Func<double, double> level) => [.. of.Select(q => (q.Y - level(q.X)) / upright(q.X))];
        var (front, rear) = (Heights(p.Front, frontLevel), Heights(p.Rear, rearLevel));
        // Each place as the less far of both wheels: what only one of them does is no bump.
        var best = (At: 0.0, Height: 0.0);
        for (var i = 0; i < front.Length; i++)
        {
            var other = Interpolated(p.Rear, rear, p.Front[i].X);
            if (other is { } h && h * front[i] > 0.0 && Math.Min(Math.Abs(h), Math.Abs(front[i])) > Math.Abs(best.Height))
            {
                best = (p.Front[i].X, Math.Abs(h) < Math.Abs(front[i]) ? h : front[i]);
            }
        }

        if (best.Height == 0.0)
        {
            var far = Array.IndexOf(front, front.MaxBy(Math.Abs));
            best = (p.Front[far].X, front[far]);
        }

        var (from, to) = (best.At, best.At);
        foreach (var (points, heights) in new[] { (p.Front, front), (p.Rear, rear) })
        {
            var peak = Nearest(points, best.At);
            var (k, limit) = (peak, 0.12 * Math.Abs(best.Height));
            while (k > 0 && heights[k] * Math.Sign(best.Height) > limit)
            {
                k--;
            }

            from = Math.Min(from, points[k].X);
            k = peak;
            while (k < points.Length - 1 && heights[k] * Math.Sign(best.Height) > limit)
            {
                k++;
            }

            to = Math.Max(to, points[k].X);
        }

        var margin = 0.15 * (to - from);
        return (from - margin, to + margin);
    }

    // The ends of the bump by one wheel: where it rises and falls through a share of its greatest height, carried on to the ground by the slope
    // between that share and three times it.
    private static (double On, double Off, double Lift)? Ends(PicturePoint[] points, double[] heights, (double From, double To) bump, double share)
    {
        var inside = Enumerable.Range(0, points.Length).Where(i => points[i].X >= bump.From && points[i].X <= bump.To).ToArray();
        if (inside.Length < 3 || inside[0] == 0 || inside[^1] == points.Length - 1)
        {
            return null;
        }

        var peak = inside.MaxBy(i => Math.Abs(heights[i]));
        var top = heights[peak];
        double Share(int i) => heights[i] / top;
        double? Crossing(int step, double at)
        {
            for (var i = peak; i + step >= 0 && i + step < points.Length; i += step)
            {
                var (near, far) = (Share(i), Share(i + step));
                if (near >= at && far < at)
                {
                    return points[i].X + ((near - at) / (near - far) * (points[i + step].X - points[i].X));
                }
            }

            return null;
        }

        double? End(int step, double farther) =>
            Crossing(step, share) is { } low && Crossing(step, 3.0 * share) is { } high ? low + (farther * (low - high)) : null;
        return End(-1, Before) is { } on && End(1, Beyond) is { } off ? (on, off, top) : null;
    }

    private double TimeAt(PicturePoint[] of, double x)
    {
        var k = Math.Clamp(Nearest(of, x), 1, of.Length - 2);
        k = of[k].X > x ? k - 1 : k;
        var share = (x - of[k].X) / (of[k + 1].X - of[k].X);
        return points.Start + ((k + share) * points.Step);
    }

    private static int Nearest(PicturePoint[] of, double x) => Array.IndexOf(of, of.MinBy(p => Math.Abs(p.X - x)));

    private static double? Interpolated(PicturePoint[] of, double[] values, double x)
    {
        for (var i = 0; i < of.Length - 1; i++)
        {
            if (of[i].X <= x && of[i + 1].X > x)
            {
                return values[i] + ((x - of[i].X) / (of[i + 1].X - of[i].X) * (values[i + 1] - values[i]));
            }
        }

        return null;
    }
}
