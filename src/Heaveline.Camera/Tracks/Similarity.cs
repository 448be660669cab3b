using Heaveline.Camera.Frames;
using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>Shift, turn and size: x' = A·x − B·y + X, y' = B·x + A·y + Y, px.</summary>
internal readonly record struct Similarity(double A, double B, double X, double Y)
{
    /// <summary>What leaves everything where it is.</summary>
    public static Similarity None { get; } = new(1.0, 0.0, 0.0, 0.0);

    /// <summary>How long a length becomes.</summary>
    public double Scale => Math.Sqrt((A * A) + (B * B));

    /// <summary>Turn, clockwise as seen, rad.</summary>
    public double Turn => Math.Atan2(B, A);

    /// <summary>The one that takes two points to two others.</summary>
    public static Similarity Through(PicturePoint p, PicturePoint q, PicturePoint toP, PicturePoint toQ)
    {
        var (dx, dy, ex, ey) = (q.X - p.X, q.Y - p.Y, toQ.X - toP.X, toQ.Y - toP.Y);
        var square = (dx * dx) + (dy * dy);
        var (a, b) = (((dx * ex) + (dy * ey)) / square, ((dx * ey) - (dy * ex)) / square);
        return new Similarity(a, b, toP.X - (a * p.X) + (b * p.Y), toP.Y - (b * p.X) - (a * p.Y));
    }

    /// <summary>Where a point comes to.</summary>
    public PicturePoint Of(PicturePoint p) => new((A * p.X) - (B * p.Y) + X, (B * p.X) + (A * p.Y) + Y);

    /// <summary>First the other, then this.</summary>
    public Similarity After(Similarity o)
    {
        var moved = Of(new PicturePoint(o.X, o.Y));
        return new Similarity((A * o.A) - (B * o.B), (A * o.B) + (B * o.A), moved.X, moved.Y);
    }

    /// <summary>The same, told as motion about a pivot.</summary>
    public SeenPose About(PicturePoint pivot)
    {
        var to = Of(pivot);
        return new SeenPose { X = to.X - pivot.X, Y = to.Y - pivot.Y, Turn = Turn, Scale = Scale };
    }

    /// <summary>The same as eight numbers.</summary>
    public Homography Whole => new(A, -B, X, B, A, Y, 0.0, 0.0, 1.0);
}
