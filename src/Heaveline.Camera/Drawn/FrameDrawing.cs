using Heaveline.Camera.Frames;

namespace Heaveline.Camera.Drawn;

/// <summary>Draws the frames of a film: what stands still, then the car as it moves while the shutter is open and the rows are read, then the
/// noise.</summary>
internal sealed class FrameDrawing : IDisposable
{
    // Rows that are read so shortly after each other that a car moves a tenth of a pixel between them.
    private const int Band = 4;
    private const int NoiseRoom = 64;

    // Finer than the picture, so that what is drawn is not what the pixels make of it.
    private const double Finer = 1.5;

    private readonly DrawnFilm film;
    private readonly Scenery scenery;
    private readonly Paint body;
    private readonly Paint arches;
    private readonly Paint wheel;
    private readonly Mat noise;
    private readonly Mat? still;

    public FrameDrawing(DrawnFilm film)
    {
        this.film = film;
        var random = new Random(film.Seed);
        var perMetre = Finer * film.Camera.Scale;
        scenery = Scenery.Of(film.Camera, film.Pass, film.Plain, random);
        body = Paint.Body(film.Pass.Shape, perMetre, random);
        arches = Paint.Arches(film.Pass.Shape, perMetre);
        wheel = Paint.Wheel(film.Pass.Shape.Measures.WheelRadius, perMetre, random);
        noise = Noise(film.Camera, random);
        if (!Turns)
        {
            still = new Mat(film.Height, film.Width, MatType.CV_8UC1);
            scenery.Show(film.Turning(0.0), still, 0);
        }
    }

    private bool Turns => film.Camera.Pan > 0.0 || film.Camera.Shake > 0.0;

    private int Exposures => film.Camera.Pan > 0.0 ? 5 : 3;

    /// <summary>Draws the frame whose first row is read at an instant of the crossing.</summary>
    public void Draw(double time, int index, Mat grey)
    {
        var rolling = film.Camera.Readout > 0.0;
        if (still is not null)
        {
            still.CopyTo(grey);
        }
        else
        {
            foreach (var (from, to) in Bands(0, film.Height, rolling ? 2 * Band : film.Height))
            {
                using var rows = grey[from, to, 0, film.Width];
                ShowScenery(rows, from, time + (0.5 * (from + to) * film.Camera.RowTime));
            }
        }

        var (left, top, right, bottom) = Around(time);
        if (right - left > 1 && bottom - top > 1)
        {
            foreach (var (from, to) in Bands(top, bottom, rolling ? Band : bottom - top))
            {
                using var room = grey[from, to, left, right];
                DrawCar(room, left, from, time + (0.5 * (from + to) * film.Camera.RowTime));
            }
        }

        if (film.Post is { } post)
        {
            var plane = film.Turning(time).After(film.Camera.Still((post, 0.0, 0.7 * film.Camera.Distance), (1, 0, 0), (0, 1, 0)));
            var (a, b) = (plane.Of(0.0, 0.0), plane.Of(0.3, 0.0));
            Cv2.Rectangle(grey, new Point((int)Math.Min(a.X, b.X), 0), new Point((int)Math.Max(a.X, b.X), film.Height), Scalar.All(70), -1);
        }

        // Another corner of the same noise for every frame.
        var chance = new Random(film.Seed + (1000 * index));
        using var grain = noise[new Rect(chance.Next(NoiseRoom), chance.Next(NoiseRoom), film.Width, film.Height)];
        Cv2.Add(grey, grain, grey, null, grey.Depth());
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        scenery.Dispose();
        body.Dispose();
        arches.Dispose();
        wheel.Dispose();
        noise.Dispose();
        still?.Dispose();
    }

    private static IEnumerable<(int From, int To)> Bands(int from, int to, int rows)
    {
        for (var row = from; row < to; row += rows)
        {
            yield return (row, Math.Min(row + rows, to));
        }
    }

