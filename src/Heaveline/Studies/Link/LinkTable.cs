using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>An interconnection on the bench as tables.</summary>
public static class LinkTable
{
    /// <summary>Stiffness and damping without the link and with it, a column a state.</summary>
    public static FactTable States(InterconnectionBench bench)
    {
        ArgumentNullException.ThrowIfNull(bench);
        IReadOnlyList<BenchState> states = [.. bench.States, .. bench.Separate is { } separate ? new[] { separate } : []];
        IEnumerable<double?> All(Func<BenchState, double?> of) => states.Select(of);
        var table = new FactTable("Interconnection", [.. states.Select(s => s.Name)])
            .Add("heave-rate", "heave stiffness", "N/mm", "F2", All(s => 1e-3 * s.Stiffness.Heave))
            .Add("pitch-rate", "pitch stiffness", "N m/°", "F0", All(s => In.NewtonMetresPerDegree.Of(s.Stiffness.Pitch)))
            .Add("roll-rate", "roll stiffness", "N m/°", "F0", All(s => In.NewtonMetresPerDegree.Of(s.Stiffness.Roll)))
            .Add("warp-rate", "warp stiffness", "N m/°", "F0", All(s => In.NewtonMetresPerDegree.Of(s.Stiffness.Warp)))
            .Add("heave-damping", "heave damping", "N s/m", "F0", All(s => s.Damping.Heave))
            .Add("pitch-damping", "pitch damping", "N m s", "F0", All(s => s.Damping.Pitch));
        // A spring is the same at every frequency.
        return (bench.Line is null ? table : table.Add("at-frequency", "frequency at which this holds", "Hz", "F3", All(s => s.Frequency)))
            .Add("braking-pitch", "pitch in braking at 0.5 g", "°", "F2", All(s => In.Degrees.Of(s.BrakingPitch)));
    }

    /// <summary>What the pipe does to the wheels of either end.</summary>
    public static FactTable Line(LineBench line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return new FactTable("Line", ["front", "rear"])
            .Add("felt-mass", "mass of the fluid felt at the wheel", "kg", "F0", [line.FrontMass, line.RearMass])
            .Add("felt-resistance", "resistance felt at the wheel", "N s/m", "F0", [line.FrontResistance, line.RearResistance])
            .Add("line-frequency", "natural frequency of the fluid", "Hz", "F2", [line.NaturalFrequency, line.NaturalFrequency])
            .Add("line-damping", "its damping ratio", "–", "F3", [line.DampingRatio, line.DampingRatio])
            .Add("line-corner", "the link stiffens above", "Hz", "F2", [line.CornerFrequency, line.CornerFrequency])
            .Add("line-womersley", "Womersley number at the pitch frequency", "–", "F1", [line.Womersley, line.Womersley])
            .Add("line-swinging-resistance", "resistance as it swings, times as counted", "–", "F2", Both(line.SwingingResistance))
            .Add("line-swinging-mass", "mass as it swings, times as counted", "–", "F2", Both(line.SwingingMass));
        static IEnumerable<double?> Both(double value) => [value, value];
    }

    /// <summary>A crossing a column: pitch with the link and with separate springs as stiff in heave, and the flow in the pipe.</summary>
    /// <param name="hump">The obstacle in words.</param>
    /// <param name="crossings">The crossings.</param>
    public static FactTable Hump(string hump, IReadOnlyList<LinkCrossing> crossings)
    {
        ArgumentNullException.ThrowIfNull(crossings);
        var table = new FactTable($"Over the {hump}", [.. crossings.Select(c => $"{c.SpeedWords} km/h")]);
        foreach (var measure in new[] { SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration })
        {
            foreach (var (key, what, of) in new (string, string, Func<LinkCrossing, Pass?>)[]
            {
                ("with", "with the link", c => c.With), ("separate", "separate springs", c => c.Separate),
            })
            {
                table.Add(
                    $"{measure.Key}-{key}",
                    $"{measure.Label}, {what}",
                    measure.Unit.Symbol,
                    measure.Format,
                    crossings.Select(c => LinkCrossing.Of(measure, of(c)) is { } si ? measure.Shown(si) : null));
            }
        }

        IReadOnlyList<PipeFlow?> flows = [.. crossings.Select(c => c.Flow)];
        IEnumerable<double?> Flow(Func<PipeFlow, double> of) => flows.Select(f => f is null ? (double?)null : of(f));
        return table
            .Add("flow-velocity", "greatest velocity in the pipe", "m/s", "F2", Flow(f => f.PeakVelocity))
            .Add("flow-reynolds", "Reynolds number there", "–", "F0", Flow(f => f.Reynolds))
            .Add("flow-turbulent", "turbulent in the first 1.5 s", "%", "F0", Flow(f => In.Percent.Of(f.TurbulentShare)))
            .Add("flow-counted", "pipe's force at a front wheel, as counted", "N", "F1", Flow(f => f.FrontForce / f.LossRatio))
            .Add("flow-smooth", "the same by the friction of a smooth pipe", "N", "F1", Flow(f => f.FrontForce));
    }
}
