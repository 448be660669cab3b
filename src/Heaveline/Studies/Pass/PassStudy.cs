using Heaveline.Measures;
using Heaveline.Measures.Comfort;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Studies;

/// <summary>What happens when a car drives over a road at a constant speed.</summary>
public static class PassStudy
{
    private static readonly Choice Certified = new()
    {
        Name = "certified",
        Kind = ChoiceKind.Tick,
        Says = "Run the exact event-driven solver instead of fixed steps (cars whose laws are piecewise linear).",
    };

    private static readonly Choice Comfort = new()
    {
        Name = "comfort",
        Kind = ChoiceKind.Seat,
        Says = "Also evaluate one seat by the comfort standard; the figure then shows what it counts.",
        HelpName = "SEAT",
    };

    // More would take gigabytes while it is computed.
    private const double MostSamples = 1e6;

    private static readonly Choice Rate = new()
    {
        Name = "csv-rate",
        Kind = ChoiceKind.Number,
        Says = "Samples a second in the file of --csv, 50 to 4000; 400 without it. The printed numbers stay.",
        HelpName = "NUMBER",
        WordIs = "number of samples a second",
        Range = (50, 4000),
    };

    private static readonly Choice Length = new()
    {
        Name = "csv-length",
        Kind = ChoiceKind.Quantity,
        Says = "How long the file of --csv goes on after the front wheels meet the road, 0.1 s to 10 min. Without it: 3 s past the rear wheels' "
            + "leaving.",
        HelpName = "TIME",
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<PassAsked, PassAnswer> Question { get; } = new()
    {
        Word = "pass",
        Says =
            """
            Drive a car over a road at a constant speed and say what happens: the hit and the settling apart, seats, travel, grip, headlamp.

            Examples:
              heaveline pass examples/garage/fern-saloon.yaml --road village-hump --speed "40 km/h" --load "four up with luggage"
              heaveline pass examples/garage/fern-saloon.yaml --road examples/roads/country-lane.yaml --figure pass.svg --csv pass.csv
            """,
        Choices = [Choices.Car, Choices.Road, Choices.Speed, Choices.Load, Certified, Comfort, Rate, Length],
        CsvSays = "Write all traces over time to FILE.",
        OfCsv = [Rate, Length],
        IsShortened = true,
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Drives the car.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">The car cannot stand so, or cannot be driven so.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static PassAnswer Run(PassAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        var pass = Pass.Of(asked.Car.Model, asked.Road, asked.Speed, asked.Options, run?.Cancellation ?? default);
        return Of(asked.Car.Name, pass) with
        {
            CsvOptions = asked.Record is { } record
                ? asked.Options with
                {
                    Method = asked.Options.Method is FixedStep steps ? steps with { StatesError = false } : asked.Options.Method,
                    Record = record,
                }
                : null,
            AtSeat = asked.Comfort is { } seat && pass.Outcome == PassOutcome.Completed ? PassComfort.Of(pass, seat) : null,
        };
    }

    /// <summary>Drives cars over a road side by side, so that they share one length of record.</summary>
    /// <param name="cars">The cars.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">The speed, m/s; 0.5 to 120.</param>
    /// <param name="cancellation">Stops the work between groups.</param>
    /// <exception cref="RefusedValueException">A car cannot stand so, or cannot be driven so.</exception>
    public static IReadOnlyList<PassAnswer> Run(IReadOnlyList<LoadedCar> cars, Road road, double speed, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(cars);
        return [.. cars.Zip(
            PassBatch.Of([.. cars.Select(c => new PassRequest(c.Model, road, speed))], cancellation: cancellation),
            (car, pass) => Of(car.Name, pass))];
    }

    private static PassAnswer Of(string name, Pass pass) => new() { Name = name, Pass = pass, Measures = PassMeasures.Of(pass) };

    private static PassAsked? Read(AskedReader reader)
    {
        var speed = reader.Speed(Choices.Speed);
        var isCertified = reader.IsTicked(Certified);
        var road = reader.Road(Choices.Road);
        var car = reader.Car(Choices.Car, Choices.Load);
        var seat = car is null ? null : reader.Seat(Comfort, car.Car);
        var record = Record(reader);
        return reader.IsRefused
            ? null
            : new PassAsked
            {
                Car = car!,
                Road = road!,
                Speed = speed!.Value,
                Options = new() { Method = isCertified ? new ExactPieces() : FixedStep.Default },
                Record = record,
                Comfort = seat,
            };
    }

    private static PassRecord? Record(AskedReader reader)
    {
        if (reader.Given.Of(Rate) is null && reader.Given.Of(Length) is null)
        {
            return null;
        }

        var rate = reader.Given.Of(Rate) is null ? PassRecord.Default.SamplesPerSecond : reader.Number(Rate);
        var length = reader.Given.Of(Length) is null ? null : reader.Amount<Time>(Length, "10 s");
        if (length is { Si: < 0.1 or > 600.0 })
        {
            reader.Object(Length.Name, $"{Length.Name} '{reader.Given.Of(Length)}': give 0.1 s to 600 s.");
            return null;
        }

        if (rate * length?.Si > MostSamples)
        {
            reader.Object(Length.Name, FormattableString.Invariant(
                $"{rate:0.#} samples a second for {length!.Value.Si:0.#} s are too many to record: take at most {MostSamples:0} samples."));
            return null;
        }

        return rate is null ? null : PassRecord.Default with { SamplesPerSecond = rate.Value, Duration = length?.Si };
    }
}
