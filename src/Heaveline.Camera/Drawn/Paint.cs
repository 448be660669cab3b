using Heaveline.Figures;
using Heaveline.Figures.Silhouettes;

namespace Heaveline.Camera.Drawn;

/// <summary>Brightness and cover of a flat thing that is drawn from the side, and how its pixels lie on it.</summary>
/// <param name="Pixels">Brightness times cover, and cover 0 to 1: two floats a pixel.</param>
/// <param name="PerMetre">Pixels a metre.</param>
/// <param name="Left">Place of the left edge, m.</param>
/// <param name="Top">Height of the upper edge, m.</param>
internal sealed record Paint(Mat Pixels, double PerMetre, double Left, double Top) : IDisposable
{
    private const int Shift = 6;

    /// <summary>Width, m.</summary>
    public double Width => (Pixels.Cols - 1) / PerMetre;

    /// <summary>Height, m.</summary>
    public double Height => (Pixels.Rows - 1) / PerMetre;

    /// <summary>The body's skin: panels with reflections and dirt, glass, doors; its wheel arches cut out.</summary>
    public static Paint Body(Silhouette shape, double perMetre, Random random)
    {
        var at = Around(shape, perMetre);
        using var skin = Texture(at.Height, at.Width, random, 170.0, 16.0);
        using var cover = new Mat(at.Height, at.Width, MatType.CV_8UC1, Scalar.All(0));
        Fill(cover, at, shape.Outline, 255);
        foreach (var panel in shape.Panels)
        {
            Fill(cover, at, panel, 255);
        }

        foreach (var pane in shape.Glass)
        {
            using var glass = new Mat(at.Height, at.Width, MatType.CV_8UC1, Scalar.All(0));
            Fill(glass, at, pane, 255);
            using var dark = Texture(at.Height, at.Width, random, 55.0, 10.0);
            dark.CopyTo(skin, glass);
        }

        foreach (var crease in shape.Creases)
        {
            Cv2.Polylines(skin, [Points(at, crease)], isClosed: false, Scalar.All(45), thickness: 2, LineTypes.AntiAlias, Shift);
        }

        return Of(skin, cover, at);
    }

    /// <summary>What is seen through the arches: the dark of the wheel houses.</summary>
    public static Paint Arches(Silhouette shape, double perMetre)
    {
        var at = Around(shape, perMetre);
        using var dark = new Mat(at.Height, at.Width, MatType.CV_32FC1, Scalar.All(22));
        using var cover = new Mat(at.Height, at.Width, MatType.CV_8UC1, Scalar.All(0));
        foreach (var x in new[] { 0.0, shape.Measures.Wheelbase })
        {
            Cv2.Circle(
                cover, Pixel(at, x, shape.Measures.WheelRadius), (int)((shape.ArchRadius + 0.02) * perMetre * (1 << Shift)), Scalar.All(255), -1,
                LineTypes.AntiAlias, Shift);
        }

        return Of(dark, cover, at);
    }

    /// <summary>A wheel about its hub: tyre, rim, spokes, one of them not like the others.</summary>
    public static Paint Wheel(double radius, double perMetre, Random random)
    {
        var half = (int)Math.Ceiling(radius * 1.05 * perMetre);
        var at = new Canvas(half / perMetre, half / perMetre, perMetre, (2 * half) + 1, (2 * half) + 1);
        using var skin = Texture(at.Height, at.Width, random, 30.0, 4.0);
        using var cover = new Mat(at.Height, at.Width, MatType.CV_8UC1, Scalar.All(0));
        void Disc(Mat on, double share, double value) => Cv2.Circle(
            on, Pixel(at, 0.0, 0.0), (int)(radius * share * perMetre * (1 << Shift)), Scalar.All(value), -1, LineTypes.AntiAlias, Shift);
        Disc(cover, 1.0, 255);
        Disc(skin, 0.66, 165.0);
        Disc(skin, 0.60, 60.0);
        for (var spoke = 0; spoke < 5; spoke++)
        {
            var (sin, cos) = Math.SinCos(2.0 * Math.PI * spoke / 5.0);
            Cv2.Line(
                skin, Pixel(at, 0.0, 0.0), Pixel(at, 0.61 * radius * cos, 0.61 * radius * sin), Scalar.All(spoke == 0 ? 135 : 170),
                Math.Max(1, (int)(0.16 * radius * perMetre)), LineTypes.AntiAlias, Shift);
        }

        Disc(skin, 0.13, 190.0);
        return Of(skin, cover, at);
    }

