using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What several cars do over one road, side by side.</summary>
public static class CompareStudy
{
    // Draws cost much more than the passes of the cars as stated.
    private const double Driven = 0.1;

    private static readonly Choice Cars = Choices.Cars with
    {
        Says = "Two car files or variants, or more. The first is what the others are measured against.",
        Range = (2, 100_000),
    };

    private static readonly Choice Samples = Choices.Samples(1000);

    private static readonly Choice Seed = Choices.Seed();

    /// <summary>The question as a command offers it.</summary>
    public static Question<CompareAsked, CompareAnswer> Question { get; } = new()
    {
        Word = "compare",
        Says =
            """
            Drive several cars or variants over one road and set their numbers side by side.

            Examples:
              heaveline compare examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --load "four up with luggage"
              heaveline compare A.yaml B.yaml --speed "30 km/h, 50 km/h, 80 km/h" --figure compare.pdf
              heaveline compare A.yaml B.yaml --doubt
            """,
        Choices = [Cars, Choices.Road, Choices.Speeds, Choices.Load, Choices.Doubt, Samples, Seed],
        CsvSays = "Write all traces over time to FILE.",
        CsvRefusal = asked => asked.Speeds.Length > 1 ? "traces go into --csv for one speed at a time; give one." : null,
        IsShortened = true,
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Drives the cars.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">A car cannot stand so, or cannot be driven so; or they are too many passes.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static CompareAnswer Run(CompareAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        if (asked.Cars.Length * (long)asked.Speeds.Length > CompareAsked.MostPasses)
        {
            throw new RefusedValueException(
                "number of passes to compare",
                FormattableString.Invariant($"{asked.Cars.Length} cars at {asked.Speeds.Length} speeds"),
                FormattableString.Invariant($"at most {CompareAsked.MostPasses} passes"),
                "Give fewer speeds or fewer cars; the rule command maps one car over many speeds.");
        }

        var driven = run.Between(0.0, asked.Draws is null ? 1.0 : Driven);
        var passes = new List<IReadOnlyList<PassAnswer>>();
        foreach (var speed in asked.Speeds)
        {
            passes.Add(PassStudy.Run(asked.Cars, asked.Road, speed, run.Cancellation));
            driven.Progress?.Report((double)passes.Count / asked.Speeds.Length);
        }

        var answer = new CompareAnswer { Asked = asked, Passes = passes };
        if (asked.Draws is not { } draws || answer.Failure is not null)
        {
            return answer;
        }

        var (tables, words) = CompareDoubts.Of(asked, draws, run.Between(Driven, 1.0));
        return answer with { Intervals = tables, IntervalsFrom = words };
    }

    private static CompareAsked? Read(AskedReader reader)
    {
        var speeds = reader.Speeds(Choices.Speeds);
        var draws = reader.Whole(Samples);
        var seed = reader.Seed(Seed);
        var isDoubted = reader.IsTicked(Choices.Doubt);
        var road = reader.Road(Choices.Road);
        var (cars, turned) = BaseFirst.Read(reader, Cars, Choices.Load);
        return reader.IsRefused
            ? null
            : new CompareAsked
            {
                Cars = [.. cars], Road = road!, Speeds = [.. speeds], Draws = isDoubted ? draws : null, Seed = seed!.Value, Turned = turned,
            };
    }
}
