using Heaveline.Measures;
using Heaveline.Passes;

namespace Heaveline.Doubts;

/// <summary>Measures of many passes, side by side in lanes and groups of lanes at once. Only the numbers are kept.</summary>
internal static class BatchedMeasures
{
    /// <summary>Usual options: no error estimate, since cars are compared with each other.</summary>
    public static PassOptions Usual { get; } = new() { Method = FixedStep.Once };

    /// <summary>
    /// The measures, shape (requests)(measures); NaN for a null request and for a pass that left the model's range. A pass runs only as long as a
    /// measure looks: what would happen later does not count.
    /// </summary>
    public static double[][] Of(
        IReadOnlyList<PassRequest?> requests,
        IReadOnlyList<Measure<Pass>> measures,
        PassOptions? options,
        int degree,
        CancellationToken cancellation) => WithOutcomes(requests, measures, options, degree, null, cancellation).Rows;

    /// <summary>
    /// The same with how each pass ended, shape (requests), null for a null request; the share done (–) is told from several threads.
    /// </summary>
    public static (double[][] Rows, PassOutcome?[] Outcomes) WithOutcomes(
        IReadOnlyList<PassRequest?> requests,
        IReadOnlyList<Measure<Pass>> measures,
        PassOptions? options,
        int degree,
        IProgress<double>? progress,
        CancellationToken cancellation)
    {
        options ??= Usual;
        // No longer than the measures look, and the sample beyond that the curve is made of; half a second is the shortest record there is.
        var record = options.Record;
        var longest = measures.Select(m => m.LooksFor).Append(0.5).Max() + (2.0 * record.SampleStep);
        options = options with { Record = record with { SettlingTime = Math.Min(record.SettlingTime, longest) } };
        var channels = measures.Select(m => m.Reads).Append(Channel.Motion).Max();
        double[][] rows = [.. requests.Select(_ => Enumerable.Repeat(double.NaN, measures.Count).ToArray())];
        var outcomes = new PassOutcome?[requests.Count];
        int[] asked = [.. Enumerable.Range(0, requests.Count).Where(i => requests[i] is not null)];
        var groups = PassGroup.Of([.. asked.Select(i => requests[i]!)], options, PassBatch.Width);
        var done = 0;
        Parallel.For(0, groups.Count, new ParallelOptions { MaxDegreeOfParallelism = Math.Max(1, degree), CancellationToken = cancellation }, g =>
        {
            void Keep(int place, Pass pass)
            {
                outcomes[asked[place]] = pass.Outcome;
                if (pass.Outcome == PassOutcome.Completed)
                {
                    rows[asked[place]] = [.. measures.Select(m => m.Of(pass))];
                }
            }

            // A measure of the caller's own may look at everything and keep the pass.
            if (channels < Channel.Count)
            {
                groups[g].Measure(PassBatch.Width, channels, Keep, cancellation);
            }
            else
            {
                var passes = groups[g].Run(options, PassBatch.Width, cancellation);
                for (var k = 0; k < passes.Length; k++)
                {
                    Keep(groups[g].Places[k], passes[k]);
                }
            }

            progress?.Report(Interlocked.Increment(ref done) / (double)groups.Count);
        });
        return (rows, outcomes);
    }
}
