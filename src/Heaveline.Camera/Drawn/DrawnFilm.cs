using Heaveline.Camera.Frames;
using Heaveline.Films;

namespace Heaveline.Camera.Drawn;

/// <summary>
/// A film of which everything is known: a car of the garage, computed over a hump, as a camera at the roadside would film it, with blur, noise and
/// shake.
/// Drawn again, frame by frame and bit by bit, from its seed whenever it is asked for; it is the demonstration and what the tracks are proven on.
/// </summary>
internal sealed record DrawnFilm : IPictures
{
    /// <summary>The crossing.</summary>
    public required DrawnPass Pass { get; init; }

    /// <summary>The camera.</summary>
    public DrawnCamera Camera { get; init; } = new();

    /// <summary>When its frames are taken.</summary>
    public DrawnClock Clock { get; init; } = new();

    /// <summary>Time of the first frame, s: the front wheels stand at the hump's foot at 0.</summary>
    public double From { get; init; } = -1.0;

    /// <summary>Time of the last frame, s.</summary>
    public double To { get; init; } = 2.0;

    /// <summary>Whether the background has no texture.</summary>
    public bool Plain { get; init; }

    /// <summary>Place along the road of a post of 0.3 m between camera and car, m; null: none.</summary>
    public double? Post { get; init; }

    /// <summary>Where chance comes from.</summary>
    public int Seed { get; init; } = 1;

    /// <inheritdoc/>
    public string Name => "drawn film";

    /// <inheritdoc/>
    public int Width => Camera.Width;

    /// <inheritdoc/>
    public int Height => Camera.Height;

    /// <inheritdoc/>
    public int? About => Clock.Count(To - From);

    /// <summary>The same film from and to where the whole car is in the picture, with a margin; of a camera that turns after it, these seconds at
    /// most.</summary>
    /// <param name="margin">Seconds left out at both ends.</param>
    /// <param name="from">Earliest start, s.</param>
    /// <param name="to">Latest end, s.</param>
    public DrawnFilm WholeCar(double margin = 0.05, double from = -0.8, double to = 2.6)
    {
        const double step = 1.0 / 240.0;
        var seen = Enumerable.Range(0, (int)((to - from) / step)).Select(k => from + (k * step)).Where(IsWhole).ToList();
        return this with { From = seen[0] + margin, To = seen[^1] - margin };
    }

    /// <summary>Whether the whole car is in the picture.</summary>
    public bool IsWhole(double time)
    {
        var m = Pass.Shape.Measures;
        var body = BodyAt(time);
        return new[] { body.Of(m.Rump, 0.5), body.Of(m.Nose, 0.5) }.All(p => p.X > 4.0 && p.X < Width - 5.0);
    }

    /// <inheritdoc/>
    public IEnumerable<Picture> Pictures(CancellationToken stop = default)
    {
        using var drawing = new FrameDrawing(this);
        using var grey = new Mat(Height, Width, MatType.CV_8UC1);
        var count = About!.Value;
        for (var k = 0; k < count; k++)
        {
            stop.ThrowIfCancellationRequested();
            drawing.Draw(From + Clock.Of(k), k, grey);
            yield return new Picture(k, Clock.Of(k), grey);
        }
    }

    /// <summary>What a person with a steady hand would mark in the frame nearest to an instant of the film.</summary>
    /// <param name="time">The instant, s after the first frame.</param>
    /// <param name="off">How far each mark is off, px.</param>
    public FilmMarks Marks(double time, double off = 0.0)
    {
        var random = new Random(Seed + 77);
        double Off() => off * ((2.0 * random.NextDouble()) - 1.0);
        time = Enumerable.Range(0, About!.Value).Select(Clock.Of).MinBy(t => Math.Abs(t - time));
        var (m, body) = (Pass.Shape.Measures, BodyAt(From + time));
        var (front, rear) = Hubs(From + time);
        var corners = new[]
        {
            body.Of(m.Rump - 0.05, m.Height + 0.05), body.Of(m.Nose + 0.05, m.Sill - 0.05), body.Of(m.Rump - 0.05, m.Sill - 0.05),
            body.Of(m.Nose + 0.05, m.Height + 0.05),
        };
        return new FilmMarks
        {
            Time = time,
            Front = new PicturePoint(front.X + Off(), front.Y + Off()),
            Rear = new PicturePoint(rear.X + Off(), rear.Y + Off()),
            BoxFrom = new PicturePoint(corners.Min(c => c.X), corners.Min(c => c.Y)),
            BoxTo = new PicturePoint(corners.Max(c => c.X), corners.Max(c => c.Y)),
        };
    }

    /// <summary>Where both hubs are in the frame whose first row is read at an instant of the crossing, px.</summary>
    public ((double X, double Y) Front, (double X, double Y) Rear) Hubs(double time)
    {
        (double X, double Y) Seen(bool isFront)
        {
            var at = time;
            (double X, double Y) seen = default;
            // The row that shows it says when it is read.
            for (var round = 0; round < 4; round++)
            {
                seen = WheelAt(at, isFront).Of(0.0, 0.0);
                at = time + (seen.Y * Camera.RowTime);
            }

            return seen;
        }

        return (Seen(isFront: true), Seen(isFront: false));
    }

    /// <summary>How the plane of the body's side is seen: x forward from the rear axle, z up from the ground, m.</summary>
    public Homography BodyAt(double time)
    {
        var now = Pass.At(time);
        var (sin, cos) = Math.SinCos(-now.Pitch(Pass.Wheelbase));
        var rear = now.FrontAxle - Pass.Wheelbase;
        return Turning(time, now).After(Camera.Still((rear, now.Rear, Camera.Distance), (cos, sin, 0.0), (-sin, cos, 0.0)));
    }

    /// <summary>How the plane of a wheel is seen, about its hub, m.</summary>
    public Homography WheelAt(double time, bool isFront)
    {
        var now = Pass.At(time);
        var (x, up) = isFront ? (now.FrontAxle, now.FrontWheel) : (now.FrontAxle - Pass.Wheelbase, now.RearWheel);
        var radius = Pass.Shape.Measures.WheelRadius;
        var (sin, cos) = Math.SinCos(-x / radius);
        return Turning(time, now).After(Camera.Still((x, radius + up, Camera.Distance), (cos, sin, 0.0), (-sin, cos, 0.0)));
    }

    /// <summary>How the camera has turned.</summary>
    public Homography Turning(double time) => Turning(time, Pass.At(time));

    private Homography Turning(double time, DrawnInstant now) => Camera.Turning(time, now.FrontAxle - (0.5 * Pass.Wheelbase));
}
