using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>
/// A wheel as it looks whatever it has rolled: the mean brightness at each distance from its hub, and how far it varies there on the way round.
/// Where spokes
/// go by it counts little, where tyre meets rim it counts much: a rolling pattern does not pull it.
/// </summary>
internal sealed class RoundTemplate
{
    private const double Bin = 0.5;

    // Noise of a pixel that is left where nothing varies, of 255.
    private const double Least = 12.0;

    private readonly double[] mean;
    private readonly double[] weight;

    private RoundTemplate(double radius, double[] mean, double[] weight)
    {
        (Radius, this.mean, this.weight) = (radius, mean, weight);
        for (var bin = 1; bin < mean.Length; bin++)
        {
            Unevenness += bin / weight[bin];
        }
    }

    /// <summary>How far it reaches from the hub, px of the marked frame.</summary>
    public double Radius { get; }

    /// <summary>How much the brightness varies on the ways round, each counted by its length: least about the hub itself.</summary>
    public double Unevenness { get; }

    /// <summary>Reads it off a frame.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="hub">The hub.</param>
    /// <param name="radius">How far it reaches, px.</param>
    public static RoundTemplate Of(Mat frame, PicturePoint hub, double radius)
    {
        var bins = (int)(radius / Bin) + 2;
        var (mean, weight) = (new double[bins], new double[bins]);
        ReadOnlySpan<byte> pixels = frame.AsSpan<byte>();
        for (var bin = 0; bin < bins; bin++)
        {
            var round = Math.Max(8, (int)(2.0 * Math.PI * bin * Bin * 1.5));
            var (sum, square) = (0.0, 0.0);
            for (var k = 0; k < round; k++)
            {
                var (sin, cos) = Math.SinCos(2.0 * Math.PI * k / round);
                var value = At(pixels, frame, hub.X + (bin * Bin * cos), hub.Y + (bin * Bin * sin));
                (sum, square) = (sum + value, square + (value * value));
            }

            mean[bin] = sum / round;
            weight[bin] = 1.0 / (Math.Max((square / round) - (mean[bin] * mean[bin]), 0.0) + (Least * Least));
        }

        return new RoundTemplate(radius, mean, weight);
    }

    /// <summary>As a picture, the hub in its middle.</summary>
    /// <param name="scale">Its size beside the marked frame.</param>
    public Mat Picture(double scale)
    {
        var half = (int)(Radius * scale);
        var picture = new Mat((2 * half) + 1, (2 * half) + 1, MatType.CV_8UC1);
        var to = picture.AsSpan<byte>();
        for (var y = -half; y <= half; y++)
        {
            for (var x = -half; x <= half; x++)
            {
                to[((y + half) * picture.Cols) + x + half] = (byte)Math.Clamp(Brightness(Math.Sqrt((x * x) + (y * y)) / scale).Value, 0.0, 255.0);
            }
        }

        return picture;
    }

    /// <summary>
    /// The hub near a place, by least squares over the pixels about it: brightness a·T(r) + b, so that shadow and sun do not matter, and the place.
    /// </summary>
    /// <param name="frame">The frame.</param>
    /// <param name="near">The place, a few pixels off.</param>
    /// <param name="scale">Size of the wheel beside the marked frame.</param>
    /// <returns>The hub and how well the wheel is seen there, 0 to 1; null: it is not.</returns>
    public (SeenHub Hub, double Likeness)? Find(Mat frame, PicturePoint near, double scale)
    {
        var (x, y) = (near.X, near.Y);
        ReadOnlySpan<byte> pixels = frame.AsSpan<byte>();
        var (half, columns) = ((int)(Radius * scale), frame.Cols);
        for (var round = 0; round < 12; round++)
        {
            var (left, top) = ((int)Math.Round(x) - half, (int)Math.Round(y) - half);
            if (left < 0 || top < 0 || left + (2 * half) >= frame.Cols || top + (2 * half) >= frame.Rows)
            {
                return null;
            }

            var sums = new Sums();
            for (var v = top; v <= top + (2 * half); v++)
            {
                for (var u = left; u <= left + (2 * half); u++)
                {
                    var (dx, dy) = (u - x, v - y);
                    var r = Math.Sqrt((dx * dx) + (dy * dy));
                    if (r < 0.9 * half && r > 1.0)
                    {
                        var (value, slope, counts) = Brightness(r / scale);
                        sums.Add(counts, value, -slope / scale * dx / r, -slope / scale * dy / r, pixels[(v * columns) + u]);
                    }
                }
            }

            if (sums.Solved() is not { } solved || solved.Gain <= 0.05)
            {
                return null;
            }

            // Far steps are cut: the wheel lies within a few pixels.
            var (moveX, moveY) = (Math.Clamp(solved.X, -2.0, 2.0), Math.Clamp(solved.Y, -2.0, 2.0));
            (x, y) = (x + moveX, y + moveY);
            if (Math.Abs(x - near.X) > half || Math.Abs(y - near.Y) > half)
            {
                return null;
            }

            if (Math.Abs(moveX) < 0.002 && Math.Abs(moveY) < 0.002)
            {
                return (new SeenHub(x, y, solved.Doubt), solved.Likeness);
            }
        }

        return null;
    }

    private static double At(ReadOnlySpan<byte> pixels, Mat frame, double x, double y)
    {
        var (u, v) = (Math.Clamp((int)Math.Floor(x), 0, frame.Cols - 2), Math.Clamp((int)Math.Floor(y), 0, frame.Rows - 2));
        var (s, t) = (Math.Clamp(x - u, 0.0, 1.0), Math.Clamp(y - v, 0.0, 1.0));
        var upper = pixels.Slice((v * frame.Cols) + u, 2);
        var lower = pixels.Slice(((v + 1) * frame.Cols) + u, 2);
        return ((1 - t) * (((1 - s) * upper[0]) + (s * upper[1]))) + (t * (((1 - s) * lower[0]) + (s * lower[1])));
    }

    private (double Value, double Slope, double Weight) Brightness(double r)
    {
        var place = Math.Min(r / Bin, mean.Length - 1.001);
        var k = (int)place;
        var s = place - k;
        // Slopes to both sides, so that the model's turn is smooth from bin to bin.
        double Slope(int at) => (mean[Math.Min(at + 1, mean.Length - 1)] - mean[Math.Max(at - 1, 0)]) / (2.0 * Bin);
        return (
            ((1 - s) * mean[k]) + (s * mean[k + 1]),
            ((1 - s) * Slope(k)) + (s * Slope(k + 1)),
            ((1 - s) * weight[k]) + (s * weight[k + 1]));
    }
}