    private static Mat Noise(DrawnCamera camera, Random random)
    {
        var (height, width) = (camera.Height + NoiseRoom, camera.Width + NoiseRoom);
        var (values, bytes) = (new short[height * width], new byte[4 * width]);
        // Four even draws make a bell, wide 147.8.
        for (var row = 0; row < height; row++)
        {
            random.NextBytes(bytes);
            for (var x = 0; x < width; x++)
            {
                var sum = bytes[4 * x] + bytes[(4 * x) + 1] + bytes[(4 * x) + 2] + bytes[(4 * x) + 3];
                values[(row * width) + x] = (short)Math.Round((sum - 510) / 147.8 * camera.Noise);
            }
        }

        return Mat.FromPixelData(height, width, MatType.CV_16SC1, values).Clone();
    }

    private double Shutter(int exposure) => film.Camera.Exposure * ((exposure / (Exposures - 1.0)) - 0.5);

    private void ShowScenery(Mat rows, int from, double time)
    {
        if (film.Camera.Pan <= 0.0)
        {
            scenery.Show(film.Turning(time), rows, from);
            return;
        }

        using var sum = new Mat(rows.Size(), MatType.CV_32FC1, Scalar.All(0));
        using var one = new Mat(rows.Size(), MatType.CV_8UC1);
        for (var e = 0; e < Exposures; e++)
        {
            scenery.Show(film.Turning(time + Shutter(e)), one, from);
            Cv2.Accumulate(one, sum, null!);
        }

        sum.ConvertTo(rows, MatType.CV_8UC1, 1.0 / Exposures);
    }

    private void DrawCar(Mat room, int left, int top, double time)
    {
        using var ground = new Mat();
        room.ConvertTo(ground, MatType.CV_32FC1);
        using var sum = new Mat(room.Size(), MatType.CV_32FC1, Scalar.All(0));
        for (var e = 0; e < Exposures; e++)
        {
            var at = time + Shutter(e);
            using var one = ground.Clone();
            Lay(arches, film.BodyAt(at), one, left, top);
            Lay(wheel, film.WheelAt(at, isFront: false), one, left, top);
            Lay(wheel, film.WheelAt(at, isFront: true), one, left, top);
            Lay(body, film.BodyAt(at), one, left, top);
            Cv2.Accumulate(one, sum, null!);
        }

        sum.ConvertTo(room, MatType.CV_8UC1, 1.0 / Exposures);
    }

    private static void Lay(Paint paint, Homography plane, Mat on, int left, int top)
    {
        var onPaint = new Homography(1 / paint.PerMetre, 0, paint.Left, 0, -1 / paint.PerMetre, paint.Top, 0, 0, 1);
        using var map = plane.After(onPaint).From(left, top).ToMat();
        using var seen = new Mat();
        Cv2.WarpPerspective(paint.Pixels, seen, map, on.Size(), InterpolationFlags.Linear, BorderTypes.Constant, Scalar.All(0));
        var light = seen.AsSpan<Vec2f>();
        var under = on.AsSpan<float>();
        for (var i = 0; i < under.Length; i++)
        {
            under[i] = (under[i] * (1.0f - light[i].Item1)) + light[i].Item0;
        }
    }

    // A box that holds the car while it is read.
    private (int Left, int Top, int Right, int Bottom) Around(double time)
    {
        var (x0, x1, y0, y1) = (double.MaxValue, double.MinValue, double.MaxValue, double.MinValue);
        foreach (var at in new[] { time - film.Camera.Exposure, time + film.Camera.Readout + film.Camera.Exposure })
        {
            var plane = film.BodyAt(at);
            foreach (var (x, z) in new[] { (body.Left, body.Top), (body.Left + body.Width, body.Top), (body.Left, -0.2),
                (body.Left + body.Width, -0.2) })
            {
                var p = plane.Of(x, z);
                (x0, x1, y0, y1) = (Math.Min(x0, p.X), Math.Max(x1, p.X), Math.Min(y0, p.Y), Math.Max(y1, p.Y));
            }
        }

        return (
            (int)Math.Clamp(x0 - 4, 0, film.Width), (int)Math.Clamp(y0 - 4, 0, film.Height),
            (int)Math.Clamp(x1 + 5, 0, film.Width), (int)Math.Clamp(y1 + 5, 0, film.Height));
    }
}
