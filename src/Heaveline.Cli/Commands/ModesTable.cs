using Heaveline.Cli.Output;
using Heaveline.Models;
using Heaveline.Responses;

namespace Heaveline.Cli.Commands;

/// <summary>All damped modes of the full model at one load.</summary>
internal static class ModesTable
{
    public static FactTable Of(RideModel model)
    {
        var modes = Modes.Of(model).All;
        return new FactTable($"Damped modes, {model.Load.Name}", [.. modes.Select(m => m.Name)])
            .Add("frequency", "natural frequency", "Hz", "F3", modes.Select(m => (double?)m.Frequency))
            .Add("damped-frequency", "damped frequency", "Hz", "F3", modes.Select(m => (double?)m.DampedFrequency))
            .Add("damping", "damping ratio", "–", "F3", modes.Select(m => (double?)m.DampingRatio));
    }
}
