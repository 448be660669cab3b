using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Modes;

/// <summary>
/// When both ends fall into step after a bump: the rear starts τ = L/V later, and the phases are equal once n·T_f = τ + m·T_r, n and m cycles of the
/// damped front and rear, not necessarily whole. With n = m the speed is V = L/(n·(T_f − T_r)). Exact while the dynamic index is 1 and the car
/// linear; phases, not peaks, are then equal.
/// </summary>
public sealed record Coincidence
{
    /// <summary>
    /// Cycles that suit best (–): least pitch in the first second after a bump lies at 0.6 to 0.8. Found by running this model over bumps; no
    /// published source.
    /// </summary>
    public const double SuitedCycles = 0.7;

    /// <summary>Fewest cycles of the suited range (–).</summary>
    public const double FewestCycles = 0.6;

    /// <summary>Most cycles of the suited range (–).</summary>
    public const double MostCycles = 0.8;

    /// <summary>
    /// Slowest speed, m/s, for which falling into step is told: below it the obstacle counts for more than the ends. Common practice, no source.
    /// </summary>
    public static double SlowestTold => 20.0 / In.KilometresPerHour.Factor;

    /// <summary>
    /// Fastest speed, m/s, for which it is told: near a ratio of 1 the speed runs away to where nobody drives over a bump. Common practice, no
    /// source.
    /// </summary>
    public static double FastestTold => 150.0 / In.KilometresPerHour.Factor;

    /// <summary>Wheelbase L, m.</summary>
    public required double Wheelbase { get; init; }

    /// <summary>Damped period of the front axle's body motion with its tyres T_f, s; null when it does not swing.</summary>
    public required double? FrontPeriod { get; init; }

    /// <summary>Damped period of the rear axle's body motion with its tyres T_r, s; null when it does not swing.</summary>
    public required double? RearPeriod { get; init; }

    /// <summary>Dynamic index k²/(b·c) (–): the rule is exact at 1.</summary>
    public required double DynamicIndex { get; init; }

    /// <summary>Whether the ends ever fall into step with equal cycles: the front must be the slower one.</summary>
    public bool FallsIntoStep => FrontPeriod is { } front && RearPeriod is { } rear && front > rear;

    /// <summary>Why there is no such speed; null when there is one.</summary>
    public string? WhyNot => (FrontPeriod, RearPeriod) switch
    {
        (null, _) => "The front is damped so heavily that it does not swing: it has no period.",
        (_, null) => "The rear is damped so heavily that it does not swing: it has no period.",
        ({ } front, { } rear) when front == rear =>
            "Front and rear swing at the same pace: the rear stays behind by the same time and never falls into step.",
        ({ } front, { } rear) when front < rear => "The front swings faster than the rear: the rear falls further behind with every cycle.",
        _ when SpeedFor(SuitedCycles) > FastestTold =>
            "Front and rear swing at so nearly the same pace that they fall into step at no speed up to 150 km/h.",
        _ when SpeedFor(SuitedCycles) < SlowestTold => "Front and rear swing at such different paces that they fall into step only below 20 km/h.",
        _ => null,
    };

    /// <summary>
    /// The speed at which the ends of a linear car fall into step after <see cref="SuitedCycles"/>, m/s; null when they never do, or not from
    /// <see cref="SlowestTold"/> to <see cref="FastestTold"/>. Which ratio suits a car over an obstacle is told by the map of the rule.
    /// </summary>
    public double? SuitedSpeed => SpeedFor(SuitedCycles) is { } speed && speed >= SlowestTold && speed <= FastestTold ? speed : null;

    /// <summary>
    /// Speeds from <see cref="MostCycles"/> (slowest) to <see cref="FewestCycles"/> (fastest), m/s; null without <see cref="SuitedSpeed"/>.
    /// </summary>
    public (double Slowest, double Fastest)? SuitedRange =>
        SuitedSpeed is not null && SpeedFor(MostCycles) is { } slowest && SpeedFor(FewestCycles) is { } fastest ? (slowest, fastest) : null;

    /// <summary>Both axles of a model, by their quarter cars with mean damping.</summary>
    public static Coincidence Of(RideModel model) => new()
    {
        Wheelbase = model.Car.Wheelbase.Si,
        FrontPeriod = AxleRide.Of(model, AxleEnd.Front).Quarter.BodyPeriod,
        RearPeriod = AxleRide.Of(model, AxleEnd.Rear).Quarter.BodyPeriod,
        DynamicIndex = BodyModes.Of(model).DynamicIndex,
    };

    /// <summary>Speed at which the ends fall into step after n cycles of both, L/(n·(T_f − T_r)), m/s; null when they never do.</summary>
    public double? SpeedFor(double cycles) => SpeedFor(cycles, cycles);

    /// <summary>
    /// Speed at which n cycles of the front end together with m of the rear, L/(n·T_f − m·T_r), m/s; null when that is not above zero.
    /// </summary>
    /// <remarks>
    /// With a front slower than the rear m ≠ n happens only at crawling speed; it is also the only meeting of a front that is faster.
    /// </remarks>
    public double? SpeedFor(double frontCycles, double rearCycles)
    {
        if (!(frontCycles > 0.0 && FrontPeriod is { } front && RearPeriod is { } rear))
        {
            return null;
        }

        var lag = (frontCycles * front) - (rearCycles * rear);
        return lag > 0.0 ? Wheelbase / lag : null;
    }

    /// <summary>Cycles after which the ends are in step at a speed, L/(V·(T_f − T_r)) (–); null when they never are.</summary>
    public double? CyclesAt(double speed) => FallsIntoStep && speed > 0.0 ? Wheelbase / (speed * (FrontPeriod!.Value - RearPeriod!.Value)) : null;
}
