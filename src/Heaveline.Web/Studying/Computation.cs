namespace Heaveline.Web.Studying;

/// <summary>
/// One long computation of a page: in the background, with the share done, an estimate of the time left, and a way to stop it. Starting another stops
/// the one before.
/// </summary>
public sealed class Computation(TimeProvider clock) : IDisposable
{
    // A reader sees no more than this many steps of a bar.
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(120);

    private readonly Lock gate = new();
    private CancellationTokenSource? stop;
    private long started;
    private long told;

    /// <summary>Told that <see cref="Share"/> has moved, from any thread.</summary>
    public event Action? Moved;

    /// <summary>Whether it is under way.</summary>
    public bool Running { get; private set; }

    /// <summary>Whether the reader stopped it before its end.</summary>
    public bool Stopped { get; private set; }

    /// <summary>Share done (–).</summary>
    public double Share { get; private set; }

    /// <summary>Time left by the pace so far, s; null while that says little.</summary>
    public double? SecondsLeft { get; private set; }

    /// <summary>Runs work to its end. What the work throws, but for its being stopped, is thrown here.</summary>
    /// <param name="work">The work; it tells its share done, rising to 1.</param>
    public async Task Run(Func<IProgress<double>, CancellationToken, Task> work)
    {
        CancellationTokenSource own;
        lock (gate)
        {
            stop?.Cancel();
            own = stop = new CancellationTokenSource();
            (Running, Stopped, Share, SecondsLeft) = (true, false, 0.0, null);
            (started, told) = (clock.GetTimestamp(), 0);
        }

        try
        {
            // A thread of its own: the pool's threads are left for what pages ask meanwhile.
            await Task.Factory
                .StartNew(() => work(new Teller(this, own), own.Token), own.Token, TaskCreationOptions.LongRunning, TaskScheduler.Default).Unwrap();
        }
        catch (OperationCanceledException) when (own.IsCancellationRequested)
        {
            // Stopped by the reader or by the next computation: there is nothing to say but that.
        }
        finally
        {
            lock (gate)
            {
                if (ReferenceEquals(stop, own))
                {
                    (Running, Stopped, stop) = (false, own.IsCancellationRequested, null);
                }
            }

            own.Dispose();
        }
    }

    /// <summary>Stops it.</summary>
    public void Cancel()
    {
        lock (gate)
        {
            stop?.Cancel();
        }
    }

    public void Dispose()
    {
        Moved = null;
        Cancel();
    }

    private void Tell(CancellationTokenSource teller, double share)
    {
        lock (gate)
        {
            if (!ReferenceEquals(stop, teller) || share < Share)
            {
                return;
            }

            Share = Math.Min(1.0, share);
            var now = clock.GetTimestamp();
            if (told != 0 && clock.GetElapsedTime(told, now) < Pause)
            {
                return;
            }

            told = now;
            var spent = clock.GetElapsedTime(started, now).TotalSeconds;
            SecondsLeft = Share > 0.03 ? spent * (1.0 - Share) / Share : null;
        }

        Moved?.Invoke();
    }

    private sealed class Teller(Computation computation, CancellationTokenSource source) : IProgress<double>
    {
        public void Report(double value) => computation.Tell(source, value);
    }
}
