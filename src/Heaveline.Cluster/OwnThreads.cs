using System.Collections.Concurrent;

namespace Heaveline.Cluster;

/// <summary>
/// Threads of their own, below normal priority, for what computes: on the common ones it would keep this machine from answering the others in time,
/// and they would take it for dead.
/// </summary>
internal sealed class OwnThreads : IDisposable
{
    private readonly BlockingCollection<Action> queue = [];

    /// <param name="count">How many.</param>
    public OwnThreads(int count)
    {
        for (var k = 0; k < count; k++)
        {
            new Thread(() =>
            {
                foreach (var work in queue.GetConsumingEnumerable())
                {
                    work();
                }
            })
            {
                IsBackground = true, Priority = ThreadPriority.BelowNormal,
            }.Start();
        }
    }

    /// <summary>Has something worked out there.</summary>
    public Task<T> Run<T>(Func<T> work)
    {
        var done = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        queue.Add(() =>
        {
            try
            {
                done.SetResult(work());
            }
            catch (Exception failure)
            {
                done.SetException(failure);
            }
        });
        return done.Task;
    }

    /// <inheritdoc/>
    public void Dispose() => queue.CompleteAdding();
}
