using System.Collections.Immutable;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Planning;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Which drive over which hump, how often and how fast, would halve a doubt of the car file or show a change.</summary>
public static class PlanStudy
{
    private static readonly (string Word, CarNumber Number)[] Numbers =
    [
        ("ratio", CarNumber.FrequencyRatio), ("index", CarNumber.PitchIndex), ("front-damping", CarNumber.FrontDamping),
        ("rear-damping", CarNumber.RearDamping),
    ];

    // Of the roads that are always there those that lie in both tracks and end as high as they begin.
    private static readonly string[] UsualHumps = ["village-hump", "speed-table", "village-hump-100", "short-bump", "plank"];

    // A wheelbase taken with a tape is off by no more, m.
    private const double SameWheelbase = 0.02;

    private static readonly Choice Change = new()
    {
        Name = "change",
        Kind = ChoiceKind.Car,
        Says = "The car as it will be: a variant or another car file. Its effect is to be shown by passes before and after.",
        HelpName = "CAR",
        Range = (0, 1),
    };

    private static readonly Choice Humps = new()
    {
        Name = "hump",
        Kind = ChoiceKind.Road,
        Says = $"A hump that can be driven over, a road file or a name; may be given more than once. Without it: {string.Join(", ", UsualHumps)}, "
            + "two low ones and two of boards.",
        HelpName = "ROAD",
        IsRepeated = true,
    };

    private static readonly Choice Tells = new()
    {
        Name = "tells",
        Kind = ChoiceKind.Word,
        Says = "The number whose doubt is to be halved: ratio, index, front-damping or rear-damping.",
        HelpName = "NUMBER",
        Usual = "ratio",
        Words = [.. Numbers.Select(n => n.Word)],
        WordIs = "number of a car that a drive tells",
    };

    private static readonly Choice Phone = new()
    {
        Name = "phone",
        Kind = ChoiceKind.Quantity,
        Says = "How far behind the front axle the phone will lie. Without it: 1.3 m.",
        HelpName = "LENGTH",
    };

    private static readonly Choice First = new()
    {
        Name = "first",
        Kind = ChoiceKind.Log,
        Says = "The log of a first drive of this car under this load: what it tells already counts. May be given more than once for several files. A "
            + "folder drives/NAME of a garage is read with what its drive.yaml says; one of another car or load is refused.",
        HelpName = "LOG",
        IsRepeated = true,
        Range = (0, 64),
    };

    private static readonly Choice Class =
        Choices.Class with { Says = "Class of the road about the humps, A to H (ISO 8608), A the smoothest.", Usual = "B" };

    /// <summary>The question as a command offers it.</summary>
    public static Question<PlanAsked, PlanAnswer> Question { get; } = new()
    {
        Word = "plan",
        Says =
            """
            Plan a test day with a phone on the floor: which hump, at which speeds, how often, would halve a doubt of this car file, or show what a
            change does. The figure is a card to take along.

            Examples:
              heaveline plan examples/garage/fern-saloon.yaml --figure card.pdf
              heaveline plan examples/garage/fern-saloon.yaml --tells rear-damping --hump examples/roads/village-hump.yaml
              heaveline plan examples/garage/fern-saloon.yaml --change examples/garage/fern-saloon-cured.yaml --load driver
            """,
        Choices = [Choices.Car, Choices.Load, Change, Humps, Tells, Class, Phone, First],
        Draws = new Choice
        {
            Name = "draw",
            Kind = ChoiceKind.Word,
            Says = "What the figure shows: card (the protocol to take along) or passes (what more passes tell).",
            HelpName = "WHAT",
            Usual = PlanAnswer.Card,
            Words = [PlanAnswer.Card, PlanAnswer.Passes],
            WordIs = "figure of a test day",
        },
        CsvSays = "Write the table to FILE.",
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Plans the day.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">A car cannot stand so.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static PlanAnswer Run(PlanAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var doubt = FileDoubt.Of(asked.Car, asked.Number, run.Degree, run.Cancellation);
        run.Progress?.Report(0.2);
        var first = Told(asked, run);
        var wish = new TestDayWish
        {
            Model = asked.Car.Model,
            After = asked.Change?.Model,
            Humps = asked.Humps,
            Number = asked.Number,
            HalfWidth = Math.Clamp(0.5 * doubt.HalfWidth, 2e-3, 1.0),
            Phone = asked.Phone,
            Class = asked.Class,
            First = first is { IsBelieved: true } ? first : null,
        };
        var day = TestDay.Of(wish, run.Degree, run.Between(0.2, 0.8).Progress, run.Cancellation);
        return new PlanAnswer { Asked = asked, Wish = wish, Day = day, FromFile = doubt, First = first, Loads = Loads(wish, day, run) };
    }

