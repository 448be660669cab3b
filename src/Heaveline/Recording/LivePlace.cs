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
    private LivePlace(Car car, RideNumbers still, RideNumbers standing, BlockPlan plan, double longestStep)
    {
        (Car, Still, Standing, Plan, LongestStep) = (car, still, standing, plan, longestStep);
        var step = StepRecording.NumbersOf(plan, still);
        StepNumbers = step.Length;
        Numbers = [.. step, .. TrimRecord.NumbersOf(car, still)];
    }

    public Car Car { get; }

    /// <summary>Its numbers in the reference state.</summary>
    public RideNumbers Still { get; }

    /// <summary>The same about a trim: its own, or that of the car as it stands.</summary>
    public RideNumbers Standing { get; }

    /// <summary>How its blocks are laid out.</summary>
    public BlockPlan Plan { get; }

    /// <summary>The numbers of its step, then those of its balance.</summary>
    public double[] Numbers { get; }

    /// <summary>How many of them the step meets.</summary>
    public int StepNumbers { get; }

    /// <summary>The longest step of a run there, s.</summary>
    public double LongestStep { get; }

    /// <summary>The car as it stands; null where it cannot stand, or the stepper has no room for it.</summary>
    public static LivePlace? Of(Car car, LoadState load)
    {
        try
        {
            var model = RideModel.Of(car, load);
            return new(car, Static(car, load), model.Numbers, BlockPlan.Of([model.Numbers]), StepLimit.Of(model).Step);
        }
        catch (Exception refused) when (refused is RefusedValueException or NotSupportedException)
        {
            // Whoever asks shows what is said of it when the car itself is run.
            return null;
        }
    }

    /// <summary>The car at another place; null where there is none, or where it is of another make than as it stands.</summary>
    public static LivePlace? Of(Car car, LoadState load, LivePlace own)
    {
        try
        {
            var still = Static(car, load);
            var standing = still.About(own.Standing);
            var plan = BlockPlan.Of([standing]);
            var place = plan == own.Plan ? new LivePlace(car, still, standing, plan, StepChoice.Of(still, FixedStep.Default.LargestStep).Step) : null;
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
