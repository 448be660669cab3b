using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Rides;

/// <summary>
/// A car made linear at one speed of its dampers, for looks at many cars: each damper by the line through its forces at that speed, bump and rebound
/// together, and each wheel's friction by a damper that takes as much out of a swing.
/// </summary>
internal static class ChordDamping
{
    /// <summary>
    /// Speed of the dampers, m/s, in the settling of a passenger car; between 0.03 and 0.5 m/s the order of cars hardly depends on it (own trial).
    /// </summary>
    public const double Speed = 0.12;

    /// <summary>A car, whose sides may differ.</summary>
    /// <param name="model">Car and load at trim.</param>
    public static OneSidedRide OneSidedOf(RideModel model)
    {
        var ride = OneSidedRide.From(model);
        return ride with { Mean = In(ride.Mean, model.Car) };
    }

    private static SymmetricRide In(in SymmetricRide ride, Car car) =>
        ride with { Front = In(ride.Front, car.Front), Rear = In(ride.Rear, car.Rear) };

    private static SymmetricAxle In(SymmetricAxle end, Axle axle)
    {
        // By a ratio a damper is straight already.
        var dampers = end.Damping;
        if (axle.Damper.Law is TableDamper table)
        {
            var ratio = axle.Damper.MotionRatio.AtReference.Si;
            var (v, whole) = (Speed * ratio, table.Whole);
            dampers = ratio * ratio * (whole.ForceAt(v) - whole.ForceAt(-v)) / (2.0 * v);
        }

        // A friction ± F takes 4·F·a out of a swing of amplitude a, a damper c takes π·c·ω·a²: c = 4F/(π·ωa), its greatest speed ωa twice the usual
        // one.
        var more = dampers + (2.0 * axle.Friction.HalfWidth.Si / (Math.PI * Speed)) - end.Damping;
        return end with { Damping = end.Damping + more, RollDamping = end.RollDamping + more };
    }
}
