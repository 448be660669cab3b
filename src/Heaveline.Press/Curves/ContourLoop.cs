using Heaveline.Press.Paper;

namespace Heaveline.Press.Curves;

/// <summary>One closed outline of the region at or above a level.</summary>
/// <param name="Corners">Its points; the last is the first again.</param>
/// <param name="Area">What it encloses, square points.</param>
/// <param name="IsHole">Whether the region lies outside it.</param>
internal sealed record ContourLoop(Spot[] Corners, double Area, bool IsHole)
{
    /// <summary>Measures an outline that has the region on its left.</summary>
    /// <param name="corners">Its points; the last is the first again.</param>
    /// <param name="sense">−1 where left and right are swapped on the sheet, else 1.</param>
    public static ContourLoop Of(Spot[] corners, double sense)
    {
        // Shoelace formula, from the first corner so that small loops far from the origin keep their digits.
        var twice = 0.0;
        for (var i = 1; i < corners.Length; i++)
        {
            var (a, b) = (corners[i - 1], corners[i]);
            twice += ((a.X - corners[0].X) * (b.Y - corners[0].Y)) - ((b.X - corners[0].X) * (a.Y - corners[0].Y));
        }

        return new ContourLoop(corners, Math.Abs(twice) / 2.0, twice * sense < 0.0);
    }
}
