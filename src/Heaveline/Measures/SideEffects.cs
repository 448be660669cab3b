using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Measures;

/// <summary>
/// What springs, bars, links and loads do besides riding, standing still: roll, pitch in braking and driving, heights, travel left, stress, lamp.
/// On the tangent at trim; <see cref="Attitude"/> solves large accelerations with everything that is curved.
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
    /// without the front brakes' share p.
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
            FrontSupportAngle = Support(model, car.Brakes?.AntiDiveFront.Si, car.Brakes?.FrontBrakeShare?.Si),
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
                "The car file says nothing about brakes: the links are taken to carry nothing (no anti-dive, no anti-squat), so that the pitch "
                + "is the most there can be with sound links.");
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
