using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// The roads of a drive's passes as a car file feels them: moved until the file's own passes, with stops, friction and curved dampers, move as the
/// drive did. The linear car alone makes a hump over which a stop was touched too high or too low, and a change that is forecast on it too large.
/// </summary>
internal static class FeltRoads
{
    // What the linear car leaves of a hump falls to a third and less at each step.
    private const int Steps = 4;

    /// <summary>The roads, in time.</summary>
    /// <param name="recovery">What tells them by the linear car.</param>
    /// <param name="car">The car file's car that was driven.</param>
    /// <param name="stop">Stops it.</param>
    public static ImmutableArray<RecoveredRoad> Of(RoadRecovery recovery, RideModel car, CancellationToken stop)
    {
        FittedWindow[] windows = [.. recovery.Passes.OrderBy(p => p.Event)];
        var roads = windows.Select(recovery.Of).ToArray();
        var best = roads.Select(road => (Road: road, Left: double.PositiveInfinity)).ToArray();
        for (var step = 0; step <= Steps; step++)
        {
            var passes = PassBatch.Of(
                [.. roads.Select(r => new PassRequest(car, r.Road, r.Speed))],
                new PassOptions { Record = new PassRecord { SettlingTime = 0.5 } },
                stop);
            ParallelLoop.Each(roads.Length, -1, k =>
            {
                if (passes[k].Outcome != PassOutcome.Completed)
                {
                    roads[k] = best[k].Road;
                    return;
                }

                var (next, left) = recovery.Nearer(windows[k], roads[k], passes[k]);
                best[k] = left < best[k].Left ? (roads[k], left) : best[k];
                roads[k] = next;
            }, stop);
        }

        return [.. best.Select(b => b.Road)];
    }
}
