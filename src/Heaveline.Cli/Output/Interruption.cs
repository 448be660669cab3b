using System.Runtime.InteropServices;

namespace Heaveline.Cli.Output;

/// <summary>
/// Ctrl+C and the request to end, as a token that stops the work. Work that does not see the token, held in a call of the system for instance, ends
/// with the program after a moment's grace; a second request ends it at once.
/// </summary>
internal sealed class Interruption : IDisposable
{
    // Long enough for any loop to see the token and for the pages to say goodbye.
    private static readonly TimeSpan Usual = TimeSpan.FromSeconds(2);

    private readonly CancellationTokenSource source = new();
    private readonly Action<int> ends;
    private readonly Func<TimeSpan>? grace;
    private readonly PosixSignalRegistration[] heard;
    private Timer? patience;
    private int asked;

    /// <summary>Listens from now on.</summary>
    /// <param name="ends">Ends the program with an exit code, whatever it is doing.</param>
    /// <param name="grace">How long work may take to its end after the first request; null: two seconds.</param>
    public Interruption(Action<int> ends, Func<TimeSpan>? grace = null)
    {
        (this.ends, this.grace) = (ends, grace);
        heard = [PosixSignalRegistration.Create(PosixSignal.SIGINT, Ask), PosixSignalRegistration.Create(PosixSignal.SIGTERM, Ask)];
    }

    /// <summary>Cancelled by the first request.</summary>
    public CancellationToken Token => source.Token;

    /// <inheritdoc/>
    public void Dispose()
    {
        foreach (var registration in heard)
        {
            registration.Dispose();
        }

        patience?.Dispose();
    }

    /// <summary>What a request does.</summary>
    internal void Ask()
    {
        if (Interlocked.Increment(ref asked) > 1)
        {
            ends(ExitCode.NotComputed);
            return;
        }

        patience = new Timer(_ => ends(ExitCode.NotComputed), null, grace?.Invoke() ?? Usual, Timeout.InfiniteTimeSpan);
        source.Cancel();
    }

    private void Ask(PosixSignalContext signal)
    {
        // Else the runtime would end the program itself.
        signal.Cancel = true;
        Ask();
    }
}
