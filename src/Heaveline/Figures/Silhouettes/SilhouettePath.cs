using System.Collections.Immutable;

namespace Heaveline.Figures.Silhouettes;

/// <summary>A line of a silhouette: strokes from its first place on, m.</summary>
/// <param name="Steps">The strokes; the first is the place where the pen is put down.</param>
/// <param name="IsClosed">Whether it goes back to where it began.</param>
internal sealed record SilhouettePath(ImmutableArray<SilhouetteStep> Steps, bool IsClosed)
{
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

    private static double Distance(SilhouetteCorner a, SilhouetteCorner b) => Math.Sqrt(((a.X - b.X) * (a.X - b.X)) + ((a.Z - b.Z) * (a.Z - b.Z)));

    private static ScenePoint Towards(SilhouetteCorner from, SilhouetteCorner to, double share) =>
        new(from.X + (share * (to.X - from.X)), from.Z + (share * (to.Z - from.Z)));
}
