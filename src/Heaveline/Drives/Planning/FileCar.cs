using Heaveline.Drives.Identification;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Drives.Planning;

/// <summary>The linear half car that a car file amounts to.</summary>
internal static class FileCar
{
    /// <summary>Its numbers about the trim: rates and mean damping of each axle, the other held.</summary>
    /// <param name="model">The car under its load.</param>
    /// <param name="phone">How far behind the front axle the phone lies, m.</param>
    public static LinearCar Of(RideModel model, double phone)
    {
        var axles = AxleRide.Of(model);
        double Hop(AxleRide axle) => Math.Sqrt(axle.Rates.TyreRate / axle.Rates.UnsprungMass) / (2.0 * Math.PI);
        return new LinearCar
        {
            Wheelbase = model.Car.Wheelbase.Si,
            FrontFrequency = axles[0].Rates.FrequencyOnRigidTyres,
            RearFrequency = axles[1].Rates.FrequencyOnRigidTyres,
            FrontDamping = axles[0].Damping.Ratio,
            RearDamping = axles[1].Damping.Ratio,
            PitchIndex = BodyModes.Of(model).DynamicIndex,
            FrontShare = axles[0].SprungLoad / (axles[0].SprungLoad + axles[1].SprungLoad),
            PhoneBehindFrontAxle = phone,
            FrontUnsprung = axles[0].Rates.UnsprungMass / axles[0].Rates.SprungMass,
            RearUnsprung = axles[1].Rates.UnsprungMass / axles[1].Rates.SprungMass,
            FrontHop = Hop(axles[0]),
            RearHop = Hop(axles[1]),
        };
    }
}