    /// <summary>Blotches of two sizes about a brightness.</summary>
    public static Mat Texture(int height, int width, Random random, double mean, double deviation)
    {
        var bytes = new byte[height * width];
        random.NextBytes(bytes);
        using var raw = Mat.FromPixelData(height, width, MatType.CV_8UC1, bytes);
        using var rough = new Mat();
        raw.ConvertTo(rough, MatType.CV_32FC1);
        var (fine, coarse) = (new Mat(), new Mat());
        Cv2.GaussianBlur(rough, fine, default, 2.0);
        Cv2.GaussianBlur(rough, coarse, default, 9.0);
        // A blur of σ px leaves 1/(2σ√π) of the deviation of white noise.
        const double white = 255.0 / 3.4641016;
        var gain = deviation / Math.Sqrt(2.0) / white * 2.0 * Math.Sqrt(Math.PI);
        Cv2.AddWeighted(fine, 2.0 * gain, coarse, 9.0 * gain, mean - (127.5 * 11.0 * gain), fine);
        coarse.Dispose();
        return fine;
    }

    /// <inheritdoc/>
    public void Dispose() => Pixels.Dispose();

    private static Canvas Around(Silhouette shape, double perMetre)
    {
        var m = shape.Measures;
        var (left, right, top) = (m.Rump - 0.3, m.Nose + 0.3, m.Height + 0.3);
        return new Canvas(-left, top, perMetre, (int)Math.Ceiling((right - left) * perMetre), (int)Math.Ceiling(top * perMetre));
    }

    private static Paint Of(Mat skin, Mat cover, Canvas at)
    {
        using var share = new Mat();
        cover.ConvertTo(share, MatType.CV_32FC1, 1.0 / 255.0);
        // A soft edge, as a lens makes it.
        Cv2.GaussianBlur(share, share, default, 0.7);
        using var covered = new Mat();
        Cv2.Multiply(skin, share, covered);
        var pixels = new Mat();
        Cv2.Merge([covered, share], pixels);
        return new Paint(pixels, at.PerMetre, -at.Left, at.Top);
    }

    private static void Fill(Mat on, Canvas at, SilhouettePath path, double value) =>
        Cv2.FillPoly(on, [Points(at, path)], Scalar.All(value), LineTypes.AntiAlias, Shift);

    private static Point Pixel(Canvas at, double x, double z) =>
        new((int)Math.Round((x + at.Left) * at.PerMetre * (1 << Shift)), (int)Math.Round((at.Top - z) * at.PerMetre * (1 << Shift)));

    private static List<Point> Points(Canvas at, SilhouettePath path)
    {
        var points = new List<Point>();
        ScenePoint last = default;
        foreach (var step in path.Steps)
        {
            const int pieces = 24;
            for (var i = 1; i <= pieces; i++)
            {
                var s = (double)i / pieces;
                if (step.Round is { } corner)
                {
                    double Curve(double a, double b, double c) => ((1 - s) * (1 - s) * a) + (2 * s * (1 - s) * b) + (s * s * c);
                    points.Add(Pixel(at, Curve(last.X, corner.X, step.To.X), Curve(last.Z, corner.Z, step.To.Z)));
                }
                else if (step.ArchRadius > 0.0 && points.Count > 0)
                {
                    var (half, middle) = (0.5 * Math.Abs(step.To.X - last.X), 0.5 * (step.To.X + last.X));
                    var deep = Math.Sqrt(Math.Max((step.ArchRadius * step.ArchRadius) - (half * half), 0.0));
                    var from = Math.Atan2(-deep, last.X - middle);
                    // Over the top, whichever way.
                    var whole = last.X > middle ? Math.PI + (2.0 * -from) : -(Math.PI + (2.0 * (Math.PI + from)));
                    var angle = from + (s * whole);
                    points.Add(Pixel(at, middle + (step.ArchRadius * Math.Cos(angle)), last.Z + deep + (step.ArchRadius * Math.Sin(angle))));
                }
                else if (i == pieces)
                {
                    points.Add(Pixel(at, step.To.X, step.To.Z));
                }
            }

            last = step.To;
        }

        return points;
    }

    private readonly record struct Canvas(double Left, double Top, double PerMetre, int Width, int Height);
}
