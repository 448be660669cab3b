using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Drives.Identification;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>One of two drives that are compared.</summary>
/// <param name="Drive">The drive on the car's axes.</param>
/// <param name="Trust">What its log is good for.</param>
/// <param name="Events">Its bumps.</param>
public sealed record ProvedDrive(Drive Drive, Trust Trust, DriveEvents Events)
{
    /// <summary>The car file of the car that was driven, under its load; null: none.</summary>
    internal LoadedCar? File { get; init; }

    /// <summary>The car that it tells, where that is known already; null: it is worked out where it is asked for.</summary>
    internal CarFromDrive? Car { get; init; }

    /// <summary>By how much its speed may still be off; null where nothing tells it.</summary>
    internal SpeedScale? Left { get; init; }

    /// <summary>Reads a log.</summary>
    /// <param name="log">The log.</param>
    /// <param name="settings">What is known of the drive.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="RefusedValueException">Gravity is missing, or nothing of the log is long enough.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static ProvedDrive Of(Log log, EventSettings settings, CancellationToken stop)
    {
        var drive = Drive.Of(log, stop);
        var trust = Trust.Of(drive, stop);
        return new ProvedDrive(drive, trust, DriveEvents.Of(drive, trust, settings, stop));
    }

    /// <summary>A drive that has been answered already, with the car that it told.</summary>
    /// <param name="answer">What it says.</param>
    internal static ProvedDrive Of(DriveAnswer answer) => new(answer.Drive, answer.Trust, answer.Events ?? new DriveEvents
    {
        Events = [], Sites = [], Settings = answer.Asked.Settings, HasSpeed = !answer.Drive.Speed.IsEmpty,
    })
    {
        File = answer.Asked.Car,
        Car = answer.Identified,
    };

    /// <summary>Refuses a drive whose log shows no pitch.</summary>
    /// <param name="name">Which drive it is: before, after.</param>
    /// <exception cref="RefusedValueException">It shows none.</exception>
    internal void CheckPitch(string name)
    {
        var verdict = Trust.For(TrustUse.Events);
        if (verdict.Level == TrustLevel.None || Drive.PitchRate.IsEmpty)
        {
            throw new RefusedValueException($"the log {name} the change", "without pitch", "a log that shows it", verdict.Reason);
        }
    }

    /// <summary>
    /// The same at the speed that the delay between the axles tells, where the log's is off and the wheelbase is known; else
    /// with what is known of it. The car that is fitted on the way stays with it.
    /// </summary>
    /// <param name="stop">Stops it.</param>
    internal ProvedDrive AtTrueSpeed(CancellationToken stop)
    {
        if (Drive.Speed.IsEmpty || Events.Events.IsEmpty)
        {
            return this;
        }

        var settings = Events.Settings with { Wheelbase = Events.Settings.WheelbaseTaken };
        var car = Car is { Windows.IsEmpty: false } ? Car : Fitted(Drive, Events, settings, stop);
        if (Events.Settings.Wheelbase is null)
        {
            // Of the usual wheelbase: it says how the record stands, but no car.
            return this with { Left = car is null ? null : SpeedScale.Of(car, Events) };
        }

        var found = TrueSpeed.Of(Drive, Trust, Events, car, (drive, events) => Fitted(drive, events, settings, stop), stop);
        return this with { Drive = found.Drive, Events = found.Events, Left = found.Left, Car = found.Car };
    }

    /// <summary>The car that it tells, by all of its bumps; null where its log does not bear one.</summary>
    /// <param name="stop">Stops it.</param>
    internal CarFromDrive? CarOf(CancellationToken stop) => Car ?? Fitted(Drive, Events, Events.Settings, stop);

    private CarFromDrive? Fitted(Drive drive, DriveEvents events, EventSettings settings, CancellationToken stop) =>
        DriveCarReading.Of(settings, drive, Trust, events, File is null ? null : CarBeside.Of(File), stop);
}
