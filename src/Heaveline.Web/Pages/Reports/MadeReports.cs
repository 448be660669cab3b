using Heaveline.Press;
using Heaveline.Press.Paper;
using Heaveline.Reports;
using Heaveline.Studies;
using Heaveline.Web.Serving;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Reports;

/// <summary>
/// Makes reports, one at a time for the whole program, and keeps the last few: what is looked at is mostly taken away a moment later.
/// </summary>
internal sealed class MadeReports : IDisposable
{
    private const int Capacity = 4;
    private const int MostWaiting = 4;

    private readonly StudyQueue queue = new(mostWaiting: MostWaiting);
    private readonly StudyQueue press = new();
    private readonly AnswerCache<MadeReport> cache = new(Capacity);

    /// <summary>A report that was made before; null when there is none, or it was forgotten.</summary>
    public MadeReport? Find(string key) => cache.Find(key);

    /// <summary>Makes a report, or finds it made.</summary>
    /// <param name="question">A question without objections.</param>
    /// <param name="waits">Told true when another report is being made first, and false when this one's turn has come.</param>
    /// <param name="progress">Told the share done (–).</param>
    /// <param name="stop">Ends the wait and the work.</param>
    /// <exception cref="QueueFullException">Too many wait already.</exception>
    public async Task<MadeReport> Make(ReportQuestion question, Action<bool>? waits, IProgress<double>? progress, CancellationToken stop)
    {
        if (Find(question.Key) is { } known)
        {
            return known;
        }

        if (queue.IsFull)
        {
            waits?.Invoke(true);
        }

        return await Task.Run(
            () => queue.Run(
                () =>
                {
                    waits?.Invoke(false);
                    return Find(question.Key) ?? Compute(question, progress, stop);
                },
                stop),
            stop);
    }

    /// <summary>The PDF of a report that is made; one is set in type at a time.</summary>
    public Task<byte[]> Pdf(MadeReport made, ReportAsked asked, PaperSize paper, CancellationToken stop) =>
        Task.Run(() => press.Run(() => made.Pdf(asked, paper), stop), stop);

    /// <summary>Lets go of its queue.</summary>
    public void Dispose()
    {
        queue.Dispose();
        press.Dispose();
        cache.Dispose();
    }

    private MadeReport Compute(ReportQuestion question, IProgress<double>? progress, CancellationToken stop)
    {
        var report = Report.From(question.Html!, new StudyRun { Progress = progress, Cancellation = stop, Degree = Environment.ProcessorCount });
        var made = new MadeReport(question.Key, report, Html.Of(report));
        cache.Keep(made.Key, made);
        return made;
    }
}
