using Heaveline.Camera.Frames;
using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>
/// Follows the corners of the body's side: from the marked frame to each frame, never from frame to frame, so that nothing drifts. A frame is first
/// laid under the marked one by the last pose; what is left is a pixel or two, found by Lucas–Kanade. Where the car was lost it is looked for anew,
/// small and whole.
/// </summary>
internal sealed class BodyFollower : IDisposable
{
    /// <summary>How far a point may be off the motion of the others, px.</summary>
    public const double Within = 1.5;

    // Wheel radius as a share of the wheelbase: cars lie between 0.10 and 0.13.
    private const double WheelShare = 0.12;
    private const int MostPoints = 250;
    private const int FewestPoints = 24;
    private const int SmallWidth = 72;
    private const double FoundAgain = 0.55;

    private readonly Rect box;
    private readonly Mat marked;
    private readonly Mat small;
    private readonly double smaller;
    private readonly Point2f[] corners;
    private readonly Size window;

    /// <summary>Chooses the points of the marked frame.</summary>
    /// <exception cref="FilmRefusedException">The body shows too few corners.</exception>
    public BodyFollower(Mat frame, FilmMarks marks)
    {
        var wheelbase = marks.Wheelbase;
        var (from, to) = (marks.BoxFrom, marks.BoxTo);
        box = new Rect((int)from.X, (int)from.Y, (int)(to.X - from.X), (int)(to.Y - from.Y)) & new Rect(0, 0, frame.Cols, frame.Rows);
        marked = frame[box].Clone();
        window = new Size(Odd(0.09 * wheelbase, 15, 41), Odd(0.09 * wheelbase, 15, 41));
        using var mask = new Mat(box.Size, MatType.CV_8UC1, Scalar.All(255));
        foreach (var hub in new[] { marks.Front, marks.Rear })
        {
            Cv2.Circle(mask, (int)hub.X - box.X, (int)hub.Y - box.Y, (int)(1.3 * WheelShare * wheelbase), Scalar.All(0), -1);
        }

        corners = Cv2.GoodFeaturesToTrack(marked, MostPoints, 0.01, Math.Max(4.0, wheelbase / 45.0), mask, 5, false, 0.04);
        if (corners.Length < FewestPoints)
        {
            marked.Dispose();
            throw new FilmRefusedException(
                $"The body shows {corners.Length} corners that can be followed, at least {FewestPoints} are needed.",
                "Draw the box round the whole side with its doors, windows and lamps; film nearer, or with more light.");
        }

        Points = [.. corners.Select(c => new PicturePoint(c.X + box.X, c.Y + box.Y))];
        smaller = Math.Min(1.0, SmallWidth / (double)box.Width);
        small = Smaller(marked);
    }

    /// <summary>The points in the marked frame.</summary>
    public PicturePoint[] Points { get; }

    /// <summary>Their middle.</summary>
    public PicturePoint Middle => new(Points.Average(p => p.X), Points.Average(p => p.Y));

    /// <summary>Where the points are in a frame, seen as the camera of the marked frame would see them.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="turn">The camera's turning from the marked frame to this one.</param>
    /// <param name="guess">Where the body is thought to be; null: anywhere.</param>
    /// <returns>The motion since the marked frame, and each point's place, null where it is not seen; null: not found.</returns>
    public (Similarity Motion, PicturePoint?[] Places)? Follow(Mat frame, Homography turn, Similarity? guess)
    {
        if ((guess ?? LookedFor(frame, turn)) is not { } pose)
        {
            return null;
        }

        PicturePoint?[] places = [];
        for (var round = 0; round < 4; round++)
        {
            places = Found(frame, turn, pose);
            var seen = Enumerable.Range(0, places.Length).Where(i => places[i] is not null).ToArray();
            var fit = RigidFit.Of(
                Array.ConvertAll(seen, i => Points[i]), Array.ConvertAll(seen, i => places[i]!.Value), round == 0 ? 3.0 * Within : Within);
            // A third of the points that the picture still holds; a fit to fewer is one to something else.
            if (fit is null || fit.Kept < Math.Max(12, seen.Length / 3) || Math.Abs(Math.Log(fit.Motion.Scale)) > 0.5)
            {
                return guess is null ? null : Follow(frame, turn, null);
            }

            var moved = Moved(pose, fit.Motion);
            pose = fit.Motion;
            if (round > 0 && moved < 0.7)
            {
                break;
            }
        }

        return (pose, places);
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        marked.Dispose();
        small.Dispose();
    }

    private static int Odd(double size, int least, int most) => (Math.Clamp((int)size, least, most) / 2 * 2) + 1;

    private Mat Smaller(Mat of)
    {
        var little = new Mat();
        Cv2.Resize(of, little, default, smaller, smaller, InterpolationFlags.Area);
        return little;
    }

    // Where the body, seen small, lies best in the frame, seen as small.
    private Similarity? LookedFor(Mat frame, Homography turn)
    {
        using var whole = Smaller(frame);
        if (whole.Cols <= small.Cols || whole.Rows <= small.Rows)
        {
            return null;
        }

        using var match = new Mat();
        Cv2.MatchTemplate(whole, small, match, TemplateMatchModes.CCoeffNormed);
        Cv2.MinMaxLoc(match, out _, out var best, out _, out var at);
        var (x, y) = turn.Back().Of((at.X / smaller) + (0.5 * box.Width), (at.Y / smaller) + (0.5 * box.Height));
        return best < FoundAgain ? null : new Similarity(1.0, 0.0, x - box.X - (0.5 * box.Width), y - box.Y - (0.5 * box.Height));
    }

    private PicturePoint?[] Found(Mat frame, Homography turn, Similarity pose)
    {
        // From the box of the marked frame to where it is now, and to the frame.
        var lay = pose.After(new Similarity(1.0, 0.0, box.X, box.Y));
        using var map = turn.After(lay.Whole).ToMat();
        using var under = new Mat();
        Cv2.WarpPerspective(frame, under, map, marked.Size(), InterpolationFlags.Linear | InterpolationFlags.WarpInverseMap, BorderTypes.Replicate);
        var found = (Point2f[])corners.Clone();
        Cv2.CalcOpticalFlowPyrLK(
            marked, under, corners, ref found, out var status, out var error, window, 2,
                new TermCriteria(CriteriaTypes.Count | CriteriaTypes.Eps, 30, 0.003),
            OpticalFlowFlags.UseInitialFlow);
        var places = new PicturePoint?[corners.Length];
        for (var i = 0; i < corners.Length; i++)
        {
            var at = lay.Of(new PicturePoint(found[i].X, found[i].Y));
            var (x, y) = turn.Of(at.X, at.Y);
            var isInside = x > window.Width / 2 && y > window.Height / 2 && x < frame.Cols - (window.Width / 2)
                && y < frame.Rows - (window.Height / 2);
            places[i] = status[i] == 1 && isInside ? at : null;
        }

        return places;
    }

    private double Moved(Similarity a, Similarity b)
    {
        double Gap(double x, double y)
        {
            var (p, q) = (a.Of(new PicturePoint(x, y)), b.Of(new PicturePoint(x, y)));
            return Math.Max(Math.Abs(p.X - q.X), Math.Abs(p.Y - q.Y));
        }

        return Math.Max(Gap(box.Left, box.Top), Gap(box.Right, box.Bottom));
    }
}
