using Heaveline.Press;
using Heaveline.Reports;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Reports;

/// <summary>Makes reports, one at a time for the whole program, and keeps the last few: what is looked at is mostly taken away a moment later.</summary>
public sealed class ReportDesk : IDisposable
{
    private const int MostKept = 4;
    private const int MostWaiting = 4;

    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly SemaphoreSlim press = new(1, 1);
    private readonly AnswerCache<MadeReport> kept = new(MostKept);
    private int inside;

    /// <summary>A report that was made before; null when there is none, or it was forgotten.</summary>
    public MadeReport? Find(string key) => kept.Find(key);

    /// <summary>Makes a report, or finds it made.</summary>
    /// <param name="question">A question without objections.</param>
    /// <param name="waits">Told true when another report is being made first, and false when this one's turn has come.</param>
    /// <param name="progress">Told the share done (–).</param>
    /// <param name="stop">Ends the wait and the work.</param>
    /// <exception cref="TooManyReportsException">Too many wait already.</exception>
    public async Task<MadeReport> Make(ReportQuestion question, Action<bool>? waits, IProgress<double>? progress, CancellationToken stop)
    {
        if (Find(question.Key) is { } known)
        {
            return known;
        }

        if (Interlocked.Increment(ref inside) > MostWaiting + 1)
        {
            Interlocked.Decrement(ref inside);
            throw new TooManyReportsException();
        }

        try
        {
            if (!await turn.WaitAsync(TimeSpan.Zero, stop))
            {
                waits?.Invoke(true);
                await turn.WaitAsync(stop);
                waits?.Invoke(false);
            }

            try
            {
                return Find(question.Key) ?? await Task.Run(() => Compute(question, progress, stop), stop);
            }
            finally
            {
                turn.Release();
            }
        }
        finally
        {
            Interlocked.Decrement(ref inside);
        }
    }

    /// <summary>The PDF of a report that is made; one is set in type at a time.</summary>
    public async Task<byte[]> Pdf(MadeReport made, ReportChoices choices, PaperSize paper, CancellationToken stop)
    {
        await press.WaitAsync(stop);
        try
        {
            return await Task.Run(() => made.Pdf(choices, paper), stop);
        }
        finally
        {
            press.Release();
        }
    }

    /// <summary>Lets go of its turns.</summary>
    public void Dispose()
    {
        turn.Dispose();
        press.Dispose();
        kept.Dispose();
    }

    private MadeReport Compute(ReportQuestion question, IProgress<double>? progress, CancellationToken stop)
    {
        var report = Report.From(question.Html!, progress, stop);
        var made = new MadeReport(question.Key, report, Html.Of(report));
        kept.Keep(made.Key, made);
        return made;
    }
}
