using Heaveline.Passes;

namespace Heaveline.Drives.Planning;

/// <summary>When people may be sent over an obstacle.</summary>
internal static class SafePass
{
    /// <summary>So far every wheel stays from its stops, m. Common practice, no source.</summary>
    public const double StopMargin = 0.005;

    /// <summary>Whether a pass ran to its end, its wheels on the ground and well off every stop.</summary>
    public static bool Is(Pass pass) =>
        KeepsTheRoad(pass) && Enumerable.Range(0, 4).All(i =>
            pass.Travel(i).All(s => s < pass.Model.BumpTouch[i] - StopMargin && s > pass.Model.ReboundTouch[i] + StopMargin));

    /// <summary>Whether a pass ran to its end, its wheels on the ground, stops or not.</summary>
    public static bool KeepsTheRoad(Pass pass) =>
        pass.Outcome == PassOutcome.Completed && Enumerable.Range(0, 4).All(i => pass.TyreLoad(i).All(n => n > 0.0));

    /// <summary>Least load of any tyre over what it bears at rest (–).</summary>
    public static double LeastLoad(Pass pass) => Enumerable.Range(0, 4).Min(i => pass.TyreLoad(i).Min() / pass.TyreLoad(i)[0]);

    /// <summary>Least distance of any wheel from a stop, m; infinite without stops.</summary>
    public static double TravelLeft(Pass pass) => Enumerable.Range(0, 4).Min(i => Math.Min(
        pass.Model.BumpTouch[i] - pass.Travel(i).Max(), pass.Travel(i).Min() - pass.Model.ReboundTouch[i]));
}
