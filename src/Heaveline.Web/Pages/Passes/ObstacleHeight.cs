using Heaveline.Roads;

namespace Heaveline.Web.Pages.Passes;

/// <summary>Height of a road's obstacle.</summary>
internal static class ObstacleHeight
{
    private const int Places = 400;

    /// <summary>Its furthest place from the level before it, m; below 0 for a hole.</summary>
    public static double Of(Road road)
    {
        var furthest = 0.0;
        for (var i = 0; i <= Places; i++)
        {
            var x = road.Start + ((road.End - road.Start) * i / Places);
            foreach (var track in new[] { road.Left, road.Right })
            {
                var height = track.Height(x) - track.StartHeight;
                furthest = Math.Abs(height) > Math.Abs(furthest) ? height : furthest;
            }
        }

        return furthest;
    }
}
