using System.Globalization;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Tuning;

/// <summary>What a pipe full of fluid does to the wheels: it adds mass and resistance, and above its own frequency it is as good as shut.</summary>
public sealed record LineBench
{
    /// <summary>
    /// A line should swing at least this many times faster than the body pitches: then its flow is within 1/(1 − 1/9)
    /// = 12.5 % of the slow one. Own criterion.
    /// </summary>
    public const double FrequencyMargin = 3.0;

    /// <summary>Mass felt at a front wheel, I·A_f² = ρ·l·A_f²/a, kg.</summary>
    public required double FrontMass { get; init; }

    /// <summary>Mass felt at a rear wheel, I·A_r², kg.</summary>
    public required double RearMass { get; init; }

    /// <summary>Laminar resistance felt at a front wheel, R·A_f² = 128·μ·l·A_f²/(π·d⁴), N s/m.</summary>
    public required double FrontResistance { get; init; }

    /// <summary>Laminar resistance felt at a rear wheel, N s/m.</summary>
    public required double RearResistance { get; init; }

    /// <summary>Natural frequency of the fluid between both compliances, Hz; infinite for a line without inertance, which does not swing.</summary>
    public required double NaturalFrequency { get; init; }

    /// <summary>Damping ratio of that swing by the pipe's resistance (–); infinite for a line without inertance.</summary>
    public required double DampingRatio { get; init; }

    /// <summary>Frequency above which less than 1/√2 of the slow flow passes: from here on the link stiffens towards the shut line, Hz.</summary>
    public required double CornerFrequency { get; init; }

    /// <summary>Womersley number of the pipe at the body's pitch frequency (–); not a number where its bore is not known.</summary>
    public required double Womersley { get; init; }

    /// <summary>What laminar flow that swings so fast makes of the resistance, times the counted one (–).</summary>
    public required double SwingingResistance { get; init; }

    /// <summary>The same of the fluid's mass (–).</summary>
    public required double SwingingMass { get; init; }

    /// <summary>What is wrong with the pipe, one sentence each; empty when nothing is.</summary>
    public required IReadOnlyList<string> Warnings { get; init; }

    /// <summary>The pipe of a car with a fluid line; null without one.</summary>
    public static LineBench? Of(RideModel model)
    {
        if (model.Car.Interconnection is not FluidLink { Line.State: LineState.Pipe } link)
        {
            return null;
        }

        var (inertance, resistance) = (link.Line.Inertance.Si, link.Line.Resistance.Si);
        var (front, rear) = (link.FrontArea.Si, link.RearArea.Si);
        var omega = FluidLineFlow.NaturalOmega(model);
        var damping = inertance > 0.0 ? resistance / (2.0 * inertance * omega) : double.PositiveInfinity;
        // Second-order low pass: |q/q_slow|² = 1/((1 − r²)² + (2ζr)²) = 1/2; of first order without inertance, 1/(1 + (ωR/K)²).
        var middle = 1.0 - (2.0 * damping * damping);
        var corner = inertance > 0.0
            ? omega * Math.Sqrt(middle + Math.Sqrt((middle * middle) + 1.0))
            : FluidSide.Of(model)[0].Stiffness / FluidSide.Of(model)[0].Resistance;
        var womersley = link.Line is { Bore: { } bore, Inertance.Si: > 0.0, Resistance.Si: > 0.0 }
            ? PipeFlow.Womersley(link.Line, bore.Si, BodyModes.Of(model).Pitch.Frequency)
            : double.NaN;
        var (swingingResistance, swingingMass) = double.IsFinite(womersley) ? PipeFlow.Swinging(womersley) : (double.NaN, double.NaN);
        var bench = new LineBench
        {
            Womersley = womersley,
            SwingingResistance = swingingResistance,
            SwingingMass = swingingMass,
            FrontMass = inertance * front * front,
            RearMass = inertance * rear * rear,
            FrontResistance = resistance * front * front,
            RearResistance = resistance * rear * rear,
            NaturalFrequency = omega / (2.0 * Math.PI),
            DampingRatio = damping,
            CornerFrequency = corner / (2.0 * Math.PI),
            Warnings = [],
        };
        return bench with { Warnings = [.. WarningsOf(bench, model)] };
    }

    private static IEnumerable<string> WarningsOf(LineBench bench, RideModel model)
    {
        var wheels = model.Rolls ? 2.0 : 1.0;
        var pitch = BodyModes.Of(model).Pitch.Frequency;
        foreach (var (felt, axle, name) in new[] { (bench.FrontMass, model.Car.Front, "front"), (bench.RearMass, model.Car.Rear, "rear") })
        {
            var unsprung = axle.UnsprungMass.Si / wheels;
            if (felt > unsprung)
            {
                yield return FormattableString.Invariant(
                    $"The pipe is too thin: its fluid feels like {felt:F0} kg at a {name} wheel, more than the wheel's own {unsprung:F0} kg.");
            }
        }

        if (bench.NaturalFrequency < FrequencyMargin * pitch)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"The pipe is too thin or too long: its fluid swings at {bench.NaturalFrequency:F1} Hz, below {FrequencyMargin:F0} times the body's "
                + $"pitch at {pitch:F2} Hz; the link cannot follow the pitch as one pressure.");
        }

        if (bench.CornerFrequency < pitch)
        {
            yield return string.Create(
                CultureInfo.InvariantCulture,
                $"Its resistance lets less than 1/√2 of the flow through from {bench.CornerFrequency:F2} Hz on, below the body's pitch at "
                + $"{pitch:F2} Hz: while pitching it is all but shut.");
        }
    }
}
