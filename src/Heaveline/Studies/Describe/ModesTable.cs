using Heaveline.Answers;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Studies;

/// <summary>All damped modes of the full model at one load: what swings, and what creeps back without swinging.</summary>
public static class ModesTable
{
    /// <summary>The tables that say something, a column a mode.</summary>
    public static IReadOnlyList<FactTable> Of(RideModel model)
    {
        var modes = DampedModes.Of(model);
        return
        [
            .. modes.Swings.Count > 0 ? [Swings(model, modes.Swings)] : Array.Empty<FactTable>(),
            .. modes.Creeps.Count > 0 ? [Creeps(model, modes.Creeps)] : Array.Empty<FactTable>(),
        ];
    }

    private static FactTable Swings(RideModel model, IReadOnlyList<Mode> modes)
    {
        return new FactTable($"Damped modes, {model.Load.Name}", [.. modes.Select(m => m.Name)])
            .Add("frequency", "natural frequency", "Hz", "F3", modes.Select(m => (double?)m.Frequency))
            .Add("damped-frequency", "damped frequency", "Hz", "F3", modes.Select(m => (double?)m.DampedFrequency))
            .Add("damping", "damping ratio", "–", "F3", modes.Select(m => (double?)m.DampingRatio));
    }

    // A real root is no frequency: all there is to say is how fast it dies out, or grows.
    private static FactTable Creeps(RideModel model, IReadOnlyList<Mode> modes) =>
        new FactTable($"Motions that do not swing, {model.Load.Name}", [.. modes.Select(m => m.Name)])
            .Add("time-constant", "falls to 37 % in", "s", "F3", modes.Select(m => m.Grows ? (double?)null : m.TimeConstant))
            .Add("growth-time", "grows to 2.7 times in", "s", "F3", modes.Select(m => m.Grows ? -m.TimeConstant : (double?)null));
}
