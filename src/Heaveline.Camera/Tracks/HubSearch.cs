using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>Where two wheels may be in a frame: two circles of one size at one height, apart as wheels of a car are. A suggestion, to be put right
/// by hand.</summary>
internal static class HubSearch
{
    private const int UsualWidth = 960;

    // Wheelbase over wheel radius: 2.3 m over 0.29 m to 3.3 m over 0.37 m, and room; of the rim alone half as much again.
    private const double Nearest = 6.0;
    private const double Furthest = 15.0;

    /// <summary>The two hubs, the left one first; null: none found.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="from">Upper left corner of a box that holds the car.</param>
    /// <param name="to">Lower right corner.</param>
    public static (PicturePoint Left, PicturePoint Right)? Of(Mat frame, PicturePoint? from = null, PicturePoint? to = null)
    {
        var box = from is { } p && to is { } q
            ? new Rect((int)p.X, (int)p.Y, (int)(q.X - p.X), (int)(q.Y - p.Y)) & new Rect(0, 0, frame.Cols, frame.Rows)
            : new Rect(0, 0, frame.Cols, frame.Rows);
        if (box.Width < 60 || box.Height < 20)
        {
            return null;
        }

        // Small wheels are found in a larger picture; the usual one first.
        var usual = Math.Min(1.0, UsualWidth / (double)frame.Cols);
        return Of(frame, box, usual) ?? Of(frame, box, 2.0 * usual);
    }

    private static (PicturePoint Left, PicturePoint Right)? Of(Mat frame, Rect box, double larger)
    {
        using var part = frame[box];
        using var seen = new Mat();
        Cv2.Resize(part, seen, default, larger, larger, larger > 1.0 ? InterpolationFlags.Cubic : InterpolationFlags.Area);
        Cv2.GaussianBlur(seen, seen, default, 1.2);
        var circles = Cv2.HoughCircles(seen, HoughModes.Gradient, 1.0, 16.0, 120.0, 26.0, 8, 90);
        (double Score, CircleSegment A, CircleSegment B)? best = null;
        // Strong ones first.
        foreach (var (i, a) in circles.Take(40).Index())
        {
            foreach (var (j, b) in circles.Take(40).Index().Skip(i + 1))
            {
                var (radius, apart) = (0.5 * (a.Radius + b.Radius), Math.Abs(a.Center.X - b.Center.X));
                var (size, height) = (Math.Abs(a.Radius - b.Radius) / radius, Math.Abs(a.Center.Y - b.Center.Y) / apart);
                if (apart < Nearest * radius || apart > Furthest * radius || size > 0.35 || height > 0.12)
                {
                    continue;
                }

                var score = size + (4.0 * height) + (0.03 * (i + j));
                best = best is null || score < best.Value.Score ? (score, a, b) : best;
            }
        }

        if (best is not { } found)
        {
            return null;
        }

        PicturePoint Place(CircleSegment c) => new((c.Center.X / larger) + box.X, (c.Center.Y / larger) + box.Y);
        var (left, right) = found.A.Center.X < found.B.Center.X ? (Place(found.A), Place(found.B)) : (Place(found.B), Place(found.A));
        // A wheel is round about its hub: that puts a circle right by the last pixels.
        var wheelbase = right.X - left.X;
        PicturePoint Right(PicturePoint mark) => new WheelFollower(frame, mark, FilmFollower.Reach * wheelbase, wheelbase).Hub;
        return (Right(left), Right(right));
    }
}
