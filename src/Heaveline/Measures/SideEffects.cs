using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Measures;

/// <summary>
/// What springs, bars, links and loads do besides riding, standing still: roll, pitch in braking and driving, heights, travel left, stress, lamp.
/// On the tangent at trim.
/// </summary>
public sealed record SideEffects
{
    /// <summary>Roll stiffness and roll per g; null for a two-wheeler.</summary>
    public required RollStiffness? Roll { get; init; }

    /// <summary>Pitch in braking.</summary>
    public required PitchPerG Braking { get; init; }

    /// <summary>Pitch in driving.</summary>
    public required PitchPerG Driving { get; init; }

    /// <summary>
    /// Slope of the line from the front contact to the front links' side-view instant centre, tan φ = anti-dive·h/(p·L), as an angle, rad; null
    /// without the front brakes' share p. A raked fork has −rake.
    /// </summary>
    public required double? FrontSupportAngle { get; init; }

    /// <summary>The same behind, tan φ = anti-lift·h/((1 − p)·L), rad; null without p or when the rear brakes do nothing.</summary>
    public required double? RearSupportAngle { get; init; }

    /// <summary>Heights, sag, travel left and stress at every wheel.</summary>
    public required IReadOnlyList<WheelStanding> Wheels { get; init; }

    /// <summary>Where the dipped beam points; null without a lamp.</summary>
    public required HeadlampAim? Headlamp { get; init; }

    /// <summary>What was left out or assumed, one sentence each.</summary>
    public required IReadOnlyList<SideEffectNote> Notes { get; init; }

    /// <summary>The side effects of a car under a load.</summary>
    public static SideEffects Of(RideModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        var car = model.Car;
        var suspension = SuspensionRates.LineOpen(model) ?? model.Tangent.SuspensionRate;
        return new SideEffects
        {
            Roll = RollStiffness.Of(model, suspension),
            Braking = PitchPerG.Of(model, suspension, -1.0),
            Driving = PitchPerG.Of(model, suspension, +1.0),
            FrontSupportAngle = car.Brakes?.ForkRake is { } rake
                ? -rake.Si
                : Support(model, car.Brakes?.AntiDiveFront.Si, car.Brakes?.FrontBrakeShare?.Si),
            RearSupportAngle = Support(model, car.Brakes?.AntiLiftRear.Si, 1.0 - car.Brakes?.FrontBrakeShare?.Si),
            Wheels = WheelStanding.Of(model),
            Headlamp = HeadlampAim.Of(model),
            Notes = [.. Left(model)],
        };
    }

    private static double? Support(RideModel model, double? carried, double? brakeShare) =>
        carried is { } part && brakeShare is > 0.0 and { } brakes
            ? Math.Atan(part * StaticPush.ReferenceHeight(model) / (brakes * model.Car.Wheelbase.Si))
            : null;

    private static SideEffectNote Fork(RideModel model)
    {
        var car = model.Car;
        if (car.Brakes?.ForkRake is { } rake)
        {
            return new("fork", FormattableString.Invariant(
                $"The fork's rake of {In.Degrees.Of(rake.Si):0.#}° makes the dive deeper: in braking, {Stops(car)}, it presses the fork together ")
                + FormattableString.Invariant($"with {Math.Tan(rake.Si):F2} times the brake's force."));
        }

        if (car.Brakes is { AntiDiveFront.Si: not 0.0 })
        {
            return new("fork", "The front's share in braking is the anti-dive of the car file.");
        }

        // Along the legs a fork moves 1/cos(rake) times as far as its wheel.
        var ratio = car.Front.Spring.MotionRatio.AtReference.Si;
        return new("fork", "No rake of a fork is given: a telescopic fork with its brake on the slider dives deeper than this"
            + (ratio > 1.0 && Math.Acos(1.0 / ratio) is var slope && slope <= Math.PI / 3.0
                ? FormattableString.Invariant($"; the front spring moves {ratio:0.###} times as far as the wheel, ")
                    + FormattableString.Invariant($"as in one raked by {In.Degrees.Of(slope):F1}°")
                : "")
            + ". Write fork-rake under brakes.");
    }

    private static string Stops(Car car) => car.Brakes?.FrontBrakeShare is { } share
        ? FormattableString.Invariant($"{In.Percent.Of(share.Si):F0} % of it in front")
        : "the front brake alone";

    private static IEnumerable<SideEffectNote> Left(RideModel model)
    {
        var car = model.Car;
        if (model.Rolls && car.Body.RollAxisHeight is null)
        {
            yield return new(
                "no-roll-axis",
                "The car file gives no roll axis height: roll per g cannot be said, and gravity's part in it is left out.");
        }
        else if (model.Rolls)
        {
            yield return new("level-roll-axis", "Roll per g takes the roll axis as level at its height under the centre of gravity.");
        }

        if (car.Body.PitchAxisHeight is null)
        {
            yield return new("no-pitch-axis", "The car file gives no pitch axis height: gravity's tilting moment is left out of the pitch.");
        }

        if (car.Brakes is null)
        {
            yield return new(
                "no-brakes",
                "The car file says nothing about brakes: no anti-dive and no pro-dive are assumed, and no anti-squat either; "
                + "links can work both ways.");
        }

        if (car.Kind == VehicleKind.TwoWheeler)
        {
            yield return Fork(model);
            yield return (car.Brakes?.AntiSquatRear.Si ?? 0.0) == 0.0
                ? new(
                    "chain-pull",
                    "The chain's pull on the rear in accelerating is left out: it holds the rear up or pulls it down, and the car file gives "
                    + "no anti-squat.")
                : new("chain-pull", "The chain's pull on the rear in accelerating counts as far as the anti-squat of the car file holds it.");
        }

        if (car.Brakes is null || car.Brakes.WheelRadius == BrakeGeometry.AssumedWheelRadius)
        {
            yield return new("wheel-radius", FormattableString.Invariant(
                $"The wheel centres are taken to be {BrakeGeometry.AssumedWheelRadius.Si:F2} m above the ground (common practice, no source)."));
        }

        if (SuspensionRates.LineOpen(model) is not null)
        {
            yield return new("lines-at-rest", "The fluid lines have come to rest: in the first moment of braking or steering they are stiffer.");
        }
    }
}
