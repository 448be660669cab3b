using System.Diagnostics;

namespace Heaveline.Cli.Output;

/// <summary>One line that says how far a long command is, from the second second on; nothing when the output is piped.</summary>
internal sealed class Progress(Streams streams, string what, int total) : IDisposable
{
    private readonly Stopwatch clock = Stopwatch.StartNew();
    private int done;
    private bool shown;

    public void Step()
    {
        done++;
        if (streams.Interactive && clock.Elapsed.TotalSeconds > 1.0)
        {
            shown = true;
            streams.Remarks.Write($"\r{what}: {done} of {total}, {clock.Elapsed.TotalSeconds:F0} s");
        }
    }

    public void Dispose()
    {
        if (shown)
        {
            streams.Remarks.Write("\r" + new string(' ', what.Length + 40) + "\r");
        }
    }
}
