using System.Threading.RateLimiting;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Studying;

/// <summary>
/// Long computations one after the other for all readers together: each uses every core, and two would only be in each other's way.
/// </summary>
/// <param name="atOnce">How many run at once.</param>
/// <param name="mostWaiting">How many may wait.</param>
internal sealed class StudyQueue(int atOnce = 1, int mostWaiting = 64) : IDisposable
{
    private readonly ConcurrencyLimiter limiter = new(
        new ConcurrencyLimiterOptions { PermitLimit = atOnce, QueueLimit = mostWaiting, QueueProcessingOrder = QueueProcessingOrder.OldestFirst });

    /// <summary>Whether whoever comes now must wait.</summary>
    public bool IsFull => limiter.GetStatistics() is { CurrentAvailablePermits: 0 };

    /// <summary>Waits for its turn, does the work, and gives the turn back.</summary>
    /// <exception cref="QueueFullException">Too many wait already.</exception>
    public async Task<T> Run<T>(Func<T> work, CancellationToken cancellation)
    {
        using var turn = await limiter.AcquireAsync(1, cancellation).ConfigureAwait(false);
        if (!turn.IsAcquired)
        {
            throw new QueueFullException();
        }

        cancellation.ThrowIfCancellationRequested();
        return work();
    }

    public void Dispose() => limiter.Dispose();
}
