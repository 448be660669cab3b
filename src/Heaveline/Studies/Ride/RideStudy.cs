using System.Collections.Immutable;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;

namespace Heaveline.Studies;

/// <summary>How cars ride on a random road at several speeds: comfort and pitch.</summary>
public static class RideStudy
{
    // A pass in time costs about as much as so many responses.
    private const double CostInTime = 12.0;

    private static readonly Choice Speeds = Choices.Speeds with { Usual = "30 km/h, 50 km/h, 80 km/h, 110 km/h" };

    /// <summary>Whether passes in time are asked for.</summary>
    public static Choice InTime { get; } = new()
    {
        Name = "in-time",
        Kind = ChoiceKind.Tick,
        Says = "Also drive the whole, nonlinear car over made roads of the class and give the interval that chance leaves.",
    };

    private static readonly Choice Samples = Choices.Samples(200);

    private static readonly Choice Seed = Choices.Seed(" It seeds the made roads as well.");

    /// <summary>The question as a command offers it.</summary>
    public static Question<RideAsked, RideAnswer> Question { get; } = new()
    {
        Word = "ride",
        Says =
            """
            Say how cars ride on a random road of a class at several speeds: pitch and heave as they are, and what the comfort standard counts of
            them.

            Examples:
              heaveline ride examples/garage/fern-saloon.yaml --class C --load driver
              heaveline ride examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --figure ride.pdf
              heaveline ride examples/garage/fern-saloon.yaml --speed "80 km/h" --draw spectra --figure spectra.svg
              heaveline ride examples/garage/fern-saloon.yaml --speed "60 km/h" --doubt
            """,
        Choices = [Choices.Cars, Choices.Class, Speeds, Choices.Load, InTime, Choices.Doubt, Samples, Seed],
        Draws = new Choice
        {
            Name = "draw",
            Kind = ChoiceKind.Word,
            Says = "What the figure shows: sweep (measures over speed), spectra (first car and speed, with the wheelbase filter) or "
                + "transfer (road to body).",
            HelpName = "WHAT",
            Usual = RideAnswer.Sweep,
            Words = [RideAnswer.Sweep, RideAnswer.Spectra, RideAnswer.Transfer],
            WordIs = "figure of a ride",
        },
        IsShortened = true,
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Drives the cars.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">A car cannot stand so.</exception>
    /// <exception cref="RunFailedException">A pass in time left the model's range.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static RideAnswer Run(RideAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var driven = run.Between(0.0, asked.Draws is null ? 1.0 : 0.2);
        var (all, done) = (asked.Cars.Length * (asked.Speeds.Length + (asked.InTime ? CostInTime * Some(asked).Length : 0.0)), 0.0);
        T Step<T>(T result, double cost)
        {
            driven.Progress?.Report((done += cost) / all);
            return result;
        }

        var roads = RandomPassOptions.Default with { Seed = asked.Seed };
        var cars = new List<CarRide>();
        foreach (var car in asked.Cars)
        {
            var model = car.Model;
            var spectrum = asked.Road.Spectrum;
            cars.Add(new CarRide(
                car.Name,
                [.. asked.Speeds.Select(v => Step(RandomResponse.Of(model, spectrum, v, cancellation: run.Cancellation), 1.0))],
                asked.InTime
                    ? [.. Some(asked).Select(i => Step(RandomPass.Of(model, spectrum, asked.Speeds[i], roads, run.Cancellation), CostInTime))]
                    : null));
        }

        var doubts = asked.Draws is { } draws ? Intervals(asked, cars, draws, run.Between(0.2, 1.0)) : [];
        return new RideAnswer { Asked = asked, Cars = [.. cars], Doubts = [.. doubts] };
    }

    /// <summary>Which of the speeds have tables and passes in time.</summary>
    internal static ImmutableArray<int> Some(RideAsked asked) => [.. Enumerable.Range(0, asked.Speeds.Length).Where(i => i % asked.Every == 0)];

    private static RideAsked? Read(AskedReader reader)
    {
        var roadClass = reader.Class(Choices.Class);
        var speeds = reader.Speeds(Speeds);
        var inTime = reader.IsTicked(InTime);
        var draws = reader.Whole(Samples);
        var seed = reader.Seed(Seed);
        var isDoubted = reader.IsTicked(Choices.Doubt);
        var cars = reader.Cars(Choices.Cars, Choices.Load);
        return reader.IsRefused
            ? null
            : new RideAsked
            {
                Cars = [.. cars],
                Road = NamedSpectrum.Of(roadClass!),
                Speeds = [.. speeds],
                InTime = inTime,
                Draws = isDoubted ? draws : null,
                Seed = seed!.Value,
            };
    }

    private static List<(double Speed, JointStudy Study)> Intervals(RideAsked asked, List<CarRide> cars, int draws, StudyRun run)
    {
        CarDoubts[] doubts = [.. asked.Cars.Select(c => CarDoubts.Of(c.Car, c.Load))];
        var measures = RideCatalogue.Of(doubts[0].Car);
        var some = Some(asked);
        JointStudy Study(int i, int k) => JointStudy.OfRides(
            doubts, asked.Road.Spectrum, asked.Speeds[i], measures, draws, asked.Seed, degree: run.Degree,
            progress: run.Between((double)k / some.Length, (k + 1.0) / some.Length).Progress, cancellation: run.Cancellation);
        return [.. some.Select((i, k) => (asked.Speeds[i], Study(i, k)))];
    }
}
