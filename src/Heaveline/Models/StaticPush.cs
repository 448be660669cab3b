namespace Heaveline.Models;

/// <summary>
/// A steady push on a car besides its weight: the moments of d'Alembert's forces about the ground line below the centre of gravity, and what the
/// links carry between wheels and body. docs/theory/side-effects.md derives it.
/// </summary>
/// <param name="PitchMoment">Nose-down moment on the body, N m.</param>
/// <param name="RollMoment">Right-side-down moment on the body, N m.</param>
/// <param name="Link">Link force on the body at the four wheels, up positive, N; the wheel gets the opposite.</param>
internal sealed record StaticPush(double PitchMoment, double RollMoment, IReadOnlyList<double> Link)
{
    /// <summary>Nothing but weight.</summary>
    public static StaticPush None { get; } = new(0.0, 0.0, [0.0, 0.0, 0.0, 0.0]);

    /// <summary>The push of a steady acceleration.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="forward">Forward acceleration, m/s²; braking is negative.</param>
    /// <param name="left">Acceleration to the left, m/s², as in a left-hand bend.</param>
    public static StaticPush Of(RideModel model, double forward, double left)
    {
        var (pitch, link) = Along(model, forward);
        var (roll, across) = model.Rolls ? Across(model, left) : (0.0, new double[4]);
        return new StaticPush(pitch, roll, [.. link.Zip(across, (a, b) => a + b)]);
    }

    /// <summary>Load moved from the rear to the front axle per braking acceleration, m·h/L, kg: of the whole car, wheels included.</summary>
    public static double MovedMass(RideModel model)
    {
        var radius = (model.Car.Brakes ?? new Cars.BrakeGeometry()).WheelRadius.Si;
        var unsprung = model.Car.Front.UnsprungMass.Si + model.Car.Rear.UnsprungMass.Si;
        return ((model.Body.Mass * model.Body.Height) + (unsprung * radius)) / model.Car.Wheelbase.Si;
    }

    private static (double Moment, double[] Link) Along(RideModel model, double forward)
    {
        var brakes = model.Car.Brakes ?? new Cars.BrakeGeometry();
        var moved = -forward * MovedMass(model);
        // The shares are those of the reference state; the forces in the links go with m·a and do not know the height of a load.
        var unsprung = model.Car.Front.UnsprungMass.Si + model.Car.Rear.UnsprungMass.Si;
        var geometry = -forward * (model.Body.Mass + unsprung) * ReferenceHeight(model) / model.Car.Wheelbase.Si;
        var drives = forward > 0.0;
        var (front, rear) = drives
            ? (
                brakes.DrivenAxle == Cars.DrivenAxle.Rear ? 0.0 : brakes.AntiLiftFront.Si,
                brakes.DrivenAxle == Cars.DrivenAxle.Front ? 0.0 : brakes.AntiSquatRear.Si)
            : (brakes.AntiDiveFront.Si, brakes.AntiLiftRear.Si);
        // A telescopic fork is pushed together by tan(rake) times the front brake's force, whatever the height; the front brake alone where no
        // share of
        // it is known.
        var fork = !drives && brakes.ForkRake is { } rake
            ? forward * (model.Body.Mass + unsprung) * (brakes.FrontBrakeShare?.Si ?? 1.0) * Math.Tan(rake.Si)
            : front * geometry;
        // Braking: the front links push the body up, the rear ones pull it down; under power the other way round, by the sign of the acceleration.
        return (moved * model.Car.Wheelbase.Si, [0.5 * fork, 0.5 * fork, -0.5 * rear * geometry, -0.5 * rear * geometry]);
    }

    /// <summary>Height of the whole car's centre of gravity in the reference state, wheels included, m.</summary>
    public static double ReferenceHeight(RideModel model)
    {
        var radius = (model.Car.Brakes ?? new Cars.BrakeGeometry()).WheelRadius.Si;
        var empty = SprungBody.Of(model.Car);
        var unsprung = model.Car.Front.UnsprungMass.Si + model.Car.Rear.UnsprungMass.Si;
        return ((empty.Mass * empty.Height) + (unsprung * radius)) / (empty.Mass + unsprung);
    }

    // The side force enters at the ground; what acts below the roll axis the links carry straight to the tyres, so that the springs hold up
    // only M·a·(h − h_axis). Each axle takes the side force of the mass it carries.
    private static (double Moment, double[] Link) Across(RideModel model, double left)
    {
        var car = model.Car;
        var radius = (car.Brakes ?? new Cars.BrakeGeometry()).WheelRadius.Si;
        var axis = car.Body.RollAxisHeight?.Si ?? 0.0;
        var body = model.Body;
        var onRear = body.Mass * body.BehindFrontAxle / car.Wheelbase.Si;
        double[] sprung = [body.Mass - onRear, onRear];
        var link = new double[4];
        var moment = left * body.Mass * body.Height;
        for (var k = 0; k < 2; k++)
        {
            var own = left * car.Axles[k].UnsprungMass.Si * radius;
            moment += own;
            var carried = (left * sprung[k] * axis) + own;
            link[2 * k] = -carried / car.Axles[k].Track.Si;
            link[(2 * k) + 1] = carried / car.Axles[k].Track.Si;
        }

        return (moment, link);
    }
}
