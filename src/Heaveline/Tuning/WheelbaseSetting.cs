using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tuning;

/// <summary>
/// The wheelbase, with every seat and load along the car in proportion and the axles weighing what they weigh. The empty body's pitch inertia stays,
/// or grows with the square of the wheelbase, so that its dynamic index stays.
/// </summary>
internal sealed record WheelbaseSetting(bool InertiaGrows) : Setting("wheelbase", "Wheelbase")
{
    /// <inheritdoc/>
    public override SettingScale? ScaleOf(Car described)
    {
        var now = Math.Round(In.Millimetres.Of(described.Wheelbase.Si));
        return new SettingScale(
            "mm",
            now,
            Math.Round(0.08 * now) * 10.0,
            Math.Round(0.125 * now) * 10.0,
            10.0,
            InertiaGrows ? "the empty body grows with it: its dynamic index stays"
                : "the empty body's pitch inertia stays; seats and loads move along");
    }

    /// <inheritdoc/>
    public override Car Apply(Car car, double value)
    {
        var length = In.Millimetres.ToSi(Math.Round(Within(value, 500.0, 10000.0, "mm", "From wheel centre to wheel centre along the car.")));
        var factor = length / car.Wheelbase.Si;
        Amount<Length> Placed(Amount<Length> x) => new(Rounded.In(x.Si * factor, 1e-3, 0));
        return car with
        {
            Wheelbase = new Amount<Length>(length),
            Body = BodyOf(car, factor),
            Seats = [.. car.Seats.Select(seat => seat with { BehindFrontAxle = Placed(seat.BehindFrontAxle) })],
            LoadStates = [.. car.LoadStates.Select(
                state => state with { Loads = [.. state.Loads.Select(load => load with { BehindFrontAxle = Placed(load.BehindFrontAxle) })] })],
        };
    }

    private Body BodyOf(Car car, double factor)
    {
        if (InertiaGrows)
        {
            return car.Body.PitchInertia is { } given ? car.Body with { PitchInertia = Sensible(given.Si * factor * factor) } : car.Body;
        }

        return car.Body.PitchInertia is null ? car.Body with { PitchInertia = Sensible(SprungBody.Of(car).PitchInertia) } : car.Body;
    }

    private static Amount<Inertia> Sensible(double inertia) => new(Rounded.Significant(inertia, 5));
}
