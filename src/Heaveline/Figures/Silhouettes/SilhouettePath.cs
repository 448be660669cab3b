using System.Collections.Immutable;

namespace Heaveline.Figures.Silhouettes;

/// <summary>A line of a silhouette: strokes from its first place on, m.</summary>
/// <param name="Steps">The strokes; the first is the place where the pen is put down.</param>
/// <param name="IsClosed">Whether it goes back to where it began.</param>
internal sealed record SilhouettePath(ImmutableArray<SilhouetteStep> Steps, bool IsClosed)
{
    private const int PiecesOfACurve = 8;

    /// <summary>A straight line.</summary>
    public static SilhouettePath Between(double x0, double z0, double x1, double z1) => new([new(new(x0, z0)), new(new(x1, z1))], IsClosed: false);

    /// <summary>
    /// A run of corners, each rounded by one curve whose ends lie on its two sides, at most halfway along them. The ends of an open run stay sharp.
    /// </summary>
    public static SilhouettePath Rounded(IReadOnlyList<SilhouetteCorner> corners, bool isClosed = true)
    {
        var steps = ImmutableArray.CreateBuilder<SilhouetteStep>();
        for (var i = 0; i < corners.Count; i++)
        {
            var (p, a, b) = (corners[i], corners[(i + corners.Count - 1) % corners.Count], corners[(i + 1) % corners.Count]);
            var at = new ScenePoint(p.X, p.Z);
            var (back, on) = (Distance(p, a), Distance(p, b));
            var cut = Math.Min(p.Radius, 0.5 * Math.Min(back, on));
            if (p.ArchRadius > 0.0 || cut <= 0.0 || (!isClosed && (i == 0 || i == corners.Count - 1)))
            {
                steps.Add(new(at, null, p.ArchRadius));
                continue;
            }

            steps.Add(new(Towards(p, a, cut / back)));
            steps.Add(new(Towards(p, b, cut / on), at));
        }

        return new(steps.ToImmutable(), isClosed);
    }

    /// <summary>Places along it, close enough for an eye; curves in eight pieces.</summary>
    public IReadOnlyList<ScenePoint> Places()
    {
        var places = new List<ScenePoint>();
        foreach (var step in Steps)
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

    private static double Distance(SilhouetteCorner a, SilhouetteCorner b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Z - b.Z) * (a.Z - b.Z)));

    private static ScenePoint Towards(SilhouetteCorner from, SilhouetteCorner to, double share) =>
        new(from.X + (share * (to.X - from.X)), from.Z + (share * (to.Z - from.Z)));

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
