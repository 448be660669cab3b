namespace Heaveline.Films;

/// <summary>
/// Where hubs and body were in the picture of a camera that stands still and level, the car going right, in even steps of the film's time: the
/// camera's motion is taken off, each point counts when its own row was read, and y goes up.
/// </summary>
internal sealed class StillPoints
{
    // A point that is not seen for longer is lost, s of film.
    private const double LongestGap = 0.12;

    // Even steps that a film is brought to for each of its frames: more are none of a film whose frames come about evenly.
    private const double MostSteps = 20.0;

    // A background that moves by more than this share of the picture's width is not shaken but turned after.
    private const double Turned = 0.05;

    public required double Start { get; init; }

    public required double Step { get; init; }

    public required PicturePoint[] Front { get; init; }

    public required PicturePoint[] Rear { get; init; }

    /// <summary>The point of the body that lies over the front hub in the first frame, at the height of the body's middle.</summary>
    public required PicturePoint[] FrontBody { get; init; }

    public required PicturePoint[] RearBody { get; init; }

    public int Count => Front.Length;

    public static StillPoints Of(FilmTrack track)
    {
        var early = Early(track);
        var (front, rear) = Ends(track.BodyPivot, HubAt(track, early.Front!.Value, early), HubAt(track, early.Rear!.Value, early));
        var series = new[]
        {
            Series(track, f => f.Front is { } h ? new(h.X, h.Y) : null),
            Series(track, f => f.Rear is { } h ? new(h.X, h.Y) : null),
            Series(track, f => f.Body?.Of(front, track.BodyPivot)),
            Series(track, f => f.Body?.Of(rear, track.BodyPivot)),
        };
        var (from, to) = Common(series);
        var steps = track.Frames.Zip(track.Frames.Skip(1), (a, b) => b.Time - a.Time).Order().ToArray();
        var step = steps[steps.Length / 2];
        var count = (int)Math.Floor(((to - from) / step) + 1e-9) + 1;
        if (count < FilmTrack.FewestFrames)
        {
            throw new Quantities.RefusedValueException(
                "the time that both hubs and the body are seen together",
                Said(to - from),
                $"at least {FilmTrack.FewestFrames} frames without a gap",
                "Film the whole car from before the bump until it leaves the picture, nothing in front of it.");
        }

        if (count > MostSteps * track.Frames.Length)
        {
            throw new Quantities.RefusedValueException(
                "the frames' times",
                $"half of them within {Said(step)} of the next, all {Said(to - from)} long",
                "frames that come about evenly",
                "Follow the film anew, or give the times as the film has them.");
        }

        PicturePoint[] Even(List<(double Time, PicturePoint At)> s) =>
            [.. Enumerable.Range(0, count).Select(i => At(s, from + (i * step))).Select(p => new PicturePoint(track.GoesRight ? p.X : -p.X, -p.Y))];
        return new StillPoints
        {
            Start = from,
            Step = step,
            Front = Even(series[0]),
            Rear = Even(series[1]),
            FrontBody = Even(series[2]),
            RearBody = Even(series[3]),
        };
    }

    /// <summary>Whether the camera turned after the car: its background moves by more than a hand's shake.</summary>
    public static bool IsTurning(FilmTrack track)
    {
        double[] shifts = [.. track.Frames.Select(f => f.Camera?.X).OfType<double>()];
        return shifts.Length > 1 && shifts.Max() - shifts.Min() > Turned * track.Width;
    }

    /// <summary>The part about where the car is seen largest, as far as it is not seen smaller than a share of that.</summary>
    public StillPoints Near(double share)
    {
        var size = Front.Zip(Rear, (f, r) => Math.Sqrt(((f.X - r.X) * (f.X - r.X)) + ((f.Y - r.Y) * (f.Y - r.Y)))).ToArray();
        var most = Array.IndexOf(size, size.Max());
        var (from, to) = (most, most);
        while (from > 0 && size[from - 1] >= share * size[most])
        {
            from--;
        }

        while (to < Count - 1 && size[to + 1] >= share * size[most])
        {
            to++;
        }

        var part = from..(to + 1);
        return new StillPoints
        {
            Start = Start + (from * Step),
            Step = Step,
            Front = Front[part],
            Rear = Rear[part],
            FrontBody = FrontBody[part],
            RearBody = RearBody[part],
        };
    }

    private static string Said(double time) =>
        time > 0.0 ? Quantities.QuantityText.Format(new Quantities.Amount<Quantities.Time>(time), "s", 2) : "none";

