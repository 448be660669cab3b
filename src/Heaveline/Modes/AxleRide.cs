using Heaveline.Elements;
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
    /// Rates while the body swings on this axle. A fluid line gives way as it does at that frequency; a line wide open, or an elastic link, counts
    /// with what its own end feels.
    /// </summary>
    public required AxleRates Rates { get; init; }

    /// <summary>Rates for a slow change, the fluid line's ends at one pressure; null without a fluid pipe.</summary>
    public required AxleRates? RatesAtRest { get; init; }

    /// <summary>Rates with the fluid line shut: what a blow feels that leaves the fluid no time to flow; null without a fluid pipe.</summary>
    public required AxleRates? RatesShut { get; init; }

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
        AxleRates Rated(double rate, double? hop = null) => new()
        {
            AxleRate = rate,
            HopRate = hop ?? rate,
            WheelRate = model.Rolls ? 0.5 * rate : rate,
            RideRate = rate * tyres / (rate + tyres),
            SprungMass = mass,
            UnsprungMass = axle.UnsprungMass.Si,
            TyreRate = tyres,
        };

        var (ride, line) = SuspensionRates.AtRide(model, end, mass);
        var rates = Rated(ride, SuspensionRates.AtHop(model, end));
        var open = SuspensionRates.LineOpen(model);
        var damping = AxleDamping.Of(model, 2 * at, rates.AxleRate, mass, line);
        var tyreDamping = model.Numbers.TyreDamping[2 * at] + model.Numbers.TyreDamping[(2 * at) + 1];
        return new AxleRide
        {
            End = end,
            SprungLoad = load,
            Rates = rates,
            RatesAtRest = open is null ? null : Rated(SuspensionRates.ByAxle(open)[at, at]),
            RatesShut = open is null ? null : Rated(SuspensionRates.ByAxle(model.Tangent.SuspensionRate)[at, at]),
            Damping = damping,
            Quarter = QuarterCar.Of(mass, axle.UnsprungMass.Si, rates.AxleRate, damping.Mean, tyres, tyreDamping),
        };
    }
}
