namespace Heaveline.Roads;

/// <summary>How often a loop over millions of points looks whether it is to stop.</summary>
internal static class Pause
{
    // Each turn of these loops takes some nanoseconds up to a microsecond.
    private const int Every = 1 << 14;

    /// <summary>At turn <paramref name="i"/> of a loop.</summary>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static void At(int i, CancellationToken stop)
    {
        if (i % Every == 0)
        {
            stop.ThrowIfCancellationRequested();
        }
    }
}
