using Heaveline.Drives;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Drives;

/// <summary>
/// Reads drives of the garage and answers what they say. Logs that were read lately are kept: what is changed about a drive is mostly not its log.
/// </summary>
internal sealed class DriveReadings(GarageView garage) : IDisposable
{
    private const int Capacity = 8;
    private readonly AnswerCache<Log> logs = new(Capacity);

    /// <summary>The study behind the page.</summary>
    /// <param name="queue">A queue of what is short.</param>
    public PageStudy<DriveSource, DriveAnswer, DriveView> StudyIn(StudyQueue queue) => new(Answer, DriveView.Of, queue, Capacity);

    /// <summary>What a drive says.</summary>
    /// <param name="source">The drive as it lies in the garage.</param>
    /// <param name="run">How it is run.</param>
    /// <exception cref="LogRefusedException">Its files hold no log that can be read.</exception>
    /// <exception cref="Heaveline.Quantities.RefusedValueException">Gravity is missing, or nothing of the log is long enough.</exception>
    public DriveAnswer Answer(DriveSource source, StudyRun run)
    {
        var log = Log(source, run.Cancellation);
        run.Progress?.Report(0.3);
        return DriveStudy.Run(new DriveAsked { Log = log }, run);
    }

    public void Dispose() => logs.Dispose();

    private Log Log(DriveSource source, CancellationToken stop)
    {
        var key = $"{source.Folder}\u001f{source.Look}";
        if (logs.Find(key) is { } known)
        {
            return known;
        }

        var reading = garage.Garage.Drives.Log(source.Folder, stop);
        var log = reading.Log ?? throw new LogRefusedException(reading.Refusals);
        logs.Keep(key, log);
        return log;
    }
}
