using Heaveline.Cars;

namespace Heaveline.Elements;

/// <summary>A bump or a rebound stop of a corner. A mirrored stop has mirrored force.</summary>
internal static class StopElement
{
    /// <summary>Least and greatest wheel travel that the stops of a corner allow, m.</summary>
    public static (double Least, double Most) Ends(CornerPlace place) => (
        place.Axle.ReboundStop is { } rebound ? End(rebound, -1.0) : double.NegativeInfinity,
        place.Axle.BumpStop is { } bump ? End(bump, +1.0) : double.PositiveInfinity);

    /// <summary>The bump stop; null without one.</summary>
    /// <param name="place">Where it stands.</param>
    /// <param name="range">Travel over which means are taken, m.</param>
    /// <param name="like">That of the axle's other wheel, whose laws it has; null for none.</param>
    public static Element? Bump(CornerPlace place, (double Least, double Most) range, Element? like = null) =>
        place.Axle.BumpStop is { } stop ? Of(stop, place, +1.0, range, like) : null;

    /// <summary>The rebound stop; null without one.</summary>
    /// <param name="place">Where it stands.</param>
    /// <param name="range">Travel over which means are taken, m.</param>
    /// <param name="like">That of the axle's other wheel, whose laws it has; null for none.</param>
    public static Element? Rebound(CornerPlace place, (double Least, double Most) range, Element? like = null) =>
        place.Axle.ReboundStop is { } stop ? Of(stop, place, -1.0, range, like) : null;

    private static double End(Stop stop, double side) =>
        (side * stop.Clearance.Si) + (side * (stop.SolidAfter?.Si ?? double.PositiveInfinity));

    // Side +1: bump, touched when S > clearance; −1: rebound, touched when S < −clearance.
    private static Element Of(Stop stop, CornerPlace place, double side, (double Least, double Most) range, Element? like)
    {
        var touch = side * stop.Clearance.Si;
        var end = End(stop, side);
        var name = side > 0.0 ? "bump stop" : "rebound stop";
        return new Element
        {
            Name = name,
            Cause = side > 0.0 ? StepCause.BumpStop : StepCause.ReboundStop,
            Corner = place.Corner,
            Sight = Sight.Along(place.Corner, place.StopShare),
            OnTravel = like?.TravelLaws ?? [LawOf(stop, place.Half, side, name)],
            Touch = touch,
            Limits = side > 0.0 ? (double.NegativeInfinity, end) : (end, double.PositiveInfinity),
            Range = range,
            Felt = place.FeltByOwn(),
        };
    }

    private static Law LawOf(Stop stop, double half, double side, string name)
    {
        var clearance = stop.Clearance.Si;
        if (stop.Table is { } table)
        {
            var hinges = new Hinge[table.Places.Length - 1];
            for (var (j, before) = (0, 0.0); j < hinges.Length; j++)
            {
                var slope = table.Slope(j);
                hinges[j] = new(side * (clearance + table.Places[j]), half * (slope - before));
                before = slope;
            }

            return Straight(hinges, side);
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
    private static StraightLaw Straight(Hinge[] hinges, double side)
    {
        var sum = 0.0;
        foreach (var (at, bend) in hinges)
        {
            sum += bend * at;
        }

        return side > 0.0 ? new() { Constant = -sum, Opening = hinges } : new() { Constant = -sum, Closing = hinges };
    }
}
