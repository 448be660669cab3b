using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>How a car stands and swings at its load states.</summary>
public static class DescribeStudy
{
    private static readonly Choice Load = Choices.Load with { Says = "One load state by its name in the car file. Without it: all of them." };

    private static readonly Choice Modes = new()
    {
        Name = "modes",
        Kind = ChoiceKind.Tick,
        Says = "List all damped modes of the load state (the car's first without --load), and draw the body's two modes instead of the load states.",
    };

    private static readonly Choice Wheels = new()
    {
        Name = "wheels",
        Kind = ChoiceKind.Tick,
        Says = "Also list every wheel's load and travel, the ride rates and the loaded body's inertias.",
    };

    private static readonly Choice Samples = Choices.Samples(1000);

    private static readonly Choice Seed = Choices.Seed();

    /// <summary>The question as a command offers it.</summary>
    public static Question<DescribeAsked, DescribeAnswer> Question { get; } = new()
    {
        Word = "describe",
        Says =
            """
            Say how a car stands and swings at every load state: loads, heights, travel left, wheel rates, ride frequencies, damping, modes.

            Examples:
              heaveline describe examples/garage/fern-saloon.yaml
              heaveline describe examples/garage/fern-saloon.yaml --load "four up with luggage" --modes --figure modes.pdf
              heaveline describe examples/garage/fern-saloon.yaml --load driver --doubt
            """,
        Choices = [Choices.Car, Load, Wheels, Modes, Choices.Doubt, Samples, Seed],
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Looks at the car.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly. Where slopes are asked for, the numbers without them come meanwhile.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so, or the number of draws is out of its range.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DescribeAnswer Run(DescribeAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var unbearable = new List<string>();
        var empty = BodyModes.OfEmpty(asked.Car);
        List<CarAtRest> rests = [.. asked.Loads.Select(load => Stand(asked, load, empty, unbearable)).OfType<CarAtRest>()];
        var answer = new DescribeAnswer { Asked = asked, Rests = rests, Unbearable = unbearable };
        if (asked.WithSlopes)
        {
            run.Meanwhile?.Invoke(answer);
            answer = WithSlopes(answer, run.Cancellation);
        }

        return asked.Draws is { } draws ? answer with { Doubts = Intervals(answer, draws, run) } : answer;
    }

    private static DescribeAsked? Read(AskedReader reader)
    {
        var withWheels = reader.IsTicked(Wheels);
        var withModes = reader.IsTicked(Modes);
        var draws = reader.Whole(Samples);
        var seed = reader.Seed(Seed);
        var isDoubted = reader.IsTicked(Choices.Doubt);
        var all = reader.Text(Load) is null;
        var car = reader.Car(Choices.Car, Load);
        return reader.IsRefused
            ? null
            : new DescribeAsked
            {
                Car = car!.Car,
                Loads = all ? DescribeAsked.AllLoads(car.Car) : [car.Load],
                WithWheels = withWheels,
                WithModes = withModes,
                Draws = isDoubted ? draws : null,
                Seed = seed!.Value,
            };
    }

    private static CarAtRest? Stand(DescribeAsked asked, LoadState load, BodyModes? empty, List<string> unbearable)
    {
        try
        {
            return new CarAtRest(RideModel.Of(asked.Car, load)) { ModesLike = empty };
        }
        catch (RefusedValueException refusal) when (asked.LeavesOutUnbearable)
        {
            unbearable.Add($"{load.Name}: {refusal.Message}");
            return null;
        }
    }

    private static DescribeAnswer WithSlopes(DescribeAnswer answer, CancellationToken cancellation)
    {
        try
        {
            var slopes = new List<FirstOrder>();
            foreach (var model in answer.Models)
            {
                cancellation.ThrowIfCancellationRequested();
                slopes.Add(FirstOrder.Of(model.Car, model.Load, RestCatalogue.All));
            }

            return answer with { Slopes = slopes };
        }
        catch (RefusedValueException refusal)
        {
            return answer with { NoSlopes = $"The doubts cannot be followed: a car at their edge could not stand. {refusal.Message}" };
        }
    }

    private static List<JointStudy> Intervals(DescribeAnswer answer, int draws, StudyRun run)
    {
        var models = answer.Models;
        return
        [
            .. models.Select((model, k) => JointStudy.Of(
                [CarDoubts.Of(model.Car, model.Load)],
                RestCatalogue.All,
                draws,
                answer.Asked.Seed,
                run.Degree,
                run.Between((double)k / models.Count, (k + 1.0) / models.Count).Progress,
                run.Cancellation)),
        ];
    }
}
