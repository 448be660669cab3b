using Microsoft.Extensions.Hosting;

namespace Heaveline.Cluster;

/// <summary>Ends a machine of a cluster without waiting for those that are gone already.</summary>
internal static class Ending
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3.0);

    /// <summary>Ends it.</summary>
    /// <param name="host">The machine.</param>
    /// <param name="last">What is done before what it holds is let go.</param>
    public static async Task Of(IHost host, Func<Task> last)
    {
        using var patience = new CancellationTokenSource(Patience);
        await Tried(() => host.StopAsync(patience.Token).WaitAsync(Patience + Patience)).ConfigureAwait(false);
        await Tried(() => last().WaitAsync(Patience)).ConfigureAwait(false);
        await Tried(() => Task.Run(host.Dispose).WaitAsync(Patience)).ConfigureAwait(false);
    }

    private static async Task Tried(Func<Task> step)
    {
        try
        {
            await step().ConfigureAwait(false);
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            // Those whom it would tell that it goes have gone; what it did is done, and nobody is told of how it ended. The next step is taken still.
        }
    }
}