    // Read as drive reads it, with the wheelbase of the file.
    private static CarFromDrive? Told(PlanAsked asked, StudyRun run) => asked.First is not { } log ? null : DriveStudy.Run(
        new DriveAsked { Log = log, Car = asked.Car, Settings = asked.OfFirst with { Wheelbase = asked.Car.Car.Wheelbase.Si } },
        run with { Progress = null, Meanwhile = null }).Identified;

    // The best hump under the car's other loads, of which a first drive says nothing; where there is none, the loads under which any can be driven.
    private static ImmutableArray<(string Load, double HalfWidth)> Loads(TestDayWish wish, TestDay day, StudyRun run)
    {
        var loads = ImmutableArray.CreateBuilder<(string, double)>();
        foreach (var load in wish.Model.Car.LoadStates.Where(l => l.Name != wish.Model.Load.Name).Take(4))
        {
            run.Cancellation.ThrowIfCancellationRequested();
            var other = TestDay.Of(
                wish with
                {
                    Model = RideModel.Of(wish.Model.Car, load),
                    After = null,
                    First = null,
                    Humps = day.Drives.IsEmpty ? wish.Humps : [day.Drives[0].Hump],
                },
                stop: run.Cancellation);
            if (other.Drives is [var drive, ..])
            {
                loads.Add((load.Name, drive.HalfWidths[wish.Number]));
            }
        }

        return loads.ToImmutable();
    }

    private static PlanAsked? Read(AskedReader reader)
    {
        var number = reader.Word(Tells);
        var roadClass = reader.Class(Class);
        var phone = reader.Given.Of(Phone) is null ? new Amount<Length>(1.3) : reader.Amount<Length>(Phone, "1.3 m");
        if (phone is { } place && PhonePlace.Refusal(place) is { } far)
        {
            reader.Object(Phone.Name, $"{Phone.Name} '{reader.Given.Of(Phone)}': {far}");
        }

        var car = reader.Car(Choices.Car, Choices.Load);
        var change = reader.Given.Of(Change) is null ? null : reader.Car(Change);
        var drive = reader.Given.Of(First) is null ? null : DescribedDrive.Of(reader, First);
        var first = reader.Given.Of(First) is null ? null : reader.Log(First, DescribedDrive.Taken(drive, []));
        if (drive is { Drive: var written } && car is not null && Stranger(written, car) is { } stranger)
        {
            reader.Object(First.Name, $"{First.Name}: {stranger}", isUsage: false);
        }

        var humps = ImmutableArray.CreateBuilder<TestHump>();
        var isGiven = reader.Given.Of(Humps) is not null;
        foreach (var (name, road) in reader.RoadsOf(Humps, UsualHumps))
        {
            if (TestHump.Refusal(road) is { } refusal)
            {
                reader.Object(Humps.Name, $"{Humps.Name} '{name}': {refusal}", isUsage: false);
            }
            else if (!humps.Any(h => h.Name == road.Name))
            {
                humps.Add(new TestHump { Name = isGiven ? road.Name : name, Road = road });
            }
        }

        if (!isGiven)
        {
            humps.AddRange(TestHump.Low);
            humps.AddRange(TestHump.OfBoards);
        }

        return reader.IsRefused || car is null
            ? null
            : new PlanAsked
            {
                Car = car,
                Change = change is null ? null : LoadedCar.Beside(change.Name, change, car.Load),
                Humps = humps.ToImmutable(),
                Number = Numbers.Single(n => n.Word == number).Number,
                Class = roadClass!,
                Phone = phone!.Value.Si,
                First = first,
                OfFirst = drive?.Drive.Settings ?? new(),
                FirstDrive = drive?.Drive.Car is null ? "" : drive.Drive.Name,
            };
    }

    // What another car did, or this one under another load, is not what the plan is of.
    private static string? Stranger(RecordedDrive drive, LoadedCar car)
    {
        var planned = $"the plan is of {car.Car.Name}, {car.Load.Name}";
        return drive.Car is { } own && (own.Car.Name != car.Car.Name || own.Load.Name != car.Load.Name)
                ? $"{drive.Name} is written down as driven with {own.Car.Name}, {own.Load.Name}; {planned}. Leave it out, or plan for what it drove."
            : drive.Settings.Wheelbase is { } given && Math.Abs(given - car.Car.Wheelbase.Si) > SameWheelbase
                ? FormattableString.Invariant($"{drive.Name} is written down as driven with a wheelbase of {given:F3} m; {planned}, which has ")
                    + FormattableString.Invariant($"{car.Car.Wheelbase.Si:F3} m. Leave it out.")
            : null;
    }
}
