using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Parts;

/// <summary>By how much the gas of other dampers than those weighed lifts a car, over each axle.</summary>
/// <param name="Front">Over the front axle, m; lowered it is negative.</param>
/// <param name="Rear">Over the rear axle, m.</param>
internal readonly record struct GasLift(double Front, double Rear)
{
    /// <summary>Of a car as it stands; null where its dampers are those that were weighed, or have as much gas.</summary>
    /// <param name="model">The car.</param>
    /// <exception cref="Quantities.RefusedValueException">With the gas of the dampers weighed it could not stand.</exception>
    public static GasLift? Of(RideModel model)
    {
        var car = model.Car;
        if (!car.Axles.Any(axle => axle.Damper is { WeighedGasForce: { } weighed, GasForce: var gas } && weighed.Si != gas.Si))
        {
            return null;
        }

        var before = RideModel.Of(car with { Front = Weighed(car.Front), Rear = Weighed(car.Rear) }, model.Load);
        return new(model.Trim.FrontHeight - before.Trim.FrontHeight, model.Trim.RearHeight - before.Trim.RearHeight);
    }

    private static Axle Weighed(Axle axle) =>
        axle with { Damper = axle.Damper with { GasForce = axle.Damper.WeighedGasForce ?? axle.Damper.GasForce } };
}
