using Heaveline.Camera.Frames;
using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>
/// A camera that looks aslant along the road sees the far side of the car's plane smaller: lengths shrink from one side of the picture to the
/// other. By how much is told by the hubs, whose distance stays; taken off, the plane is seen square, and a body that goes along it turns no more
/// for going. How far the view is aslant goes with the lens, which is guessed; of it the cosine alone counts.
/// </summary>
internal sealed class SlantedView
{
    // Change of size over the pass below which nothing is taken off, and how many of its own standard deviations it must be.
    private const double Least = 0.005;
    private const double Sure = 5.0;

    private readonly PicturePoint middle;
    private readonly double upright;

    private SlantedView(PicturePoint middle, double shrinks, double focal)
    {
        (this.middle, Shrinks) = (middle, shrinks);
        Angle = Math.Atan(shrinks * focal);
        upright = Math.Cos(Angle);
    }

    /// <summary>How much smaller things are seen for each pixel further to the right, as a share.</summary>
    public double Shrinks { get; }

    /// <summary>How far the view is aslant, rad.</summary>
    public double Angle { get; }

    /// <summary>The view that frames were seen in, by their hubs; null: as good as square.</summary>
    /// <param name="seen">What was found in each frame.</param>
    /// <param name="width">Width of the picture, px.</param>
    /// <param name="height">Height of the picture, px.</param>
    public static SlantedView? Of(IEnumerable<SeenFrame> seen, int width, int height)
    {
        static PicturePoint Place(SeenHub hub) => new(hub.X, hub.Y);
        var both = seen.Where(s => s.Front is not null && s.Rear is not null);
        return Of([.. both.Select(s => (Place(s.Front!.Value), Place(s.Rear!.Value)))], width, height);
    }

    /// <summary>The view that hubs were seen in; null: as good as square.</summary>
    /// <param name="hubs">Both hubs of a frame each.</param>
    /// <param name="width">Width of the picture, px.</param>
    /// <param name="height">Height of the picture, px.</param>
    public static SlantedView? Of(IReadOnlyList<(PicturePoint Front, PicturePoint Rear)> hubs, int width, int height)
    {
        if (hubs.Count < FilmTrack.FewestFrames)
        {
            return null;
        }

        var middle = new PicturePoint((width - 1) / 2.0, (height - 1) / 2.0);
        var places = hubs.Select(h => (A: h.Front.X - middle.X, B: h.Rear.X - middle.X)).ToList();
        var (shrinks, doubt) = (0.0, double.PositiveInfinity);
        for (var round = 0; round < 8; round++)
        {
            // ln of the distance as it would be seen square, and how it goes with the shrinking.
            var rows = places.ConvertAll(p => (
                Size: Math.Log(Math.Abs(p.A - p.B)) - Math.Log(1.0 + (shrinks * p.A)) - Math.Log(1.0 + (shrinks * p.B)),
                By: (p.A / (1.0 + (shrinks * p.A))) + (p.B / (1.0 + (shrinks * p.B)))));
            double[] sizes = [.. rows.Select(r => r.Size).Order()];
            var usual = sizes[sizes.Length / 2];
            double[] away = [.. rows.Select(r => Math.Abs(r.Size - usual)).Order()];
            // Most frames agree once the slant is off; until then all of them speak.
            var kept = round < 4 ? rows : rows.FindAll(r => Math.Abs(r.Size - usual) <= Math.Max(5.0 * away[away.Length / 2], 1e-6));
            var (size, by) = (kept.Average(r => r.Size), kept.Average(r => r.By));
            var square = kept.Sum(r => (r.By - by) * (r.By - by));
            if (square <= 0.0)
            {
                return null;
            }

            var step = kept.Sum(r => (r.By - by) * (r.Size - size)) / square;
            shrinks += step;
            if (!places.TrueForAll(p => 1.0 + (shrinks * p.A) > 0.2 && 1.0 + (shrinks * p.B) > 0.2))
            {
                return null;
            }

            var misses = kept.Sum(r => Math.Pow(r.Size - size - (step * (r.By - by)), 2.0));
            doubt = Math.Sqrt(misses / (kept.Count - 2) / square);
        }

        var span = places.Max(p => Math.Max(p.A, p.B)) - places.Min(p => Math.Min(p.A, p.B));
        return Math.Abs(shrinks) * span > Least && Math.Abs(shrinks) > Sure * doubt
            ? new SlantedView(middle, shrinks, PictureScale.FocalWidths * width)
            : null;
    }

    /// <summary>How a picture that was seen aslant becomes one that is seen square.</summary>
    public Homography Way
    {
        get
        {
            var (k, c, x, y) = (Shrinks, upright, middle.X, middle.Y);
            return new Homography(1.0 + (k * x), 0.0, -k * x * x, k * y, c, (y * (1.0 - (k * x))) - (c * y), k, 0.0, 1.0 - (k * x));
        }
    }

    /// <summary>Where a point would be seen square.</summary>
    public PicturePoint Square(PicturePoint p)
    {
        var (x, y) = (p.X - middle.X, p.Y - middle.Y);
        var size = 1.0 + (Shrinks * x);
        return new PicturePoint(middle.X + (x / size), middle.Y + (upright * y / size));
    }
}
