using Heaveline.Elements;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Tuning;

/// <summary>
/// An interconnection on the bench: the suspension's stiffness and damping in heave, pitch, roll and warp with and without it, at one trim, and what
/// the softer pitch costs in braking. The states share one standing position, so that nothing but the link differs.
/// </summary>
public sealed record InterconnectionBench
{
    /// <summary>Braking for the price, in g.</summary>
    public const double Braking = 0.5;

    /// <summary>The states: without the link, with it; for a fluid pipe open (slow), at the body's pitch frequency, and shut.</summary>
    public required IReadOnlyList<BenchState> States { get; init; }

    /// <summary>The pipe of a fluid line; null without one.</summary>
    public required LineBench? Line { get; init; }

    /// <summary>
    /// The fair reference: no link, each wheel's own spring and damper stiffer by what the link gave it in heave. Null where the link takes from
    /// an axle
    /// in heave, so that no springs could stand in for it.
    /// </summary>
    public required BenchState? Separate { get; init; }

    /// <summary>The state without the link.</summary>
    public BenchState Without => States[0];

    /// <summary>The state with the link as the car has it, for slow changes.</summary>
    public BenchState With => States[1];

    /// <summary>Link's part of the heave stiffness (–).</summary>
    public double HeaveShare => 1.0 - (Without.Stiffness.Heave / With.Stiffness.Heave);

    /// <summary>Link's part of the pitch stiffness (–): 0 when it has no say in pitch.</summary>
    public double PitchShare => 1.0 - (Without.Stiffness.Pitch / With.Stiffness.Pitch);

    /// <summary>The bench of a car with an interconnection; null without one.</summary>
    public static InterconnectionBench? Of(RideModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        if (model.Car.Interconnection is null)
        {
            return null;
        }

        var (rate, bare) = Tangent.WithoutInterconnection(model.Numbers);
        var (shut, damping) = (model.Tangent.SuspensionRate, model.Tangent.SuspensionDamping);
        var states = new List<BenchState> { State(model, "without the link", rate, bare, 0.0) };
        if (SuspensionRates.LineOpen(model) is { } open)
        {
            var pitch = BodyModes.Of(model).Pitch.Frequency;
            var swinging = FluidLineFlow.Rates(model, 2.0 * Math.PI * pitch);
            states.Add(State(model, "line open (slow changes)", open, damping, 0.0));
            states.Add(State(
                model,
                "pipe at the pitch frequency",
                swinging.Map(k => k.Real),
                damping + swinging.Map(k => k.Imaginary / (2.0 * Math.PI * pitch)),
                pitch));
            states.Add(State(model, "line shut (fast changes)", shut, damping, double.PositiveInfinity));
        }
        else
        {
            states.Add(State(model, Words(model.Car.Interconnection), shut, damping, 0.0));
        }

        var (slow, slowDamping) = (SuspensionRates.LineOpen(model) ?? shut, damping);
        return new InterconnectionBench
        {
            States = states,
            Separate = Apart(rate, slow) is { } own && Apart(bare, slowDamping) is { } ownDamping
                ? State(model, "separate springs, as stiff in heave", own, ownDamping, 0.0)
                : null,
            Line = LineBench.Of(model),
        };
    }

    // What the link gives a wheel when its whole side heaves, given by its own spring instead: heave keeps its stiffness on each axle.
    private static Matrix<double>? Apart(Matrix<double> without, Matrix<double> with)
    {
        var link = with - without;
        var apart = without.Clone();
        for (var i = 0; i < 4; i++)
        {
            var own = link[i, i] + link[i, (i + 2) % 4];
            if (own < -1e-9 * Math.Abs(with[i, i]))
            {
                return null;
            }

            apart[i, i] += own;
        }

        return apart;
    }

    private static BenchState State(RideModel model, string name, Matrix<double> rate, Matrix<double> damping, double frequency)
    {
        var car = model.Car;
        ModalRates Modal(Matrix<double> wheels) => ModalRates.Of(wheels, car.Wheelbase.Si, car.Front.Track.Si, car.Rear.Track.Si, model.Rolls);
        var push = StaticPush.Of(model, -Braking * Gravity.Standard, 0.0);
        return new BenchState
        {
            Name = name,
            Stiffness = Modal(rate),
            Damping = Modal(damping),
            BrakingPitch = StaticTangent.Solve(model, rate, push)[1],
            Frequency = frequency,
        };
    }

    private static string Words(Interconnection link) => link switch
    {
        FluidLink { Line.State: LineState.Shut } => "line shut",
        FluidLink => "line open",
        _ => "with the link",
    };
}
