using System.Collections.Immutable;

namespace Heaveline.Figures.Silhouettes;

/// <summary>
/// What the bodies of all cars share: corners above the sill, from the tail over the roof to the nose; the sill and its arches follow.
/// </summary>
internal static class BodyShell
{
    /// <summary>The whole outline.</summary>
    /// <param name="measures">The measures.</param>
    /// <param name="arch">Radius of an arch as a share of the wheel's.</param>
    /// <param name="upper">The corners above the sill.</param>
    public static SilhouettePath Outline(SilhouetteMeasures measures, double arch, ImmutableArray<SilhouetteCorner> upper)
    {
        var radius = arch * measures.WheelRadius;
        var deep = measures.WheelRadius - measures.Sill;
        var half = Math.Sqrt((radius * radius) - (deep * deep));
        return SilhouettePath.Rounded(
        [
            .. upper,
            new(upper[^1].X - 0.05, measures.Sill, 0.05),
            new(measures.Wheelbase + half, measures.Sill),
            new(measures.Wheelbase - half, measures.Sill, 0.0, radius),
            new(half, measures.Sill),
            new(-half, measures.Sill, 0.0, radius),
            new(upper[0].X + 0.05, measures.Sill + 0.06, 0.05),
        ]);
    }

    /// <summary>A place over the front wheels, where springs and dampers end unless the body has them elsewhere.</summary>
    public static ScenePoint FrontTower(SilhouetteMeasures measures) => new(measures.Wheelbase, (2.0 * measures.WheelRadius) + 0.22);

    /// <summary>The same over the rear wheels.</summary>
    public static ScenePoint RearTower(SilhouetteMeasures measures) => new(0.0, (2.0 * measures.WheelRadius) + 0.20);

    /// <summary>A fold along the body between corners.</summary>
    public static SilhouettePath Fold(params ReadOnlySpan<SilhouetteCorner> corners) => SilhouettePath.Rounded([.. corners], isClosed: false);
}
