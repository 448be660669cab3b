namespace Heaveline.Passes;

/// <summary>
/// A stretch of a run for which the road is read at once. A table of the whole road would grow with the number of steps: a car that forces steps of
/// a microsecond would fill gigabytes.
/// </summary>
/// <param name="From">First recorded sample.</param>
/// <param name="Outputs">Number of recorded samples.</param>
/// <param name="First">Step of the run at which its table begins.</param>
/// <param name="Length">Number of steps in its table; 0 where the road is level throughout.</param>
internal readonly record struct RoadBlock(int From, int Outputs, int First, int Length)
{
    // Half a megabyte for one car: it stays in the cache between reading and stepping.
    private const int Steps = 8192;

    /// <summary>Quads that the longest table of a run needs.</summary>
    public static int TableLength(PassTiming timing) => 2 * OutputsOf(timing) * timing.StepsPerSample;

    /// <summary>The stretches of a run, one after the other.</summary>
    /// <param name="timing">Its clock.</param>
    /// <param name="first">The first step at which a wheel may be off the level.</param>
    /// <param name="last">The first step from which all wheels are on the last level.</param>
    public static IEnumerable<RoadBlock> Of(PassTiming timing, int first, int last)
    {
        var outputs = OutputsOf(timing);
        for (var from = 0; from < timing.Samples; from += outputs)
        {
            var here = Math.Min(outputs, timing.Samples - from);
            // Empty before the road begins, where the first step still lies ahead, and once it has ended.
            var begin = Math.Max(first, from * timing.StepsPerSample);
            var end = Math.Min(last, (from + here) * timing.StepsPerSample);
            yield return new RoadBlock(from, here, begin, Math.Max(0, end - begin));
        }
    }

    private static int OutputsOf(PassTiming timing) => Math.Clamp(Steps / timing.StepsPerSample, 1, timing.Samples);
}
