using Heaveline.Camera.Frames;

namespace Heaveline.Camera.Drawn;

/// <summary>What stands still: a wall with windows behind the road, the road, the hump; as the camera that does not turn sees it, far beyond its
/// edges.</summary>
internal sealed class Scenery : IDisposable
{
    // Beyond the car's far side.
    private const double Wall = 6.0;

    private readonly Mat seen;
    private readonly double left;
    private readonly double above;

    private Scenery(Mat seen, double left, double above) => (this.seen, this.left, this.above) = (seen, left, above);

    /// <summary>Paints it.</summary>
    /// <param name="camera">The camera.</param>
    /// <param name="pass">The crossing, for its hump.</param>
    /// <param name="plain">Whether wall and road have no texture at all, as fog or a white wall has none.</param>
    /// <param name="random">Where chance comes from.</param>
    public static Scenery Of(DrawnCamera camera, DrawnPass pass, bool plain, Random random)
    {
        var side = (int)((camera.Pan > 0.0 ? 0.8 * camera.Width : 40.0) + (3.0 * camera.Shake));
        var over = (int)(40.0 + (4.0 * camera.Shake));
        var (width, height) = (camera.Width + (2 * side), camera.Height + (2 * over));
        var seen = new Mat(height, width, MatType.CV_8UC1, Scalar.All(128));
        var scenery = new Scenery(seen, side, over);
        var wall = camera.Still((0.0, 0.0, camera.Distance + Wall), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0));
        var foot = (int)Math.Clamp(scenery.On(wall, camera.LooksAt, 0.0).Y, 1, height - 1);
        if (!plain)
        {
            using (var bricks = Paint.Texture(foot, width, random, 135.0, 13.0))
            using (var room = seen[0, foot, 0, width])
            {
                bricks.ConvertTo(room, MatType.CV_8UC1);
            }

            // Windows and posts, a few metres apart.
            for (var x = camera.LooksAt - 60.0; x < camera.LooksAt + 60.0; x += 1.5 + (2.5 * random.NextDouble()))
            {
                var (wide, sill, tall, shade) =
                    (0.4 + random.NextDouble(), 3.0 * random.NextDouble(), 0.6 + random.NextDouble(), 40.0 + (180.0 * random.NextDouble()));
                var corners = new[] { (x, sill), (x + wide, sill), (x + wide, sill + tall), (x, sill + tall) };
                Cv2.FillConvexPoly(seen, corners.Select(c => scenery.Pixel(wall, c.Item1, c.Item2)), Scalar.All(shade), LineTypes.AntiAlias, 4);
            }

            using (var tar = Paint.Texture(height - foot, width, random, 105.0, 8.0))
            using (var room = seen[foot, height, 0, width])
            {
                tar.ConvertTo(room, MatType.CV_8UC1);
            }
        }

        var kerb = camera.Still((0.0, 0.0, camera.Distance + 0.2), (1.0, 0.0, 0.0), (0.0, 1.0, 0.0));
        var length = pass.Road.EventEnd ?? 0.0;
        var hump = Enumerable.Range(0, 41).Select(i => (X: length * i / 40.0, Z: pass.RoadHeight(length * i / 40.0)))
            .Append((length, -0.05)).Append((0.0, -0.05));
        Cv2.FillPoly(seen, [hump.Select(p => scenery.Pixel(kerb, p.Item1, p.Item2))], Scalar.All(200), LineTypes.AntiAlias, 4);
        Cv2.GaussianBlur(seen, seen, default, 0.7);
        return scenery;
    }

    /// <summary>Rows of the picture that a turned camera makes of it.</summary>
    /// <param name="turning">The camera's turning.</param>
    /// <param name="into">The rows, as one picture of its own.</param>
    /// <param name="row">Which row is the first of them.</param>
    public void Show(Homography turning, Mat into, int row)
    {
        using var map = turning.After(new Homography(1, 0, -left, 0, 1, -above, 0, 0, 1)).From(0, row).ToMat();
        Cv2.WarpPerspective(seen, into, map, into.Size(), InterpolationFlags.Linear, BorderTypes.Reflect101);
    }

    /// <inheritdoc/>
    public void Dispose() => seen.Dispose();

    private (double X, double Y) On(Homography plane, double x, double y)
    {
        var (u, v) = plane.Of(x, y);
        return (u + left, v + above);
    }

    private Point Pixel(Homography plane, double x, double y)
    {
        var (u, v) = On(plane, x, y);
        return new Point((int)Math.Round(Math.Clamp(u, -20000, 20000) * 16.0), (int)Math.Round(Math.Clamp(v, -20000, 20000) * 16.0));
    }
}
