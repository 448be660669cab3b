using System.Diagnostics;

namespace Heaveline.Cli.Output;

/// <summary>One line that says how far a long command is, from the second second on; nothing when the output is piped.</summary>
internal sealed class Progress(Streams streams, string what, int total) : IProgress<double>, IDisposable
{
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private readonly Lock turn = new();
    private int done;
    private bool shown;

    /// <summary>The share done, from any thread.</summary>
    public void Report(double value)
    {
        lock (turn)
        {
            // Threads may report out of order.
            done = Math.Max(done, (int)(value * total));
            Show();
        }
    }

    public void Dispose()
    {
        if (shown)
        {
            streams.Remarks.Write("\r" + new string(' ', what.Length + 40) + "\r");
        }
    }

    // From the share done in the time so far; before two seconds and a twentieth of the work nothing can be said.
    private string Left => clock.Elapsed.TotalSeconds > 2.0 && done > total / 20 && done < total
        ? $", about {clock.Elapsed.TotalSeconds * (total - done) / done:F0} s left   "
        : "";

    private void Show()
    {
        if (streams.Interactive && clock.Elapsed.TotalSeconds > 1.0)
        {
            shown = true;
            streams.Remarks.Write($"\r{what}: {done} of {total}, {clock.Elapsed.TotalSeconds:F0} s{Left}");
        }
    }
}
