using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Drives;

/// <summary>
/// Reads drives of the garage and answers what they say. What was read of a log lately is kept: what a reader changes about a drive is mostly not its
/// log, and bumps alone are then looked for anew.
/// </summary>
internal sealed class DriveReadings(GarageView garage) : IDisposable
{
    private const int Capacity = 8;
    private readonly AnswerCache<DriveAnswer> read = new(Capacity);
    private readonly Lock only = new();

    /// <summary>The study of one drive.</summary>
    /// <param name="queue">A queue of what is short.</param>
    public PageStudy<DriveSource, DriveAnswer, DriveView> StudyIn(StudyQueue queue) => new(Answer, DriveView.Of, queue, Capacity);

    /// <summary>The study of a drive and of the one before the change.</summary>
    /// <param name="queue">A queue of what is short.</param>
    public PageStudy<DriveSource, ProveAnswer, ProofView> ProofIn(StudyQueue queue) => new(Prove, ProofView.Of, queue, Capacity);

    /// <summary>What a drive says.</summary>
    /// <param name="source">The drive as it lies in the garage.</param>
    /// <param name="run">How it is run.</param>
    /// <exception cref="LogRefusedException">Its files hold no log that can be read.</exception>
    /// <exception cref="Heaveline.Quantities.RefusedValueException">Gravity is missing, or nothing of the log is long enough.</exception>
    public DriveAnswer Answer(DriveSource source, StudyRun run)
    {
        var (known, isNew) = Read(source, run);
        if (isNew)
        {
            return known;
        }

        // What is asked of the log itself does not depend on what was written down.
        var asked = new DriveAsked { Log = known.Asked.Log, Car = source.Car, Settings = source.Settings };
        return known with
        {
            Asked = asked,
            Events = known.Events is null ? null : DriveEvents.Of(known.Drive, known.Trust, asked.Settings, run.Cancellation),
        };
    }

    public void Dispose() => read.Dispose();

    // One at a time: two questions about one drive come together, and both need its log.
    private (DriveAnswer Answer, bool IsNew) Read(DriveSource source, StudyRun run)
    {
        lock (only)
        {
            if (read.Find(source.LogKey) is { } known)
            {
                return (known, false);
            }

            var reading = garage.Garage.Drives.Log(source.Folder, run.Cancellation);
            var log = reading.Log ?? throw new LogRefusedException(reading.Refusals);
            run.Progress?.Report(0.2);
            var answer = DriveStudy.Run(new DriveAsked { Log = log, Car = source.Car, Settings = source.Settings }, run);
            read.Keep(source.LogKey, answer);
            return (answer, true);
        }
    }

    private ProveAnswer Prove(DriveSource source, StudyRun run)
    {
        var (before, after) = (Answer(source.Before!, run), Answer(source, run));
        var asked = new ProveAsked
        {
            Before = before.Asked.Log, After = after.Asked.Log, OfBefore = before.Asked.Settings, OfAfter = after.Asked.Settings,
        };
        return ProveStudy.Of(asked, Proved(before), Proved(after));
    }

    private static ProvedDrive Proved(DriveAnswer answer) => new(answer.Drive, answer.Trust, answer.Events ?? new DriveEvents
    {
        Events = [], Sites = [], Settings = answer.Asked.Settings, HasSpeed = !answer.Drive.Speed.IsEmpty,
    });
}
