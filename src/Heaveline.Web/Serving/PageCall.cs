using Microsoft.JSInterop;

namespace Heaveline.Web.Serving;

/// <summary>
/// The door for calls into the browser. A page may go at any moment, while a call waits for its answer too: its circuit is then cut, its waiting
/// calls are cancelled, and what it held is put away. Nothing is left to be told then, and nobody to tell it to.
/// </summary>
internal static class PageCall
{
    /// <summary>Makes calls for as long as the page is there.</summary>
    /// <param name="calls">The calls, with what follows on their answers.</param>
    public static async Task WhileThere(Func<Task> calls)
    {
        try
        {
            await calls();
        }
        catch (Exception ended) when (IsGone(ended))
        {
            // The page is gone.
        }
    }

    /// <summary>Whether something ended because the page is gone.</summary>
    /// <param name="ended">What was thrown.</param>
    public static bool IsGone(Exception ended) => ended is JSDisconnectedException or OperationCanceledException or ObjectDisposedException;
}
