namespace Heaveline.Web.Pages.Parts;

/// <summary>One long computation at a time for all pages together: each uses every core, and two would only be in each other's way.</summary>
internal sealed class Turn : IDisposable
{
    private readonly SemaphoreSlim free = new(1, 1);

    /// <summary>Waits for the turn, does the work, and gives the turn back.</summary>
    public async Task<T> Take<T>(Func<T> work, CancellationToken cancellation)
    {
        await free.WaitAsync(cancellation).ConfigureAwait(false);
        try
        {
            cancellation.ThrowIfCancellationRequested();
            return work();
        }
        finally
        {
            free.Release();
        }
    }

    public void Dispose() => free.Dispose();
}
