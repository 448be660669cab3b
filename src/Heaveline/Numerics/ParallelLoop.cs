using System.Runtime.ExceptionServices;

namespace Heaveline.Numerics;

/// <summary>
/// Independent work, several pieces at once. What a piece throws comes out as it was thrown, as from a loop of one after another: that of the first
/// piece by number, however the pieces fell on the cores.
/// </summary>
internal static class ParallelLoop
{
    /// <summary>Does the pieces on all cores.</summary>
    /// <param name="count">How many pieces.</param>
    /// <param name="piece">Given each number from 0.</param>
    public static void Each(int count, Action<int> piece) => Each(count, -1, piece, CancellationToken.None);

    /// <summary>Does the pieces on some cores.</summary>
    /// <param name="count">How many pieces.</param>
    /// <param name="degree">Most pieces at once; −1: as many as there are cores.</param>
    /// <param name="piece">Given each number from 0.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static void Each(int count, int degree, Action<int> piece, CancellationToken cancellation) =>
        Each(count, degree, () => 0, (i, _) => piece(i), _ => { }, cancellation);

    /// <summary>The same with something that the pieces done one after another on one core have in common.</summary>
    /// <param name="count">How many pieces.</param>
    /// <param name="degree">Most pieces at once; −1: as many as there are cores.</param>
    /// <param name="first">Makes what they have in common.</param>
    /// <param name="piece">Given each number from 0, and what is in common.</param>
    /// <param name="last">Lets go of what was in common.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static void Each<TOwn>(
        int count, int degree, Func<TOwn> first, Action<int, TOwn> piece, Action<TOwn> last, CancellationToken cancellation)
    {
        var only = new Lock();
        var (at, thrown) = (int.MaxValue, (ExceptionDispatchInfo?)null);
        var options = new ParallelOptions { MaxDegreeOfParallelism = degree, CancellationToken = cancellation };
        Parallel.For(0, count, options, first, (i, loop, own) =>
        {
            try
            {
                piece(i, own);
            }
            catch (Exception failure)
            {
                lock (only)
                {
                    if (i < at)
                    {
                        (at, thrown) = (i, ExceptionDispatchInfo.Capture(failure));
                    }
                }

                // All before it are still done, so that the first to throw is found.
                loop.Break();
            }

            return own;
        }, last);
        thrown?.Throw();
    }
}
