using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What the log of a drive is good for, and what is read off it.</summary>
public static class DriveStudy
{
    private static readonly Choice Logs = new()
    {
        Name = "log",
        Kind = ChoiceKind.Log,
        Says = "What a phone or a logger wrote: files (.csv, .txt), a folder of them, a .zip; several belong to one drive. A folder drives/NAME of a "
            + "garage is read with what its drive.yaml says of car, load, phone and bumps; options stand before that.",
        IsArgument = true,
        IsNeeded = true,
        Range = (1, 64),
    };

    /// <summary>Decisions of the reading.</summary>
    internal static Choice Take { get; } = new()
    {
        Name = "take",
        Kind = ChoiceKind.Word,
        Says = "Take a decision of the reading otherwise, as \"acceleration: mg\", \"speed: mph\", \"time: column 3\", \"forward: 37°\", "
            + "\"lag: 0.8 s\", \"moved: no\"; the story in --json says what may be taken instead of each. May be given more than once.",
        HelpName = "DECISION",
        IsRepeated = true,
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<DriveAsked, DriveAnswer> Question { get; } = new()
    {
        Word = "drive",
        Says =
            """
            Say what the log of a drive is good for (how its files were read, how the phone lay, which faults it has), find its bumps, bring them
            to sites, measure each in the words of 'pass', and weigh the floor's vibration. With a wheelbase, or a car that gives it: say which car
            moves most like this drive, with intervals, or why the drive does not tell.

            Examples:
              heaveline drive trip.csv
              heaveline drive drive.zip --figure strip.pdf
              heaveline drive trip.csv --wheelbase "2.70 m" --phone "1.45 m behind front axle" --site "chapel: 84 s, 141 s" --csv bumps.csv
              heaveline drive my-garage/drives/before --phone "1.45 m behind front axle"
              heaveline drive trip.csv --draw events --figure bumps.pdf
              heaveline drive trip.csv --car fern-saloon.yaml --site "chapel: 84 s" --road chapel --write chapel.yaml
              heaveline drive trip.csv --car fern-saloon.yaml --twin --write-twin as-driven.yaml
              heaveline drive trip.csv --wheelbase "2.70 m" --roughness --write-roughness along.csv
              heaveline drive trip.csv --car examples/garage/fern-saloon.yaml --load driver --draw car --figure card.pdf
              heaveline drive Accelerometer.csv Gyroscope.csv Location.csv --json
            """,
        Choices = [Logs, .. DriveChoices.All, Take],
        Draws = new Choice
        {
            Name = "draw",
            Kind = ChoiceKind.Word,
            Says = "What the figure shows: strip (the whole drive), events (the bumps of each site over time, one over the other), "
                + "distance (the same over distance), spectra (of bumps, and of the road between), car (its numbers with their intervals), fit "
                + "(measured spectra, and the car's), road (that of --road, with its band) or roughness (along the drive, with its classes).",
            HelpName = "WHAT",
            Usual = DriveAnswer.Strip,
            Words =
            [
                DriveAnswer.Strip, DriveAnswer.Overlay, DriveAnswer.Distance, DriveAnswer.Spectra, DriveAnswer.CarCard, DriveAnswer.Fit,
                DriveAnswer.SiteRoad, DriveAnswer.Rough,
            ],
            WordIs = "figure of a drive",
        },
        CsvSays = "Write the bumps to FILE, a row each.",
        Writes =
        [
            new("write", ".yaml", "Write the road of --road to FILE, a road file, its heights beside it as .csv.", DriveChoices.Road)
            {
                Beside = [".csv"],
            },
            new(
                "write-twin", ".yaml", "Write the scaled car of --twin to FILE, a variant of the car file, to lie beside it, with its doubts.",
                DriveChoices.Twin)
            {
                LiesBeside = DriveChoices.Car,
            },
            new("write-roughness", ".csv", "Write the roughness along the drive to FILE, a row for every 100 m.", DriveChoices.Roughness),
        ],
        IsShortened = true,
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Puts the log on the car's axes, judges it, and reads off it what it bears.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="RefusedValueException">Gravity is missing, nothing of the log is long enough, or it has no site of that name.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DriveAnswer Run(DriveAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var bumps = Bumps(asked, null, run);
        // Before the car, which takes longest.
        if (asked.Road is { } site && bumps.Events is { } events && events.Sites.All(s => s.Name != site))
        {
            throw new RefusedValueException(
                "road", $"'{site}'", events.Sites.IsEmpty ? "a site of this drive, which has none" : "one of its sites: "
                    + string.Join(", ", events.Sites.Select(s => s.Name)), "Name a site of this drive.");
        }

        var answer = WithCar(bumps, run.Cancellation);
        if (run.IsWhole)
        {
            answer.Detail?.WorkOut(run.Cancellation);
        }
        else if (asked.WantsRoughness)
        {
            answer.Detail?.RoughnessOf(run.Cancellation);
        }

        run.Progress?.Report(1.0);
        return answer;
    }

    /// <summary>All but the car, which takes longest.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="read">An answer of the same log, whatever else was asked then; null: none.</param>
    /// <param name="run">How it is run.</param>
    internal static DriveAnswer Bumps(DriveAsked asked, DriveAnswer? read, StudyRun run)
    {
        var drive = read?.Drive ?? Drives.Drive.Of(asked.Log, run.Cancellation);
        run.Progress?.Report(0.5);
        var trust = read?.Trust ?? Trust.Of(drive, run.Cancellation);
        run.Progress?.Report(0.7);
        var events = trust.For(TrustUse.Events).Level == TrustLevel.None ? null
            : DriveEvents.Of(drive, trust, asked.Settings, read?.Events, run.Cancellation);
        run.Progress?.Report(0.8);
        var comfort = read is null ? DriveComfort.Of(drive, trust, run.Cancellation) : read.Comfort;
        run.Progress?.Report(0.85);
        var beside = asked.Car is { } loaded ? CarBeside.Of(loaded) : null;
        return At(new DriveAnswer { Asked = asked, Drive = drive, Trust = trust, Comfort = comfort, Beside = beside }, drive, events);
    }

    /// <summary>The same with the car.</summary>
    /// <param name="bumps">All but the car.</param>
    /// <param name="stop">Stops it.</param>
    internal static DriveAnswer WithCar(DriveAnswer bumps, CancellationToken stop)
    {
        var car = CarOf(bumps, stop);
        if (bumps.Events is { } events)
        {
            var found = TrueSpeed.Of(
                bumps.Drive, bumps.Trust, events, car, (drive, at) => CarOf(bumps with { Drive = drive, Events = at }, stop), stop);
            (bumps, car) = (ReferenceEquals(found.Drive, bumps.Drive) ? bumps : At(bumps, found.Drive, found.Events), found.Car);
        }

        return WithCar(bumps, car is null || bumps.Drive.SpeedScale is null ? car : car with { SpeedScale = bumps.Drive.SpeedScale }, stop);
    }

    /// <summary>
    /// The same with the car near one that nearly the same bumps told before, within a moment; null where that one was not told or this one is not.
    /// </summary>
    /// <param name="bumps">All but the car.</param>
    /// <param name="former">The car told before, of the same log.</param>
    /// <param name="stop">Stops it.</param>
    internal static DriveAnswer? NearCar(DriveAnswer bumps, CarFromDrive? former, CancellationToken stop)
    {
        if (former is null || former.Mean.IsEmpty)
        {
            return null;
        }

        bumps = former.SpeedScale is { } scale ? AtTrueSpeed(bumps, scale, stop) : bumps;
        var car = DriveCarReading.Of(bumps.Asked.Settings, bumps.Drive, bumps.Trust, bumps.Events, bumps.Beside, stop, former);
        return car is null || car.Mean.IsEmpty ? null : bumps with { Identified = car with { SpeedScale = former.SpeedScale } };
    }

    /// <summary>The car alone; null where the log does not bear it.</summary>
    /// <param name="bumps">All but the car.</param>
    /// <param name="stop">Stops it.</param>
    internal static CarFromDrive? CarOf(DriveAnswer bumps, CancellationToken stop) =>
        DriveCarReading.Of(bumps.Asked.Settings, bumps.Drive, bumps.Trust, bumps.Events, bumps.Beside, stop);

    /// <summary>The same with its car, and with what is told by it.</summary>
    /// <param name="bumps">All but the car.</param>
    /// <param name="car">The car.</param>
    /// <param name="stop">Stops it.</param>
    internal static DriveAnswer WithCar(DriveAnswer bumps, CarFromDrive? car, CancellationToken stop)
    {
        if (car?.SpeedScale is { } scale && bumps.Drive.SpeedScale is null)
        {
            bumps = AtTrueSpeed(bumps, scale, stop);
        }

        var (asked, drive, events) = (bumps.Asked, bumps.Drive, bumps.Events);
        return bumps with
        {
            Identified = car,
            Detail = DriveDetail.Of(drive, bumps.Trust, events, bumps.Missed, car),
            Road = asked.Road is { } site ? DriveRecovery.Road(drive, events, car, site, stop) : null,
            Twin = asked is { WantsTwin: true, Car: { } file }
                ? DriveRecovery.Twin(file, asked.Settings, drive, bumps.Trust, events, car, stop)
                : null,
        };
    }

    private static DriveAnswer AtTrueSpeed(DriveAnswer bumps, SpeedScale scale, CancellationToken stop)
    {
        var drive = bumps.Drive.AtTrueSpeed(scale);
        return At(bumps, drive, DriveEvents.Of(drive, bumps.Trust, bumps.Asked.Settings, stop));
    }

    private static DriveAnswer At(DriveAnswer bumps, Drive drive, DriveEvents? events) =>
        bumps with { Drive = drive, Events = events, Missed = events is null ? [] : [.. MissedPass.Of(drive, events)] };

    private static DriveAsked? Read(AskedReader reader)
    {
        var written = DescribedDrive.Of(reader, Logs);
        var (car, given) = DriveChoices.Read(reader, written);
        var settings = DescribedDrive.Settings(written, given);
        var overrulings = new List<Overruling>();
        foreach (var words in reader.Texts(Take))
        {
            if (Overruling.Of(words, out var whyNot) is { } overruling)
            {
                if (overrulings.Exists(overruling.IsOfOneKind))
                {
                    reader.Object(Take.Name, $"take '{words}': {overruling.About} is taken otherwise twice; say it once.");
                }

                overrulings.Add(overruling);
            }
            else
            {
                reader.Object(Take.Name, $"take {whyNot}");
            }
        }

        var log = reader.IsRefused ? null : reader.Log(Logs, DescribedDrive.Taken(written, overrulings));
        if (log is not null)
        {
            InstantWords.Refuse(reader, DriveChoices.Site, log, "", given.Sites.Select(s => s.At));
            InstantWords.Refuse(reader, DriveChoices.Reject, log, "", given.Rejected);
            InstantWords.Refuse(reader, DriveChoices.Added, log, "", given.Added);
        }

        var twin = reader.IsTicked(DriveChoices.Twin);
        if (twin && reader.Given.Of(DriveChoices.Car) is null)
        {
            reader.Object(DriveChoices.Twin.Name, "twin: give --car, whose springs and dampers are to be scaled.");
        }

        return log is null || reader.IsRefused ? null : new DriveAsked
        {
            Log = log,
            Car = car,
            Settings = settings,
            Described = events => DescribedDrive.Said(written, reader.Given, given, overrulings, events),
            Road = reader.Text(DriveChoices.Road),
            WantsTwin = twin,
            WantsRoughness = reader.IsTicked(DriveChoices.Roughness),
            CarFile = (reader.Given.Of(DriveChoices.Car) ?? "").Split('/', '\\')[^1],
        };
    }
}
