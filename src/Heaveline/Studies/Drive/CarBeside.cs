using Heaveline.Cars;
using Heaveline.Drives.Identification;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Studies;

/// <summary>
/// The numbers of a car file that stand beside those of a drive: small motion about the trim, dampers at the mean of their slopes at rest.
/// </summary>
public sealed class CarBeside
{
    private readonly Dictionary<CarNumber, double> numbers;
    private readonly Lazy<IReadOnlyDictionary<CarNumber, FileDoubt>> doubts;

    private CarBeside(LoadedCar car, RideModel model)
    {
        Car = car;
        doubts = new(() => FileDoubt.Of(car, CarNumbers.Headlines));
        var (front, rear) = (AxleRide.Of(model, AxleEnd.Front), AxleRide.Of(model, AxleEnd.Rear));
        FrontShare = front.SprungLoad / (front.SprungLoad + rear.SprungLoad);
        double OnTyre(AxleRide axle) => Math.Sqrt(axle.Rates.TyreRate / axle.Rates.UnsprungMass) / (2.0 * Math.PI);
        var body = BodyModes.Of(model);
        numbers = new()
        {
            [CarNumber.FrontFrequency] = front.Rates.FrequencyOnRigidTyres,
            [CarNumber.RearFrequency] = rear.Rates.FrequencyOnRigidTyres,
            [CarNumber.FrequencyRatio] = rear.Rates.FrequencyOnRigidTyres / front.Rates.FrequencyOnRigidTyres,
            [CarNumber.FrontDamping] = front.Damping.Ratio,
            [CarNumber.RearDamping] = rear.Damping.Ratio,
            [CarNumber.PitchIndex] = body.DynamicIndex,
            [CarNumber.FirstModeFrequency] = Math.Min(body.First.Frequency, body.Second.Frequency),
            [CarNumber.SecondModeFrequency] = Math.Max(body.First.Frequency, body.Second.Frequency),
            [CarNumber.FrontHop] = OnTyre(front),
            [CarNumber.RearHop] = OnTyre(rear),
        };
    }

    /// <summary>Which car, under which load.</summary>
    public LoadedCar Car { get; }

    /// <summary>Share of the sprung mass on the front axle.</summary>
    public double FrontShare { get; }

    /// <summary>A number; null where the file has none.</summary>
    public double? Of(CarNumber number) => numbers.TryGetValue(number, out var value) ? value : null;

    /// <summary>How far the file leaves one of <see cref="CarNumbers.Headlines"/> open; worked out when it is first asked for.</summary>
    internal FileDoubt DoubtOf(CarNumber number) => doubts.Value[number];

    /// <summary>The numbers of a car.</summary>
    /// <exception cref="Quantities.RefusedValueException">It cannot stand so.</exception>
    public static CarBeside Of(LoadedCar car)
    {
        ArgumentNullException.ThrowIfNull(car);
        return new CarBeside(car, car.Model);
    }
}
