using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Pieces;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>How sure a car's numbers are, given the doubts of its measurements, and which to measure better next.</summary>
public static class DoubtStudy
{
    private static readonly Choice Car = Choices.Car with { Says = "A car file with doubts (24.5 N/mm ± 5 %)." };

    private static readonly Choice Over = Choices.Road with { Says = "Also follow the doubts through a pass over this road.", Usual = null };

    private static readonly Choice Speed = Choices.Speed with { Says = "Speed of that pass." };

    private static readonly Choice Samples = Choices.Samples(2000);

    private static readonly Choice Seed = Choices.Seed();

    /// <summary>The question as a command offers it.</summary>
    public static Question<DoubtAsked, DoubtAnswer> Question { get; } = new()
    {
        Word = "doubt",
        Says =
            """
            Say how sure a car's numbers are, given the doubts of its measurements: each number's band, the chance that the rear is really the
            softer end, and what to measure better next.

            Examples:
              heaveline doubt examples/garage/fern-saloon.yaml
              heaveline doubt examples/garage/fern-saloon.yaml --road village-hump --speed "40 km/h" --load "four up with luggage" --figure doubt.pdf
            """,
        Choices = [Car, Over, Speed, Choices.Load, Samples, Seed],
        Reads = Read,
        Answers = Run,
        Pieces = Pieces,
    };

    /// <summary>Draws the cars.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DoubtAnswer Run(DoubtAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var doubts = new[] { CarDoubts.Of(asked.Car.Car, asked.Car.Load) };
        var standing = run.Between(0.0, asked.Road is null ? 1.0 : 0.5);
        return new DoubtAnswer
        {
            Asked = asked,
            FromFile = FileDoubt.Of(asked.Car, FileDoubt.Numbers, run.Degree, run.Cancellation),
            AtRest = JointStudy.Of(
                doubts, RestCatalogue.For(MeasureUse.Doubt), asked.Draws, asked.Seed, run.Degree, standing.Progress, run.Cancellation),
            OverRoad = asked.Road is not { } road ? null : JointStudy.OfPasses(
                doubts, road, asked.Speed, PassCatalogue.For(asked.Car.Model, road, MeasureUse.Doubt), asked.Draws, asked.Seed,
                degree: run.PiecesAtOnce, progress: run.Between(0.5, 1.0).Progress, through: run.Through, cancellation: run.Cancellation),
        };
    }

    /// <summary>Does pieces of the draws over a road; standing ones take no time.</summary>
    /// <param name="asked">What is asked.</param>
    /// <exception cref="RefusedValueException">No road is asked for: nothing comes in pieces.</exception>
    public static IPieceDoer Pieces(DoubtAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return asked.Road is { } road
            ? new DrawnPasses(
                JointDoubts.Of([CarDoubts.Of(asked.Car.Car, asked.Car.Load)]), road, asked.Speed,
                PassCatalogue.For(asked.Car.Model, road, MeasureUse.Doubt), asked.Seed, JointStudy.UsualPasses)
            : throw new RefusedValueException(
                "the road of the doubts", "not given", "given", "Standing cars are drawn in no time: nobody need help.");
    }

    private static DoubtAsked? Read(AskedReader reader)
    {
        var speed = reader.Speed(Speed);
        var draws = reader.Whole(Samples);
        var seed = reader.Seed(Seed);
        var road = reader.Road(Over);
        var car = reader.Car(Car, Choices.Load);
        return reader.IsRefused ? null : new DoubtAsked { Car = car!, Road = road, Speed = speed!.Value, Draws = draws!.Value, Seed = seed!.Value };
    }
}
