using Microsoft.Extensions.Hosting;

namespace Heaveline.Cluster;

/// <summary>Ends a machine of a cluster without waiting for those that are gone already.</summary>
internal static class Ending
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(3.0);

    /// <summary>Ends it.</summary>
    public static async Task Of(IHost host)
    {
        using var patience = new CancellationTokenSource(Patience);
        try
        {
            await host.StopAsync(patience.Token).WaitAsync(Patience + Patience).ConfigureAwait(false);
            host.Dispose();
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            // Those whom it would tell that it goes have gone; what it did is done, and nobody is told of how it ended.
        }
    }
}
