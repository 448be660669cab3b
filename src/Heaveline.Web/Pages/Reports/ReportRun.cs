using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Web.Pages.Reports;

/// <summary>The making of a report as a page shows it: waiting, how far it is, stopped, failed.</summary>
/// <param name="desk">Where reports are made.</param>
public sealed class ReportRun(ReportDesk desk) : IProgress<double>, IDisposable
{
    private CancellationTokenSource? stop;

    /// <summary>Told after every step, from any thread.</summary>
    public event Action? Moved;

    /// <summary>Whether it is being made, or waits to be.</summary>
    public bool Running => stop is not null;

    /// <summary>Whether another report is made first.</summary>
    public bool Waits { get; private set; }

    /// <summary>Whether the reader stopped the last one.</summary>
    public bool Stopped { get; private set; }

    /// <summary>Share done (–).</summary>
    public double Share { get; private set; }

    /// <summary>Why the last one could not be made; null when it could.</summary>
    public string? Failure { get; private set; }

    /// <summary>Makes a report.</summary>
    /// <returns>The report; null when it was stopped or could not be made.</returns>
    public async Task<MadeReport?> Make(ReportQuestion question)
    {
        using var mine = new CancellationTokenSource();
        stop = mine;
        (Waits, Stopped, Share, Failure) = (false, false, 0.0, null);
        try
        {
            return await desk.Make(question, Wait, this, mine.Token);
        }
        catch (OperationCanceledException) when (mine.IsCancellationRequested)
        {
            Stopped = true;
            return null;
        }
        catch (Exception e) when (e is RefusedValueException or RunFailedException or TooManyReportsException)
        {
            Failure = e.Message;
            return null;
        }
        finally
        {
            stop = null;
            Waits = false;
        }
    }

    /// <summary>Stops it.</summary>
    public void Cancel() => stop?.Cancel();

    /// <summary>Told by the work how far it is.</summary>
    public void Report(double value)
    {
        Share = value;
        Moved?.Invoke();
    }

    /// <summary>Stops it: nobody looks any more.</summary>
    public void Dispose() => Cancel();

    private void Wait(bool waits)
    {
        Waits = waits;
        Moved?.Invoke();
    }
}
