using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Drives.Events;

/// <summary>Where the heave of a bump is measured when no seat is asked for.</summary>
internal static class EventPlace
{
    /// <summary>The floor where the phone lay.</summary>
    public static SeatPlace Floor { get; } = new("phone", "floor at the phone", null);

    /// <summary>A measure of a seat, asked of what was measured at its place.</summary>
    /// <param name="measure">The measure.</param>
    /// <param name="of">The same definition over what was measured there.</param>
    public static Measure<Pass> Measured(Measure<Pass> measure, CurveNumber of) => measure with
    {
        InFlight = of,
        Says = measure.Key.StartsWith(Floor.Key, StringComparison.Ordinal)
            ? measure.Says.Replace("at the hip point", "of the floor where the phone lay", StringComparison.Ordinal)
            : measure.Says,
    };
}
