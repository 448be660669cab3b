using Heaveline.Films;

namespace Heaveline.Camera.Tracks;

/// <summary>
/// The shift, turn and size that most pairs of points agree on: drawn two by two, the largest agreeing set fitted by least squares, twice. The
/// draws come from a seed of their own: the same points give the same fit.
/// </summary>
internal sealed record RigidFit
{
    private const int Draws = 300;

    // Below, an agreement may be one of chance.
    private const int Fewest = 10;

    private RigidFit()
    {
    }

    /// <summary>The motion.</summary>
    public required Similarity Motion { get; init; }

    /// <summary>Which of the points agree.</summary>
    public required bool[] Agrees { get; init; }

    /// <summary>How many agree.</summary>
    public required int Kept { get; init; }

    /// <summary>Standard deviation of a coordinate of those, px.</summary>
    public required double Scatter { get; init; }

    /// <summary>Standard deviation of the turn, rad.</summary>
    public required double TurnDoubt { get; init; }

    /// <summary>Standard deviation of the shift in the middle of the points, px.</summary>
    public double ShiftDoubt => Scatter / Math.Sqrt(Kept);

    /// <summary>The fit; null where too few agree.</summary>
    /// <param name="from">The points.</param>
    /// <param name="to">Where they came to, each.</param>
    /// <param name="within">How far a point that agrees may be off, px.</param>
    public static RigidFit? Of(ReadOnlySpan<PicturePoint> from, ReadOnlySpan<PicturePoint> to, double within)
    {
        var n = from.Length;
        if (n < Fewest)
        {
            return null;
        }

        var random = new Random(20_000 + n);
        var (best, most) = (Similarity.None, -1);
        for (var draw = 0; draw < Draws; draw++)
        {
            var (i, j) = (random.Next(n), random.Next(n));
            if (Square(from[i], from[j]) < 400.0)
            {
                continue;
            }

            var motion = Similarity.Through(from[i], from[j], to[i], to[j]);
            var agree = 0;
            for (var k = 0; k < n; k++)
            {
                agree += Square(motion.Of(from[k]), to[k]) < within * within ? 1 : 0;
            }

            (best, most) = agree > most ? (motion, agree) : (best, most);
        }

        RigidFit? fit = null;
        for (var round = 0; round < 3; round++)
        {
            var agrees = new bool[n];
            for (var k = 0; k < n; k++)
            {
                agrees[k] = Square(best.Of(from[k]), to[k]) < within * within;
            }

            fit = LeastSquares(from, to, agrees);
            if (fit is null)
            {
                return null;
            }

            best = fit.Motion;
        }

        return fit;
    }

    private static RigidFit? LeastSquares(ReadOnlySpan<PicturePoint> from, ReadOnlySpan<PicturePoint> to, bool[] agrees)
    {
        var (kept, px, py, qx, qy) = (0, 0.0, 0.0, 0.0, 0.0);
        for (var k = 0; k < from.Length; k++)
        {
            if (agrees[k])
            {
                (kept, px, py, qx, qy) = (kept + 1, px + from[k].X, py + from[k].Y, qx + to[k].X, qy + to[k].Y);
            }
        }

        if (kept < Fewest)
        {
            return null;
        }

        (px, py, qx, qy) = (px / kept, py / kept, qx / kept, qy / kept);
        var (square, along, across) = (0.0, 0.0, 0.0);
        for (var k = 0; k < from.Length; k++)
        {
            if (agrees[k])
            {
                var (x, y, u, v) = (from[k].X - px, from[k].Y - py, to[k].X - qx, to[k].Y - qy);
                (square, along, across) = (square + (x * x) + (y * y), along + (x * u) + (y * v), across + (x * v) - (y * u));
            }
        }

        if (square <= 0.0)
        {
            return null;
        }

        var (a, b) = (along / square, across / square);
        var motion = new Similarity(a, b, qx - (a * px) + (b * py), qy - (b * px) - (a * py));
        var misses = 0.0;
        for (var k = 0; k < from.Length; k++)
        {
            misses += agrees[k] ? Square(motion.Of(from[k]), to[k]) : 0.0;
        }

        var scatter = Math.Sqrt(misses / ((2 * kept) - 4));
        return new RigidFit
        {
            Motion = motion, Agrees = agrees, Kept = kept, Scatter = scatter,
            TurnDoubt = scatter / Math.Sqrt(square) / motion.Scale
        };
    }

    private static double Square(PicturePoint p, PicturePoint q) => ((p.X - q.X) * (p.X - q.X)) + ((p.Y - q.Y) * (p.Y - q.Y));
}
