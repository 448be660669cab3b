using Heaveline.Elements;
using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Files.Cars;

/// <summary>What an axle's ride frequency is made of, for one wheel.</summary>
/// <param name="Rate">Wheel rate, N/m.</param>
/// <param name="Mass">Sprung mass on it, kg.</param>
/// <param name="Tyre">Rate of its tyre, N/m.</param>
internal sealed record RideGuess(double Rate, double Mass, double Tyre)
{
    /// <summary>Ride frequency, Hz, the other axle held: spring and tyre in series under the sprung mass.</summary>
    public double Frequency => Math.Sqrt(Math.Max(0.0, Rate * Tyre / (Rate + Tyre)) / Mass) / (2.0 * Math.PI);

    /// <summary>The same after a slip is put right.</summary>
    public RideGuess With(double rateFactor, double massFactor) => this with { Rate = Rate * rateFactor, Mass = Mass * massFactor };

    /// <summary>An axle at its trim.</summary>
    public static RideGuess Of(RideModel model, int axle)
    {
        var i = 2 * axle;
        return new(
            (model.Tangent.WheelRate[i] + model.Tangent.WheelRate[i + 1]) / 2.0,
            model.Trim.AxleSprungLoad[axle] / 2.0 / Gravity.Standard,
            model.Car.Axles[axle].Tyre.Rate.Si * (model.Car.Kind == VehicleKind.TwoWheeler ? 0.5 : 1.0));
    }

    /// <summary>An axle by its weighing and its straight spring alone, of a car that need not stand; null for other springs.</summary>
    public static RideGuess? OfStraightSpring(Car car, int axle)
    {
        var of = car.Axles[axle];
        var share = car.Kind == VehicleKind.TwoWheeler ? 1.0 : 0.5;
        var mass = share * ((axle == 0 ? car.Weighing.Front : car.Weighing.Rear) - of.UnsprungMass.Si);
        return of.Spring.Law is LinearSpring spring && mass > 0.0
            ? new(spring.Rate.Si * of.Spring.MotionRatio.AtReference.Si * of.Spring.MotionRatio.AtReference.Si, mass, of.Tyre.Rate.Si)
            : null;
    }
}
