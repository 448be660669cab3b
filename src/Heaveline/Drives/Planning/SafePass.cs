using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Drives.Planning;

/// <summary>When people may be sent over an obstacle.</summary>
internal static class SafePass
{
    /// <summary>So far every wheel stays from its stops, m. Common practice, no source.</summary>
    public const double StopMargin = 0.005;

    /// <summary>A speed and one 5 % above it: so well a driver keeps it.</summary>
    public static IEnumerable<double> Tried(double speed) => [speed, (1.0 + PlankWish.SpeedError) * speed];

    /// <summary>Whether a car can be sent over a road at a speed and 5 % above it: safe, and every tyre keeps a fifth of its load.</summary>
    /// <param name="model">The car under its load.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">m/s.</param>
    /// <param name="stop">Stops it.</param>
    public static bool Is(RideModel model, Road road, double speed, CancellationToken stop) =>
        PassBatch.Of([.. Tried(speed).Select(v => new PassRequest(model, road, v))], BatchedMeasures.Usual, stop)
            .All(pass => Is(pass) && LeastLoad(pass) >= PlankWish.LeastLoad);

    /// <summary>Whether a pass ran to its end, its wheels on the ground and well off every stop.</summary>
    public static bool Is(Pass pass) =>
        pass.Outcome == PassOutcome.Completed && Enumerable.Range(0, 4).All(i =>
            pass.TyreLoad(i).All(n => n > 0.0)
            && pass.Travel(i).All(s => s < pass.Model.BumpTouch[i] - StopMargin && s > pass.Model.ReboundTouch[i] + StopMargin));

    /// <summary>Least load of any tyre over what it bears at rest (–).</summary>
    public static double LeastLoad(Pass pass) => Enumerable.Range(0, 4).Min(i => pass.TyreLoad(i).Min() / pass.TyreLoad(i)[0]);

    /// <summary>Least distance of any wheel from a stop, m; infinite without stops.</summary>
    public static double TravelLeft(Pass pass) => Enumerable.Range(0, 4).Min(i => Math.Min(
        pass.Model.BumpTouch[i] - pass.Travel(i).Max(), pass.Travel(i).Min() - pass.Model.ReboundTouch[i]));
}
