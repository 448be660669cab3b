using Heaveline.Responses;

namespace Heaveline.Insight;

/// <summary>Measures of many passes, side by side in lanes and groups of lanes at once. Only the numbers are kept.</summary>
internal static class BatchedMeasures
{
    /// <summary>Usual options: no error estimate, since cars are compared with each other.</summary>
    public static PassOptions Usual { get; } = PassOptions.Default with { StatesError = false };

    /// <summary>The measures, shape (requests)(measures); NaN for a null request and for a pass that did not run to its end.</summary>
    public static double[][] Of(IReadOnlyList<PassRequest?> requests, IReadOnlyList<PassMeasure> measures, PassOptions? options, int degree, CancellationToken cancellation) => Of(requests, measures, options, degree, null, cancellation);

    /// <summary>The same; the share done (–) is told from several threads.</summary>
    public static double[][] Of(IReadOnlyList<PassRequest?> requests, IReadOnlyList<PassMeasure> measures, PassOptions? options, int degree, IProgress<double>? progress, CancellationToken cancellation)
    {
        options ??= Usual;
        double[][] rows = [.. requests.Select(_ => Enumerable.Repeat(double.NaN, measures.Count).ToArray())];
        int[] asked = [.. Enumerable.Range(0, requests.Count).Where(i => requests[i] is not null)];
        int[][] groups = [.. asked.Chunk(PassBatch.Width)];
        var done = 0;
        Parallel.For(0, groups.Length, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, degree), CancellationToken = cancellation }, g =>
        {
            var passes = PassBatch.Of([.. groups[g].Select(i => requests[i]!)], options, cancellation);
            for (var k = 0; k < passes.Count; k++)
            {
                if (passes[k].Outcome == PassOutcome.Completed)
                {
                    rows[groups[g][k]] = [.. measures.Select(m => m.Of(passes[k]))];
                }
            }

            progress?.Report(Interlocked.Increment(ref done) / (double)groups.Length);
        });
        return rows;
    }
}
