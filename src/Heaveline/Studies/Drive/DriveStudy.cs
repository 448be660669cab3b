using Heaveline.Drives;

namespace Heaveline.Studies;

/// <summary>What the log of a drive is good for, before anything is read off it.</summary>
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
            Say what the log of a drive is good for: how its files were read, how evenly it was sampled, how the phone lay, which faults it has.

            Examples:
              heaveline drive trip.csv
              heaveline drive drive.zip --figure strip.pdf
              heaveline drive Accelerometer.csv Gyroscope.csv Location.csv --json
            """,
        Choices = [Logs],
        Reads = reader => reader.Log(Logs) is { } log && !reader.IsRefused ? new DriveAsked { Log = log } : null,
        Answers = Run,
    };

    /// <summary>Puts the log on the car's axes and judges it.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly.</param>
    /// <exception cref="Quantities.RefusedValueException">Gravity is missing, or nothing of the log is long enough.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static DriveAnswer Run(DriveAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var drive = Drives.Drive.Of(asked.Log, run.Cancellation);
        run.Progress?.Report(0.6);
        var trust = Trust.Of(drive, run.Cancellation);
        run.Progress?.Report(1.0);
        return new DriveAnswer { Asked = asked, Drive = drive, Trust = trust };
    }
}
