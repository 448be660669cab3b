using Heaveline.Quantities;
using Heaveline.Web.Studying;

namespace Heaveline.Web.Pages.Reports;

/// <summary>The making of a report as a page shows it: waiting, how far it is, stopped, failed.</summary>
public sealed class ReportRun : IDisposable
{
    private readonly MadeReports reports;

    internal ReportRun(MadeReports reports)
    {
        this.reports = reports;
        Work.Moved += () => Moved?.Invoke();
    }

    /// <summary>Told after every step, from any thread.</summary>
    public event Action? Moved;

    /// <summary>The work under way.</summary>
    public Computation Work { get; } = new(TimeProvider.System);

    /// <summary>Whether another report is made first.</summary>
    public bool Waits { get; private set; }

    /// <summary>Why the last one could not be made; null when it could.</summary>
    public string? Failure { get; private set; }

    /// <summary>Makes a report.</summary>
    /// <returns>The report; null when it was stopped or could not be made.</returns>
    public async Task<MadeReport?> Make(ReportQuestion question)
    {
        MadeReport? made = null;
        (Waits, Failure) = (false, null);
        try
        {
            await Work.Run(async (progress, stop) => made = await reports.Make(
                question,
                waits =>
                {
                    Waits = waits;
                    Moved?.Invoke();
                },
                progress,
                stop));
        }
        catch (NoAnswerException e)
        {
            Failure = e.Message;
        }

        return made;
    }

    /// <summary>Stops it: nobody looks any more.</summary>
    public void Dispose() => Work.Dispose();
}
