using Heaveline.Causes;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Why a car pitches over a road: each cause with its share and the road test that would prove it.</summary>
public static class WhyStudy
{
    // Share of the work that the ranking is; the rest are the road tests, which draw cars.
    private const double Ranked = 0.5;

    /// <summary>The question as a command offers it.</summary>
    public static Question<WhyAsked, WhyAnswer> Question { get; } = new()
    {
        Word = "why",
        Says =
            """
            Say why a car pitches over a road: frequency ratio, damping and its split, inertia, wheelbase, load, friction, stops, tyres,
            interconnection; each with its share and, where a load can show it, a planned road test.

            Example:
              heaveline why examples/garage/fern-saloon.yaml --load "four up with luggage" --speed "40 km/h"
            """,
        Choices = [Choices.Car, Choices.Road, Choices.Speed, Choices.Load],
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Finds the causes.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so.</exception>
    /// <exception cref="RunFailedException">Its own pass does not run to its end.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static WhyAnswer Run(WhyAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var (ranking, testing) = (run.Between(0.0, Ranked), run.Between(Ranked, 1.0));
        var why = Why.Of(asked.Car.Model, asked.Road, asked.Speed, asked.Options, run.Degree, ranking.Progress, run.Cancellation);
        return new WhyAnswer { Why = why.WithTests(RankingWords.WorthATest, run.Degree, testing.Progress, run.Cancellation) };
    }

    private static WhyAsked? Read(AskedReader reader)
    {
        var speed = reader.Speed(Choices.Speed);
        var road = reader.Road(Choices.Road);
        var car = reader.Car(Choices.Car, Choices.Load);
        return reader.IsRefused ? null : new WhyAsked { Car = car!, Road = road!, Speed = speed!.Value };
    }
}
