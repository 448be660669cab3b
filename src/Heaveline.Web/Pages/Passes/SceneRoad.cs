using Heaveline.Roads;

namespace Heaveline.Web.Pages.Passes;

/// <summary>The road's left track as the picture draws it: heights at equal distances, level beyond them.</summary>
/// <param name="From">Distance of the first height, m.</param>
/// <param name="Step">Distance between heights, m.</param>
/// <param name="Heights">Heights above the level before the road, m.</param>
internal sealed record SceneRoad(double From, double Step, float[] Heights)
{
    private const double Finest = 0.01;
    private const int Most = 6000;

    /// <summary>
    /// A road drawn. An obstacle that lies in the right track alone is drawn as that track is: nothing else would show why the car moves.
    /// </summary>
    public static SceneRoad Of(Road road)
    {
        var track = road.Left.End > road.Left.Start || road.Right.End == road.Right.Start ? road.Left : road.Right;
        var length = Math.Max(track.End - track.Start, Finest);
        var step = Math.Max(Finest, length / Most);
        var count = (int)Math.Ceiling(length / step) + 2;
        return new SceneRoad(
            track.Start - step,
            step,
            [.. Enumerable.Range(0, count + 1).Select(i => (float)(track.Height(track.Start + ((i - 1) * step)) - track.StartHeight))]);
    }
}
