using Heaveline.Roads;

namespace Heaveline.Web.Pages.Passes;

/// <summary>
/// The road as the picture draws it: heights at equal distances under the left wheels and, where they differ, under the right ones.
/// </summary>
/// <param name="From">Distance of the first height, m.</param>
/// <param name="Step">Distance between heights, m.</param>
/// <param name="Heights">Heights of the left track above the level before the road, m.</param>
/// <param name="FarHeights">Those of the right track; empty where both are alike.</param>
internal sealed record SceneRoad(double From, double Step, float[] Heights, float[] FarHeights)
{
    private const double Finest = 0.01;
    private const int Most = 6000;

    /// <summary>A road drawn.</summary>
    public static SceneRoad Of(Road road)
    {
        var length = Math.Max(road.End - road.Start, Finest);
        var step = Math.Max(Finest, length / Most);
        var count = (int)Math.Ceiling(length / step) + 2;
        float[] Track(Profile track) =>
            [.. Enumerable.Range(0, count + 1).Select(i => (float)(track.Height(road.Start + ((i - 1) * step)) - track.StartHeight))];
        var (left, right) = (Track(road.Left), Track(road.Right));
        return new SceneRoad(road.Start - step, step, left, left.AsSpan().SequenceEqual(right) ? [] : right);
    }
}
