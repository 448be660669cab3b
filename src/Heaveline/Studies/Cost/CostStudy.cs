using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What a change costs elsewhere: roll, dive, squat, height, travel, stress, headlamp; and what to check after it.</summary>
public static class CostStudy
{
    private static readonly Choice Cars = Choices.Cars with
    {
        Says = "The car before, then after the change; one car alone shows where it stands.",
        Range = (1, 2),
    };

    private static readonly Choice Samples = Choices.Samples(1000);

    private static readonly Choice Seed = Choices.Seed();

    /// <summary>The question as a command offers it.</summary>
    public static Question<CostAsked, CostAnswer> Question { get; } = new()
    {
        Word = "cost",
        Says =
            """
            Say what a change costs elsewhere: roll and its front share, pitch in braking and accelerating, heights, travel left, spring stress,
            headlamp aim, and what must be checked after it. Where the car files state doubts, each number and each change has its interval.

            Example:
              heaveline cost examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --load "four up with luggage"
            """,
        Choices = [Cars, Choices.Load, Samples, Seed],
        IsShortened = true,
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Works out the side effects, and where a car states doubts their intervals.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">A car cannot stand so.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static CostAnswer Run(CostAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        List<CarAtRest> cars = [.. asked.Cars.Select(c => new CarAtRest(c.Model))];
        var outputs = CostTable.Measures(cars);
        CarDoubts[] doubts = [.. asked.Cars.Select(c => CarDoubts.Of(c.Car, c.Load))];
        return new CostAnswer
        {
            Asked = asked,
            Cars = [.. cars],
            Doubts = doubts.Any(d => d.AreStated)
                ? JointStudy.Of(doubts, outputs, asked.Draws, asked.Seed, run.Degree, run.Progress, run.Cancellation)
                : null,
        };
    }

    private static CostAsked? Read(AskedReader reader)
    {
        var draws = reader.Whole(Samples);
        var seed = reader.Seed(Seed);
        var (cars, turned) = BaseFirst.Read(reader, Cars, Choices.Load);
        return reader.IsRefused ? null : new CostAsked { Cars = [.. cars], Draws = draws!.Value, Seed = seed!.Value, Turned = turned };
    }
}
