using Heaveline.Answers;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Studies;

/// <summary>All damped modes of the full model at one load.</summary>
public static class ModesTable
{
    /// <summary>The table, a column a mode.</summary>
    public static FactTable Of(RideModel model)
    {
        var modes = DampedModes.Of(model).All;
        return new FactTable($"Damped modes, {model.Load.Name}", [.. modes.Select(m => m.Name)])
            .Add("frequency", "natural frequency", "Hz", "F3", modes.Select(m => (double?)m.Frequency))
            .Add("damped-frequency", "damped frequency", "Hz", "F3", modes.Select(m => (double?)m.DampedFrequency))
            .Add("damping", "damping ratio", "–", "F3", modes.Select(m => (double?)m.DampingRatio));
    }
}
