using Heaveline.Roads;

namespace Heaveline.Drives.Recovery;

/// <summary>Roads out of heights at even steps.</summary>
internal static class SampledRoad
{
    /// <summary>A road with an obstacle somewhere in it; before the first height and after the last it is level.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="from">Distance of the first height, m.</param>
    /// <param name="spacing">From one to the next, m.</param>
    /// <param name="left">Heights of the left track, m, shape (n), n at least 4.</param>
    /// <param name="right">Those of the right; the same array: one track.</param>
    /// <param name="obstacle">Where the obstacle begins and ends, m; null: no obstacle.</param>
    /// <param name="stop">Stops it.</param>
    public static Road Of(
        string name, double from, double spacing, double[] left, double[] right, RoadEvent? obstacle, CancellationToken stop)
    {
        double[] distances = [.. Enumerable.Range(0, left.Length).Select(i => from + (i * spacing))];
        var profile = SampledHeights.Draw(distances, distances, left, 0.0, stop);
        return new Road
        {
            Name = name,
            Kind = RoadKind.Measured,
            Left = profile,
            Right = ReferenceEquals(left, right) ? profile : SampledHeights.Draw(distances, distances, right, 0.0, stop),
            Event = obstacle,
            Caption = name,
        };
    }
}
