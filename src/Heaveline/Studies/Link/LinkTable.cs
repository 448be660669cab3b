using Heaveline.Answers;
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
        IEnumerable<double?> All(Func<BenchState, double?> of) => bench.States.Select(of);
        return new FactTable("Interconnection", [.. bench.States.Select(s => s.Name)])
            .Add("heave-rate", "heave stiffness", "N/mm", "F2", All(s => 1e-3 * s.Stiffness.Heave))
            .Add("pitch-rate", "pitch stiffness", "N m/°", "F0", All(s => In.NewtonMetresPerDegree.Of(s.Stiffness.Pitch)))
            .Add("roll-rate", "roll stiffness", "N m/°", "F0", All(s => In.NewtonMetresPerDegree.Of(s.Stiffness.Roll)))
            .Add("warp-rate", "warp stiffness", "N m/°", "F0", All(s => In.NewtonMetresPerDegree.Of(s.Stiffness.Warp)))
            .Add("heave-damping", "heave damping", "N s/m", "F0", All(s => s.Damping.Heave))
            .Add("pitch-damping", "pitch damping", "N m s", "F0", All(s => s.Damping.Pitch))
            .Add("at-frequency", "frequency at which this holds", "Hz", "F3", All(s => s.Frequency))
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
            .Add("line-corner", "the link stiffens above", "Hz", "F2", [line.CornerFrequency, line.CornerFrequency]);
    }
}
