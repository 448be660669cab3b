using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Passes;

/// <summary>The longest step that a car allows, and what about it keeps the step so short.</summary>
/// <param name="Step">The step, s.</param>
/// <param name="Cause">What forces it.</param>
/// <param name="End">At which end of the car.</param>
public sealed record StepLimit(double Step, StepCause Cause, AxleEnd End)
{
    /// <summary>The longest step that is stable, s, whatever else keeps it short.</summary>
    internal double Stable { get; init; } = double.PositiveInfinity;

    /// <summary>The step of the usual run.</summary>
    /// <param name="model">The car under its load.</param>
    public static StepLimit Of(RideModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return StepChoice.Of(model, FixedStep.Default.LargestStep);
    }

    /// <summary>What forces it, in words ("the front damper").</summary>
    public string Words => Cause switch
    {
        StepCause.None => "the run's own settings",
        StepCause.Interconnection => "the interconnection",
        _ => $"the {CornerNames.Of(End)} {Element}",
    };

    private string Element => Cause switch
    {
        StepCause.Damper => "damper",
        StepCause.TyreDamping => "tyre's damping",
        StepCause.Friction => "friction",
        StepCause.Spring => "spring",
        StepCause.TyreRate => "tyre's rate",
        StepCause.AntiRollBar => "anti-roll bar",
        StepCause.BumpStop => "bump stop",
        StepCause.ReboundStop => "rebound stop",
        _ => "unsprung mass",
    };
}
