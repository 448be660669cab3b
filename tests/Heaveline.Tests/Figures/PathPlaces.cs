using Heaveline.Figures;
using Heaveline.Figures.Silhouettes;

namespace Heaveline.Tests.Figures;

/// <summary>Places along the lines of a silhouette.</summary>
internal static class PathPlaces
{
    private const int PiecesOfACurve = 8;

    /// <summary>Places along a line, close enough for an eye; curves in eight pieces.</summary>
    public static IReadOnlyList<ScenePoint> Places(this SilhouettePath path)
    {
        var places = new List<ScenePoint>();
        foreach (var step in path.Steps)
        {
            if (places.Count > 0 && step.Round is { } round)
            {
                var from = places[^1];
                places.AddRange(Enumerable.Range(1, PiecesOfACurve).Select(k => Curve(from, round, step.To, (double)k / PiecesOfACurve)));
            }
            else if (places.Count > 0 && step.ArchRadius > 0.0)
            {
                places.AddRange(Arch(places[^1], step.To, step.ArchRadius));
            }
            else
            {
                places.Add(step.To);
            }
        }

        return places;
    }

    private static ScenePoint Curve(ScenePoint a, ScenePoint round, ScenePoint b, double t)
    {
        var (p, q, r) = ((1.0 - t) * (1.0 - t), 2.0 * t * (1.0 - t), t * t);
        return new((p * a.X) + (q * round.X) + (r * b.X), (p * a.Z) + (q * round.Z) + (r * b.Z));
    }

    // More than half a circle over the wheel, from one foot of the arch to the other at the same height.
    private static IEnumerable<ScenePoint> Arch(ScenePoint from, ScenePoint to, double radius)
    {
        var half = 0.5 * (from.X - to.X);
        var (x, z) = (0.5 * (from.X + to.X), from.Z + Math.Sqrt(Math.Max(0.0, (radius * radius) - (half * half))));
        var first = Math.Atan2(from.Z - z, half);
        var turn = Math.PI - (2.0 * first);
        return Enumerable.Range(1, 4 * PiecesOfACurve).Select(k => first + (turn * k / (4 * PiecesOfACurve)))
            .Select(angle => new ScenePoint(x + (radius * Math.Cos(angle)), z + (radius * Math.Sin(angle))));
    }
}
