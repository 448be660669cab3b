using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Models;

/// <summary>
/// The sprung body as a rigid body under one load state: mass, centre of gravity and inertias. Distances from the front axle backwards,
/// from the middle to the left, from the ground up. Steiner's theorem throughout.
/// </summary>
public sealed record SprungBody
{
    /// <summary>Sprung mass M, kg.</summary>
    public required double Mass { get; init; }

    /// <summary>Centre of gravity behind the front axle, m.</summary>
    public required double BehindFrontAxle { get; init; }

    /// <summary>Centre of gravity left of the middle, m.</summary>
    public required double LeftOfMiddle { get; init; }

    /// <summary>Centre of gravity above the ground in the reference attitude, m.</summary>
    public required double Height { get; init; }

    /// <summary>I_yy about the centre of gravity, kg m².</summary>
    public required double PitchInertia { get; init; }

    /// <summary>I_xx about the centre of gravity, kg m².</summary>
    public required double RollInertia { get; init; }

    /// <summary>P_xy = Σ m·x·y with x forward and y left from the centre of gravity, kg m².</summary>
    public required double InertiaProduct { get; init; }

    /// <summary>The body of a car in its reference state.</summary>
    /// <exception cref="RefusedValueException">An axle's unsprung mass is not below what the axle weighs.</exception>
    public static SprungBody Of(Car car)
    {
        var front = SprungOn(car.Weighing.Front, car.Front, "front");
        var rear = SprungOn(car.Weighing.Rear, car.Rear, "rear");
        var mass = front + rear;
        var length = car.Wheelbase.Si;
        var behind = length * rear / mass;
        var left = ((car.Front.Track.Si * (car.Weighing.FrontLeft.Si - car.Weighing.FrontRight.Si))
            + (car.Rear.Track.Si * (car.Weighing.RearLeft.Si - car.Weighing.RearRight.Si))) / (2.0 * mass);
        var track = 0.5 * (car.Front.Track.Si + car.Rear.Track.Si);
        return new SprungBody
        {
            Mass = mass,
            BehindFrontAxle = behind,
            LeftOfMiddle = left,
            Height = car.Body.CentreHeight.Si,
            PitchInertia = car.Body.PitchInertia?.Si ?? (car.Body.DynamicIndex.Si * mass * behind * (length - behind)),
            RollInertia = car.Body.RollInertia?.Si ?? (mass * Math.Pow(InertiaEstimate.RollGyrationPerTrack.Si * track, 2)),
            InertiaProduct = 0.0,
        };
    }

    /// <summary>The same body with the loads of a load state on it.</summary>
    public SprungBody With(LoadState state)
    {
        var (added, behind, left, high) = (0.0, 0.0, 0.0, 0.0);
        for (var i = 0; i < state.Loads.Count; i++)
        {
            var load = state.Loads[i];
            added += load.Mass.Si;
            behind += load.Mass.Si * load.BehindFrontAxle.Si;
            left += load.Mass.Si * load.LeftOfMiddle.Si;
            high += load.Mass.Si * load.Height.Si;
        }

        var mass = Mass + added;
        if (!(mass > 0.0))
        {
            throw new RefusedValueException("sprung mass", $"{mass:G4} kg in load state '{state.Name}'", "above 0 kg", "Take less out.");
        }

        var x = ((Mass * BehindFrontAxle) + behind) / mass;
        var y = ((Mass * LeftOfMiddle) + left) / mass;
        var z = ((Mass * Height) + high) / mass;
        var (pitch, roll, product) = Shifted(Mass, x - BehindFrontAxle, LeftOfMiddle - y, Height - z);
        pitch += PitchInertia;
        roll += RollInertia;
        product += InertiaProduct;
        for (var i = 0; i < state.Loads.Count; i++)
        {
            var load = state.Loads[i];
            var (p, r, xy) = Shifted(load.Mass.Si, x - load.BehindFrontAxle.Si, load.LeftOfMiddle.Si - y, load.Height.Si - z);
            pitch += p;
            roll += r;
            product += xy;
        }

        return new SprungBody
        {
            Mass = mass,
            BehindFrontAxle = x,
            LeftOfMiddle = y,
            Height = z,
            PitchInertia = pitch,
            RollInertia = roll,
            InertiaProduct = product,
        };
    }

    // x forward, y left, z up from the common centre of gravity.
    private static (double Pitch, double Roll, double Product) Shifted(double mass, double x, double y, double z) =>
        (mass * ((x * x) + (z * z)), mass * ((y * y) + (z * z)), mass * x * y);

    private static double SprungOn(double weighed, Axle axle, string end) => weighed > axle.UnsprungMass.Si
        ? weighed - axle.UnsprungMass.Si
        : throw new RefusedValueException(
            $"{end} unsprung mass",
            $"{axle.UnsprungMass.Si:G4} kg",
            $"below the {weighed:G4} kg that the axle weighs",
            "Unsprung is only the wheels and what moves with them; the weighing is of the whole car.");
}
