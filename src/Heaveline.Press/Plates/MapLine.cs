using Heaveline.Press.Paper;

namespace Heaveline.Press.Plates;

/// <summary>One contour line on the sheet.</summary>
/// <param name="Level">Index of its level.</param>
/// <param name="Way">Its points.</param>
internal sealed record MapLine(int Level, Spot[] Way)
{
    /// <summary>Its length, points.</summary>
    public double Length => LengthOf(Way);

    /// <summary>Length of a way, points.</summary>
    public static double LengthOf(Spot[] way)
    {
        var length = 0.0;
        for (var i = 1; i < way.Length; i++)
        {
            length += Apart(way[i - 1], way[i]);
        }

        return length;
    }

    /// <summary>Places along the line, so far apart, none nearer to an open end than half of that.</summary>
    public IEnumerable<Spot> Places(double apart)
    {
        var (done, next) = (0.0, apart / 2.0);
        for (var i = 1; i < Way.Length; i++)
        {
            var (from, to) = (Way[i - 1], Way[i]);
            for (var leg = Apart(from, to); next < done + leg; next += apart)
            {
                var share = (next - done) / leg;
                yield return new Spot(from.X + (share * (to.X - from.X)), from.Y + (share * (to.Y - from.Y)));
            }

            done += Apart(from, to);
        }
    }

    private static double Apart(Spot a, Spot b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Y - b.Y) * (a.Y - b.Y)));
}
