using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Quantities;

namespace Heaveline.Recording;

/// <summary>A car at one place of its sliders: its numbers as its records meet them.</summary>
internal sealed class LivePlace
{
    private LivePlace(RideModel model, RideNumbers still, BlockPlan plan, double longestStep, ILiveNumbers? further)
    {
        (Car, Model, Still, Plan, LongestStep) = (model.Car, model, still, plan, longestStep);
        Signals = further?.SignalsOf(model) ?? [];
        var (step, trim) = (StepRecording.NumbersOf(plan, still, Signals), TrimRecord.NumbersOf(Car, still));
        (StepNumbers, TrimNumbers) = (step.Length, step.Length + trim.Length);
        Numbers = [.. step, .. trim, .. further is null ? [] : Record.Heard(() => further.Note(model, 0))];
    }

    public Car Car { get; }

    /// <summary>Its numbers in the reference state.</summary>
    public RideNumbers Still { get; }

    /// <summary>The car about a trim: its own, or that of the car as it stands.</summary>
    public RideModel Model { get; }

    /// <summary>Its numbers there.</summary>
    public RideNumbers Standing => Model.Numbers;

    /// <summary>What else is read off every sample.</summary>
    public IReadOnlyList<RecordSignal> Signals { get; }

    /// <summary>How its blocks are laid out.</summary>
    public BlockPlan Plan { get; }

    /// <summary>The numbers of its step, then those of its balance, then those of what is made of its samples.</summary>
    public double[] Numbers { get; }

    /// <summary>How many of them the step meets.</summary>
    public int StepNumbers { get; }

    /// <summary>How many the step and the balance meet.</summary>
    public int TrimNumbers { get; }

    /// <summary>The longest step of a run there, s.</summary>
    public double LongestStep { get; }

    /// <summary>The car as it stands; null where it cannot stand, or the stepper has no room for it.</summary>
    public static LivePlace? Of(Car car, LoadState load, ILiveNumbers? further)
    {
        try
        {
            var model = RideModel.Of(car, load);
            return new(model, Static(car, load), BlockPlan.Of([model.Numbers]), StepLimit.Of(model).Step, further);
        }
        catch (Exception refused) when (refused is RefusedValueException or NotSupportedException)
        {
            // Whoever asks shows what is said of it when the car itself is run.
            return null;
        }
    }

    /// <summary>The car at another place; null where there is none, or where it is of another make than as it stands.</summary>
    public static LivePlace? Of(Car car, LoadState load, ILiveNumbers? further, LivePlace own)
    {
        try
        {
            var still = Static(car, load);
            var standing = still.About(own.Standing);
            var plan = BlockPlan.Of([standing]);
            var place = plan == own.Plan
                ? new LivePlace(RideModel.About(car, load, standing), still, plan, StepChoice.Of(still, FixedStep.Default.LargestStep).Step, further)
                : null;
            return place?.Numbers.Length == own.Numbers.Length ? place : null;
        }
        catch (Exception refused) when (refused is RefusedValueException or NotSupportedException)
        {
            // Likewise.
            return null;
        }
    }

    private static RideNumbers Static(Car car, LoadState load) =>
        RideNumbers.Static(car, SprungBody.Of(car).With(load), CarElements.Of(car));
}
