using Heaveline.Camera.Frames;
using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>Follows a wheel: by its round template, near where the body says that it is.</summary>
internal sealed class WheelFollower
{
    // Share of the frame's variation that a wheel must explain to be one.
    private const double Like = 0.35;

    // How far a wheel moves beside the body, as shares of the wheelbase: stops of cars end at ± 0.1 m of 2.5 m.
    private const double UpAndDown = 0.05;
    private const double ToAndFro = 0.015;

    private readonly RoundTemplate template;
    private readonly double wheelbase;

    /// <summary>Learns the wheel from the marked frame, and puts its mark right.</summary>
    /// <param name="frame">The marked frame.</param>
    /// <param name="mark">The marked hub, a few pixels off.</param>
    /// <param name="radius">How far the wheel reaches from its hub, px.</param>
    /// <param name="wheelbase">Distance of the hubs, px.</param>
    public WheelFollower(Mat frame, PicturePoint mark, double radius, double wheelbase)
    {
        this.wheelbase = wheelbase;
        (Hub, template) = Roundest(frame, mark, radius);
        // Whatever lies round its own middle is most like a round thing there: the template need not be right to find it.
        for (var round = 0; round < 4 && template.Find(frame, Hub, 1.0) is { } found && Distance(found.Hub, mark) < 0.4 * radius; round++)
        {
            Hub = new PicturePoint(found.Hub.X, found.Hub.Y);
            template = RoundTemplate.Of(frame, Hub, radius);
        }
    }

    /// <summary>Whether a round thing of a wheel's size lies under a mark, its middle near the mark.</summary>
    /// <param name="frame">The marked frame.</param>
    /// <param name="mark">The marked hub.</param>
    /// <param name="radius">How far the wheel reaches from its hub, px.</param>
    /// <param name="wheelbase">Distance of the hubs, px.</param>
    public static bool IsWheel(Mat frame, PicturePoint mark, double radius, double wheelbase)
    {
        var wheel = new WheelFollower(frame, mark, radius, wheelbase);
        return wheel.template.Find(frame, wheel.Hub, 1.0) is { Likeness: > Like } seen && Distance(seen.Hub, mark) < 0.4 * radius;
    }

    /// <summary>The hub in the marked frame.</summary>
    public PicturePoint Hub { get; }

    /// <summary>The hub in a frame, seen as the camera of the marked frame would see it; null: not seen.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="turn">The camera's turning from the marked frame to this one.</param>
    /// <param name="thought">Where it would be if it moved with the body.</param>
    /// <param name="scale">Size of the car beside the marked frame.</param>
    public SeenHub? Find(Mat frame, Homography turn, PicturePoint thought, double scale)
    {
        using var wheel = template.Picture(scale);
        var (wide, high) = ((int)Math.Ceiling(ToAndFro * wheelbase * scale), (int)Math.Ceiling(UpAndDown * wheelbase * scale));
        var half = wheel.Cols / 2;
        var (left, top) = (Math.Round(thought.X) - half - wide - 3.0, Math.Round(thought.Y) - half - high - 3.0);
        var size = new Size(wheel.Cols + (2 * wide) + 6, wheel.Rows + (2 * high) + 6);
        var map = turn.After(new Homography(1, 0, left, 0, 1, top, 0, 0, 1));
        foreach (var (x, y) in new[] { map.Of(0.0, 0.0), map.Of(size.Width - 1.0, 0.0), map.Of(0.0, size.Height - 1.0), map.Of(size.Width - 1.0,
            size.Height - 1.0) })
        {
            // A wheel that the picture's edge cuts would be drawn to what is left of it.
            if (!(x >= 0.0 && y >= 0.0 && x <= frame.Cols - 1.0 && y <= frame.Rows - 1.0))
            {
                return null;
            }
        }

        using var part = new Mat();
        using var way = map.ToMat();
        Cv2.WarpPerspective(frame, part, way, size, InterpolationFlags.Linear | InterpolationFlags.WarpInverseMap, BorderTypes.Replicate);
        using var match = new Mat();
        Cv2.MatchTemplate(part, wheel, match, TemplateMatchModes.CCoeffNormed);
        Cv2.MinMaxLoc(match, out _, out _, out _, out var best);
        return template.Find(part, new PicturePoint(best.X + half, best.Y + half), scale) is { Likeness: > Like } seen
            && Math.Abs(seen.Hub.X + left - thought.X) <= wide + 2.0 && Math.Abs(seen.Hub.Y + top - thought.Y) <= high + 2.0
            ? seen.Hub with { X = seen.Hub.X + left, Y = seen.Hub.Y + top } : null;
    }

    // About which pixel near the mark the frame is most alike all the way round.
    private static (PicturePoint Hub, RoundTemplate Template) Roundest(Mat frame, PicturePoint mark, double radius)
    {
        var reach = (int)Math.Ceiling(Math.Max(3.0, 0.25 * radius));
        var best = (Hub: mark, Template: RoundTemplate.Of(frame, mark, radius));
        for (var y = -reach; y <= reach; y++)
        {
            for (var x = -reach; x <= reach; x++)
            {
                var at = new PicturePoint(mark.X + x, mark.Y + y);
                var template = RoundTemplate.Of(frame, at, radius);
                best = template.Unevenness < best.Template.Unevenness ? (at, template) : best;
            }
        }

        return best;
    }

    private static double Distance(SeenHub a, PicturePoint b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));
}
