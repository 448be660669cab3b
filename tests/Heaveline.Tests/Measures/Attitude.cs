using System.Globalization;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures;

/// <summary>
/// How a car stands in a steady acceleration, braking or bend, with every nonlinearity of its springs and stops, load transfer and the links' share
/// in it. A fluid line has come to rest; friction is left out.
/// </summary>
internal sealed record Attitude
{
    /// <summary>Forward acceleration, m/s²; braking is negative.</summary>
    public required double Forward { get; init; }

    /// <summary>Acceleration to the left, m/s².</summary>
    public required double Left { get; init; }

    /// <summary>Pitch from standing under the same load, rad, nose-down positive.</summary>
    public required double Pitch { get; init; }

    /// <summary>Roll from standing under the same load, rad, right-side-down positive.</summary>
    public required double Roll { get; init; }

    /// <summary>The whole standing position, from the reference state: travel, wheel loads, travel left.</summary>
    public required Trim Trim { get; init; }

    /// <summary>The attitude of a car.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="forward">Forward acceleration, m/s²; braking is negative. −15 to 15.</param>
    /// <param name="left">Acceleration to the left, m/s². −15 to 15.</param>
    /// <exception cref="RefusedValueException">A wheel would leave the ground, or a stop its travel.</exception>
    public static Attitude Of(RideModel model, double forward, double left = 0.0)
    {
        Checked.Within(forward, -15.0, 15.0, "Give an acceleration in m/s², for instance −4.9 for braking with 0.5 g.", "ForwardAcceleration");
        Checked.Within(left, -15.0, 15.0, "Give an acceleration in m/s².", "SidewaysAcceleration");
        if (left != 0.0 && (!model.Rolls || model.Car.Body.RollAxisHeight is null))
        {
            throw new RefusedValueException(
                "roll axis height",
                "missing",
                "given for a car in a bend",
                "Without it nobody can say what part of the side force the springs feel.");
        }

        RefuseTipping(model, forward);
        var load =
            model.Load with { Name = FormattableString.Invariant($"{model.Load.Name} at {forward:G3} m/s² forward and {left:G3} m/s² to the left") };
        var solution = TrimSolver.Solve(model.Car, load, model.Body, model.Numbers.Elements, StaticPush.Of(model, forward, left));
        var trim = Trim.From(model.Numbers, solution, model.Tangent.WheelRate);
        return new Attitude
        {
            Forward = forward,
            Left = left,
            Pitch = trim.Pitch - model.Trim.Pitch,
            Roll = trim.Roll - model.Trim.Roll,
            Trim = trim,
        };
    }

    // What braking moves must not be more than the axle carries: beyond it the car stands on one axle, and no balance is left to look for.
    private static void RefuseTipping(RideModel model, double forward)
    {
        var load = model.Trim.AxleLoad;
        var moved = -forward * StaticPush.MovedMass(model);
        var (axle, carried) = moved > 0.0 ? ("rear", load[1]) : ("front", load[0]);
        if (Math.Abs(moved) >= carried)
        {
            throw new RefusedValueException(
                "forward acceleration",
                string.Create(CultureInfo.InvariantCulture, $"{forward:G3} m/s²"),
                FormattableString.Invariant($"below {carried / StaticPush.MovedMass(model):G3} m/s² either way"),
                $"The {axle} axle would leave the ground.");
        }
    }
}
