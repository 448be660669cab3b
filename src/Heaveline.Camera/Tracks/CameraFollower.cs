using Heaveline.Camera.Frames;

namespace Heaveline.Camera.Tracks;

/// <summary>
/// The camera's own motion, by what stands still behind the car. A camera that turns sees a plane turned: eight numbers, as a turn shifts the
/// picture's edges more than its middle. All frames are laid on one; where the camera has turned so far that little of it is left, on a further one
/// that is laid on it.
/// </summary>
internal sealed class CameraFollower : IDisposable
{
    private const int MostPoints = 260;
    private const int FewestPoints = 25;
    private const double Within = 0.8;
    private const int UsualWidth = 960;

    // Least eigenvalue of the brightness gradients about a corner, OpenCV's measure; noise of 3 of 255 makes a fifth of it.
    private const double LeastStrength = 4e-4;

    private readonly double smaller;
    private Mat? key;
    private Point2f[] points = [];
    private Homography keyFromFirst = Homography.None;
    private Homography last = Homography.None;
    private CameraTurn latest = new(Homography.None, 0, 0, 0.0, IsSeen: false);

    /// <summary>One for frames of a width.</summary>
    public CameraFollower(int width) => smaller = Math.Min(1.0, UsualWidth / (double)width);

    /// <summary>From the first frame to this one.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="car">Where the car is in it, as far as that is known: it is left out of what stands still.</param>
    public CameraTurn Follow(Mat frame, Rect? car) => latest = Found(frame, car) ?? latest with { Kept = 0, Dropped = points.Length, IsSeen = false };

    /// <inheritdoc/>
    public void Dispose() => key?.Dispose();

    private CameraTurn? Found(Mat frame, Rect? car)
    {
        var small = new Mat();
        Cv2.Resize(frame, small, default, smaller, smaller, InterpolationFlags.Area);
        if (key is null)
        {
            return Begin(small, car, Homography.None) ? new CameraTurn(Homography.None, points.Length, 0, 0.0, IsSeen: true) : null;
        }

        if (points.Length < FewestPoints)
        {
            small.Dispose();
            return null;
        }

        var found = Array.ConvertAll(points, p =>
        {
            var (x, y) = last.Of(p.X, p.Y);
            return new Point2f((float)x, (float)y);
        });
        Cv2.CalcOpticalFlowPyrLK(
            key, small, points, ref found, out var status, out _, new Size(15, 15), 3, new TermCriteria(CriteriaTypes.Count | CriteriaTypes.Eps,
                30, 0.003),
            OpticalFlowFlags.UseInitialFlow);
        var seen = Enumerable.Range(0, points.Length).Where(i => status[i] == 1 && !Hides(car, found[i])
            && found[i].X > 4 && found[i].Y > 4 && found[i].X < small.Cols - 5 && found[i].Y < small.Rows - 5).ToArray();
        if (seen.Length < FewestPoints || Fit(Array.ConvertAll(seen, i => points[i]), Array.ConvertAll(seen, i => found[i])) is not { } fit
            || fit.Kept < Math.Max(FewestPoints / 2, seen.Length / 3))
        {
            small.Dispose();
            return null;
        }

        last = fit.Motion;
        var motion = last.After(keyFromFirst);
        var (kept, dropped) = (fit.Kept, points.Length - fit.Kept);
        // Little is left of the frame that all are laid on, or it has moved by a fifth of its width: a further one.
        var (x, _) = last.Of(small.Cols / 2.0, small.Rows / 2.0);
        if (seen.Length < 0.5 * points.Length || Math.Abs(x - (small.Cols / 2.0)) > 0.2 * small.Cols)
        {
            _ = Begin(small, car, motion);
        }
        else
        {
            small.Dispose();
        }

        return new CameraTurn(motion.Sized(1.0 / smaller), kept, dropped, fit.Doubt / smaller, IsSeen: true);
    }

    private static (Homography Motion, int Kept, double Doubt)? Fit(Point2f[] from, Point2f[] to)
    {
        using var inliers = new Mat();
        using var found = Cv2.FindHomography(
            from.Select(p => new Point2d(p.X, p.Y)), to.Select(p => new Point2d(p.X, p.Y)), HomographyMethods.Ransac, Within, inliers, 1000, 0.999);
        if (found.Empty())
        {
            return null;
        }

        var h = found.AsSpan<double>();
        var motion = new Homography(h[0], h[1], h[2], h[3], h[4], h[5], h[6], h[7], h[8]);
        var (kept, square) = (0, 0.0);
        foreach (var i in Enumerable.Range(0, from.Length).Where(i => inliers.At<byte>(i) != 0))
        {
            var (x, y) = motion.Of(from[i].X, from[i].Y);
            square += Math.Pow(x - to[i].X, 2.0) + Math.Pow(y - to[i].Y, 2.0);
            kept++;
        }

        // Eight numbers by two coordinates of each point: so much of a coordinate's scatter is left in a place that they tell, on the mean.
        var left = Math.Max(1.0, (2.0 * kept) - 8.0);
        return (motion, kept, Math.Sqrt(square / left * 8.0 / Math.Max(8.0, 2.0 * kept)));
    }

    private bool Begin(Mat small, Rect? car, Homography fromFirst)
    {
        using var mask = new Mat(small.Size(), MatType.CV_8UC1, Scalar.All(255));
        if (car is { } there)
        {
            Cv2.Rectangle(
                mask, new Rect((int)(there.X * smaller), (int)(there.Y * smaller), (int)(there.Width * smaller), (int)(there.Height * smaller)),
                Scalar.All(0), -1);
        }

        // A corner must stand out of the noise itself: where all is smooth, the best corners are those of the noise.
        using var strength = new Mat();
        Cv2.CornerMinEigenVal(small, strength, 5);
        Cv2.MinMaxLoc(strength, out double _, out double strongest);
        points = strongest < LeastStrength ? [] : Cv2.GoodFeaturesToTrack(small, MostPoints, Math.Max(0.01, LeastStrength / strongest), 18.0,
            mask, 5, false, 0.04);
        key?.Dispose();
        (key, keyFromFirst, last) = (small, fromFirst, Homography.None);
        return points.Length >= FewestPoints;
    }

    private bool Hides(Rect? car, Point2f at) =>
        car is { } there && there.Contains(new Point((int)(at.X / smaller), (int)(at.Y / smaller)));
}
