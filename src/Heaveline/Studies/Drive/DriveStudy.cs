using Heaveline.Drives;
using Heaveline.Drives.Events;

namespace Heaveline.Studies;

/// <summary>What the log of a drive is good for, and what is read off it.</summary>
public static class DriveStudy
{
    private static readonly Choice Logs = new()
    {
        Name = "log",
        Kind = ChoiceKind.Log,
        Says = "What a phone or a logger wrote: files (.csv, .txt), a folder of them, a .zip; several belong to one drive.",
        IsArgument = true,
        IsNeeded = true,
        Range = (1, 64),
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<DriveAsked, DriveAnswer> Question { get; } = new()
    {
        Word = "drive",
        Says =
            """
            Say what the log of a drive is good for (how its files were read, how the phone lay, which faults it has), find its bumps,
            bring them to sites, measure each in the words of 'pass', and weigh the floor's vibration.

            Examples:
              heaveline drive trip.csv
              heaveline drive drive.zip --figure strip.pdf
              heaveline drive trip.csv --wheelbase "2.70 m" --phone "1.45 m behind front axle" --site "chapel: 84 s, 141 s" --csv bumps.csv
              heaveline drive trip.csv --draw events --figure bumps.pdf
              heaveline drive Accelerometer.csv Gyroscope.csv Location.csv --json
            """,
        Choices = [Logs, .. DriveChoices.All],
        Draws = new Choice
        {
            Name = "draw",
            Kind = ChoiceKind.Word,
            Says = "What the figure shows: strip (the whole drive), events (the bumps of each site over time, one over the other), "
                + "distance (the same over distance) or spectra (of bumps, and of the road between).",
            HelpName = "WHAT",
            Usual = DriveAnswer.Strip,
            Words = [DriveAnswer.Strip, DriveAnswer.Overlay, DriveAnswer.Distance, DriveAnswer.Spectra],
            WordIs = "figure of a drive",
        },
        CsvSays = "Write the bumps to FILE, a row each.",
        IsShortened = true,
        Reads = Read,
        Answers = Run,
    };

    /// <summary>Puts the log on the car's axes, judges it, and reads off it what it bears.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="Quantities.RefusedValueException">Gravity is missing, or nothing of the log is long enough.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DriveAnswer Run(DriveAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var drive = Drives.Drive.Of(asked.Log, run.Cancellation);
        run.Progress?.Report(0.5);
        var trust = Trust.Of(drive, run.Cancellation);
        run.Progress?.Report(0.7);
        var events = trust.For(TrustUse.Events).Level == TrustLevel.None ? null : DriveEvents.Of(drive, trust, asked.Settings, run.Cancellation);
        run.Progress?.Report(0.9);
        var comfort = DriveComfort.Of(drive, trust, run.Cancellation);
        run.Progress?.Report(1.0);
        return new DriveAnswer { Asked = asked, Drive = drive, Trust = trust, Events = events, Comfort = comfort };
    }

    private static DriveAsked? Read(AskedReader reader)
    {
        var (car, settings) = DriveChoices.Read(reader);
        var log = reader.Log(Logs);
        return log is null || reader.IsRefused ? null : new DriveAsked { Log = log, Car = car, Settings = settings };
    }
}
