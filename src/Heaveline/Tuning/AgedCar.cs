using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>A car some years after it was described: its springs shorter at the same rate, its dampers weaker, all else as it was.</summary>
internal static class AgedCar
{
    /// <summary>The car after some years.</summary>
    /// <param name="car">The car as described.</param>
    /// <param name="wear">What a year takes.</param>
    /// <param name="years">How many, 0 or above.</param>
    /// <exception cref="RefusedValueException">An end that sags stands on gas, which loses no length.</exception>
    public static Car After(Car car, YearlyWear wear, double years)
    {
        var left = Math.Pow(1.0 - wear.DamperLoss.Si, years);
        return car with
        {
            Front = After(car.Front, "front", (wear.FrontSag.Si + wear.BushCreep.Si) * years, left),
            Rear = After(car.Rear, "rear", (wear.RearSag.Si + wear.BushCreep.Si) * years, left),
        };
    }

    private static Axle After(Axle axle, string end, double lower, double left)
    {
        if (lower > 0.0 && axle.Spring.Law is GasSpring)
        {
            throw new RefusedValueException(
                $"{end} sag",
                "above 0 mm a year",
                "0 for a gas spring",
                "Gas loses pressure, not length: leave the sag of that end and the creep out.");
        }

        return axle with
        {
            Spring = axle.Spring with { LostLength = axle.Spring.LostLength + (lower * axle.Spring.MotionRatio.AtReference.Si) },
            Damper = left == 1.0 ? axle.Damper : axle.Damper with { Law = ScaledLaws.Stronger(axle.Damper.Law, left) },
        };
    }
}
