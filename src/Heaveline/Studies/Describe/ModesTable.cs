using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>All damped modes of the full model at one load: what swings, and what creeps back without swinging.</summary>
public static class ModesTable
{
    private static readonly Measure<Mode>[] Swinging =
    [
        Of("frequency", "natural frequency", In.Hertz, m => m.Frequency, "Distance of the mode's root from zero, over 2π."),
        Of("damped-frequency", "damped frequency", In.Hertz, m => m.DampedFrequency, "Frequency at which the mode swings."),
        Of("damping", "damping ratio", In.Plain, m => m.DampingRatio, "Damping of the mode over what would keep it from swinging."),
    ];

    private static readonly Measure<Mode>[] Creeping =
    [
        Of("time-constant", "falls to 37 % in", In.Seconds, m => m.Grows ? double.NaN : m.TimeConstant, "Time in which a motion falls to 1/e."),
        Of(
            "growth-time",
            "grows to 2.7 times in",
            In.Seconds,
            m => m.Grows ? -m.TimeConstant : double.NaN,
            "Time in which a motion grows to e times."),
    ];

    /// <summary>All that the tables hold, for the glossary.</summary>
    public static IReadOnlyList<Measure> Measures { get; } = [.. Swinging, .. Creeping];

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

    private static FactTable Swings(RideModel model, IReadOnlyList<Mode> modes) =>
        new FactTable($"Damped modes, {model.Load.Name}", [.. modes.Select(m => m.Name)]).Add(Swinging, modes);

    // A real root is no frequency: all there is to say is how fast it dies out, or grows.
    private static FactTable Creeps(RideModel model, IReadOnlyList<Mode> modes) =>
        new FactTable($"Motions that do not swing, {model.Load.Name}", [.. modes.Select(m => m.Name)]).Add(Creeping, modes);

    private static Measure<Mode> Of(string key, string label, ShownUnit unit, Func<Mode, double> of, string says) =>
        new(key, label, unit, 3, of, says) { Page = "theory/model.md" };
}
