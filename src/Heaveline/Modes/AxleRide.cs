using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Modes;

/// <summary>One axle by itself: rates, frequencies, deflection and damping at the trim, the other axle held.</summary>
public sealed record AxleRide
{
    /// <summary>Which axle.</summary>
    public required AxleEnd End { get; init; }

    /// <summary>Sprung load of the axle at trim, N: its suspension forces on the body.</summary>
    public required double SprungLoad { get; init; }

    /// <summary>
    /// Rates for motion. A fluid line counts as shut for the moment (its fluid has no time to flow); a line wide open, or an elastic link, counts
    /// with what its own end feels.
    /// </summary>
    public required AxleRates Rates { get; init; }

    /// <summary>Rates for a slow change, the fluid line's ends at one pressure; null without a fluid pipe.</summary>
    public required AxleRates? RatesAtRest { get; init; }

    /// <summary>Damping at zero velocity.</summary>
    public required AxleDamping Damping { get; init; }

    /// <summary>The axle as a quarter car (both wheels together) with mean damping: its body mode and wheel hop.</summary>
    public required QuarterCar Quarter { get; init; }

    /// <summary>Both axles of a model, front first.</summary>
    public static IReadOnlyList<AxleRide> Of(RideModel model) => [Of(model, AxleEnd.Front), Of(model, AxleEnd.Rear)];

    /// <summary>One axle of a model.</summary>
    public static AxleRide Of(RideModel model, AxleEnd end)
    {
        var at = (int)end;
        var load = model.Trim.AxleSprungLoad[at];
        var mass = load / Gravity.Standard;
        var axle = model.Car.Axles[at];
        var tyres = SuspensionRates.TyresOf(model, end);
        AxleRates Rated(MathNet.Numerics.LinearAlgebra.Matrix<double> wheels)
        {
            var rate = SuspensionRates.ByAxle(wheels)[at, at];
            return new AxleRates
            {
                AxleRate = rate,
                WheelRate = model.Rolls ? 0.5 * rate : rate,
                RideRate = rate * tyres / (rate + tyres),
                SprungMass = mass,
                UnsprungMass = axle.UnsprungMass.Si,
                TyreRate = tyres,
            };
        }

        var rates = Rated(model.Tangent.SuspensionRate);
        var damping = AxleDamping.Of(model, 2 * at, rates.AxleRate, mass);
        var tyreDamping = model.Numbers.TyreDamping[2 * at] + model.Numbers.TyreDamping[(2 * at) + 1];
        return new AxleRide
        {
            End = end,
            SprungLoad = load,
            Rates = rates,
            RatesAtRest = SuspensionRates.LineOpen(model) is { } open ? Rated(open) : null,
            Damping = damping,
            Quarter = QuarterCar.Of(mass, axle.UnsprungMass.Si, rates.AxleRate, damping.Mean, tyres, tyreDamping),
        };
    }
}