    // The first in which all is seen: the car rides level there, and no turn is left in what is taken for level.
    private static FilmFrame Early(FilmTrack track) =>
        track.Frames.FirstOrDefault(f => f.Front is not null && f.Rear is not null && f.Body is not null)
        ?? throw new Quantities.RefusedValueException(
            "frames that show both hubs and the body", "0", "one at least", "Mark a frame in which the whole car is seen.");

    // A hub of that frame as a point of the body in the marked one.
    private static PicturePoint HubAt(FilmTrack track, SeenHub hub, FilmFrame frame) => frame.Body!.Back(new(hub.X, hub.Y), track.BodyPivot);

    // Lengths along the road and upright do not shrink alike where the car is seen aslant, and the body's one size goes by the longer of them: points
    // at the height of its middle have no upright length in them.
    private static (PicturePoint Front, PicturePoint Rear) Ends(PicturePoint middle, PicturePoint front, PicturePoint rear)
    {
        var (x, y) = (front.X - rear.X, front.Y - rear.Y);
        var square = Math.Max((x * x) + (y * y), 1e-9);
        PicturePoint Along(PicturePoint p)
        {
            var share = (((p.X - middle.X) * x) + ((p.Y - middle.Y) * y)) / square;
            return new PicturePoint(middle.X + (share * x), middle.Y + (share * y));
        }

        return (Along(front), Along(rear));
    }

    private static List<(double Time, PicturePoint At)> Series(FilmTrack track, Func<FilmFrame, PicturePoint?> of)
    {
        var isTurning = IsTurning(track);
        var all = new List<(double, PicturePoint)>();
        foreach (var frame in track.Frames)
        {
            if (of(frame) is { } p)
            {
                var still = frame.Camera is not { } camera ? p : isTurning ? Around(track, camera, p) : camera.Back(p, track.Middle);
                all.Add((frame.Time + (track.RowTime * p.Y), still));
            }
        }

        return all;
    }

    // Seen from a camera that turns: places as angles, so that a turn is a shift. The shift of the picture's middle is f·tan(turn); heights
    // shrink aside of the middle as the distance grows.
    private static PicturePoint Around(FilmTrack track, SeenPose camera, PicturePoint p)
    {
        var (focal, middle) = (PictureScale.FocalWidths * track.Width, track.Middle);
        var (sin, cos) = Math.SinCos(-camera.Turn);
        var (x, y) = (p.X - middle.X, p.Y - middle.Y);
        (x, y) = ((cos * x) - (sin * y), (sin * x) + (cos * y));
        var turn = -Math.Atan(camera.X / focal);
        var away = x / focal;
        return new PicturePoint(
            middle.X + (focal * (Math.Atan(away) + turn)), middle.Y + (y / Math.Sqrt(1.0 + (away * away))) - (camera.Y * Math.Cos(turn)));
    }

    // The longest stretch in which every series goes on.
    private static (double From, double To) Common(List<(double Time, PicturePoint At)>[] series)
    {
        if (series.Any(s => s.Count == 0))
        {
            return (0.0, -1.0);
        }

        var edges = new List<double> { series.Max(s => s[0].Time), series.Min(s => s[^1].Time) };
        var gaps = series.SelectMany(s => s.Zip(s.Skip(1)).Where(p => p.Second.Time - p.First.Time > LongestGap)
            .Select(p => (From: p.First.Time, To: p.Second.Time))).Where(g => g.To > edges[0] && g.From < edges[1]).OrderBy(g => g.From).ToList();
        var (best, at) = ((From: 0.0, To: -1.0), edges[0]);
        foreach (var (from, to) in gaps.Append((edges[1], edges[1])))
        {
            best = from - at > best.To - best.From ? (at, from) : best;
            at = Math.Max(at, to);
        }

        return best;
    }

    // The cubic through the four nearest.
    private static PicturePoint At(List<(double Time, PicturePoint At)> s, double time)
    {
        var (low, high) = (0, s.Count - 1);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = s[middle].Time <= time ? (middle, high) : (low, middle);
        }

        var first = Math.Clamp(low - 1, 0, Math.Max(0, s.Count - 4));
        var last = Math.Min(s.Count - 1, first + 3);
        var (x, y) = (0.0, 0.0);
        for (var i = first; i <= last; i++)
        {
            var weight = 1.0;
            for (var j = first; j <= last; j++)
            {
                weight *= j == i ? 1.0 : (time - s[j].Time) / (s[i].Time - s[j].Time);
            }

            x += weight * s[i].At.X;
            y += weight * s[i].At.Y;
        }

        return new PicturePoint(x, y);
    }
}
