using Heaveline.Cars;

namespace Heaveline.Elements;

/// <summary>A bump or a rebound stop of a corner. A mirrored stop has mirrored force.</summary>
internal static class StopElement
{
    /// <summary>The bump stop; null without one.</summary>
    public static Element? Bump(CornerPlace place) => place.Axle.BumpStop is { } stop ? Of(stop, place, +1.0) : null;

    /// <summary>The rebound stop; null without one.</summary>
    public static Element? Rebound(CornerPlace place) => place.Axle.ReboundStop is { } stop ? Of(stop, place, -1.0) : null;

    // Side +1: bump, touched when S > clearance; −1: rebound, touched when S < −clearance.
    private static Element Of(Stop stop, CornerPlace place, double side)
    {
        var touch = side * stop.Clearance.Si;
        var end = touch + (side * (stop.SolidAfter?.Si ?? double.PositiveInfinity));
        var name = side > 0.0 ? "bump stop" : "rebound stop";
        return new Element
        {
            Name = name,
            Cause = side > 0.0 ? StepCause.BumpStop : StepCause.ReboundStop,
            Corner = place.Corner,
            Sight = Sight.Along(place.Corner, place.StopShare),
            OnTravel = [LawOf(stop, place.Half, side, name)],
            Touch = touch,
            Limits = side > 0.0 ? (double.NegativeInfinity, end) : (end, double.PositiveInfinity),
            Felt = place.FeltByOwn(),
        };
    }

    private static Law LawOf(Stop stop, double half, double side, string name)
    {
        var clearance = stop.Clearance.Si;
        if (stop.Table is { } table)
        {
            return Straight(
                [.. Enumerable.Range(0, table.At.Count - 1).Select(j => new Hinge(
                    side * (clearance + table.At[j]), half * (table.Slope(j) - (j > 0 ? table.Slope(j - 1) : 0.0))))],
                side);
        }

        var rate = half * stop.Rate!.Value.Si;
        return stop.Exponent.Si == 1.0
            ? Straight([new Hinge(side * clearance, rate)], side)
            : new PowerLaw($"{name} with an exponent")
            {
                Clearance = clearance,
                // F = C·pᵉ with the stated rate as the secant at 10 mm.
                Coefficient = rate * Math.Pow(0.010, 1.0 - stop.Exponent.Si),
                Exponent = stop.Exponent.Si,
                Direction = side,
            };
    }

    // Σ b·(max(S, c) − c), or Σ b·(min(S, c) − c).
    private static StraightLaw Straight(Hinge[] hinges, double side) => new()
    {
        Constant = -hinges.Sum(hinge => hinge.Bend * hinge.At),
        Opening = side > 0.0 ? hinges : [],
        Closing = side > 0.0 ? [] : hinges,
    };
}
