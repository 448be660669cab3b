using System.Collections.Concurrent;
using System.Globalization;

namespace Heaveline.Bench;

/// <summary>Planted things by their numbers: which a command asks for, and two of them at once.</summary>
internal static class PlantedRuns
{
    private const int AtOnce = 2;

    /// <summary>A whole number of a command.</summary>
    /// <param name="args">What stands behind the command.</param>
    /// <param name="at">Its place there.</param>
    /// <param name="otherwise">What it is where nothing stands there.</param>
    public static long Argument(string[] args, int at, long otherwise) =>
        args.Length > at ? long.Parse(args[at], CultureInfo.InvariantCulture) : otherwise;

    /// <summary>Runs <c>[count [first]]</c> of them.</summary>
    /// <param name="args">What stands behind the command.</param>
    /// <param name="count">How many where it is not said.</param>
    /// <param name="run">What is done with a number.</param>
    public static void Each(string[] args, int count, Action<int> run) => Parallel.ForEach(
        Partitioner.Create(
            Enumerable.Range((int)Argument(args, 1, 0), (int)Argument(args, 0, count)), EnumerablePartitionerOptions.NoBuffering),
        new ParallelOptions { MaxDegreeOfParallelism = AtOnce },
        run);
}
