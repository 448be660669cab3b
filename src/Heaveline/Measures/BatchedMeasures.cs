using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>Measures of many passes, side by side in lanes and groups of lanes at once. Only the numbers are kept.</summary>
internal static class BatchedMeasures
{
    // So many passes are made ready at a time: what that takes does not grow with the study.
    private const int AtOnce = 16_384;
    private const int AtOnceOnDevice = 262_144;

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
    /// <remarks>
    /// Measures that are defined over curves are gathered while the passes run (<see cref="Measure{TSubject}.InFlight"/>). With any other among them
    /// the passes are recorded and measured one after the other: a measure of the caller's own may look at everything and keep the pass.
    /// </remarks>
    public static (double[][] Rows, PassOutcome?[] Outcomes) WithOutcomes(
        IReadOnlyList<PassRequest?> requests,
        IReadOnlyList<Measure<Pass>> measures,
        PassOptions? options,
        int degree,
        IProgress<double>? progress,
        CancellationToken cancellation)
    {
        // The steps are the caller's: a number does not hang on what is measured beside it.
        options ??= Usual;
        // No longer than the measures look, and the sample beyond that the curve is made of; half a second is the shortest record there is.
        var record = options.Record;
        var longest = measures.Select(m => m.LooksFor).Append(0.5).Max() + (2.0 * record.SampleStep);
        options = options with { Record = record with { SettlingTime = Math.Min(record.SettlingTime, longest) } };
        var inFlight = measures.Select(m => m.InFlight).OfType<CurveNumber>().ToArray();
        var rows = new double[requests.Count][];
        var outcomes = new PassOutcome?[requests.Count];
        var done = 0;
        var device = inFlight.Length == measures.Count ? MeasurePlace.For(requests.Count) : null;
        var atOnce = device is null ? AtOnce : AtOnceOnDevice;
        for (var from = 0; from < requests.Count; from += atOnce)
        {
            var (asked, passes) = (new List<int>(), new List<PassRequest>());
            for (var i = from; i < Math.Min(from + atOnce, requests.Count); i++)
            {
                if (requests[i] is { } request)
                {
                    asked.Add(i);
                    passes.Add(request);
                }
            }

            if (device is not null)
            {
                OnDevice(asked, passes);
            }

            var groups = PassGroup.Of(passes, options, PassBatch.Width, recorded: inFlight.Length != measures.Count);
            // Two beside each other where every thread has some to choose from: which run so changes no bit.
            var beside = inFlight.Length == measures.Count && groups.Count >= 4 * degree ? 2 : 1;
            ParallelLoop.Each((groups.Count + beside - 1) / beside, Math.Max(1, degree), () => new RoadMemory(), (n, memory) =>
            {
                var (first, second) = (beside * n, (beside * n) + 1);
                if (beside == 2 && second < groups.Count)
                {
                    MeasureFlight.Of(
                        (groups[first], groups[second]),
                        PassBatch.Width,
                        inFlight,
                        (Kept(groups[first]), Kept(groups[second])),
                        memory,
                        cancellation);
                    Done(groups[first].Places.Length + groups[second].Places.Length);
                    return;
                }

                if (inFlight.Length == measures.Count)
                {
                    MeasureFlight.Of(groups[first], PassBatch.Width, inFlight, Kept(groups[first]), memory, cancellation);
                }
                else
                {
                    Record(groups[first], Array.ConvertAll(groups[first].Places, place => asked[place]));
                }

                Done(groups[first].Places.Length);
            }, memory => memory.Dispose(), cancellation);

            void Done(int more) => progress?.Report(Interlocked.Add(ref done, more) / (double)requests.Count);

            Action<int, PassOutcome, ReadOnlySpan<double>> Kept(PassGroup group)
            {
                var places = Array.ConvertAll(group.Places, place => asked[place]);
                return (k, outcome, row) => Keep(places[k], outcome, row);
            }
        }

        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] ??= None();
        }

        return (rows, outcomes);

        // What the device leaves stays to be run.
        void OnDevice(List<int> asked, List<PassRequest> passes)
        {
            var (left, why) = device.Of(
                PassGroup.Whole(passes, options), inFlight, (k, row) => Keep(asked[k], PassOutcome.Completed, row), cancellation);
            MeasurePlace.Say(why);
            var (places, others) = (left.Select(k => asked[k]).ToArray(), left.Select(k => passes[k]).ToArray());
            progress?.Report((done += asked.Count - places.Length) / (double)requests.Count);
            asked.Clear();
            asked.AddRange(places);
            passes.Clear();
            passes.AddRange(others);
        }

        void Keep(int place, PassOutcome outcome, ReadOnlySpan<double> row)
        {
            outcomes[place] = outcome;
            rows[place] = outcome == PassOutcome.Completed ? row.ToArray() : None();
        }

        void Record(PassGroup group, int[] places)
        {
            var passes = group.Run(options, PassBatch.Width, cancellation);
            for (var k = 0; k < passes.Length; k++)
            {
                var pass = passes[k];
                Keep(places[k], pass.Outcome, pass.Outcome == PassOutcome.Completed ? [.. measures.Select(m => m.Of(pass))] : []);
            }
        }

        double[] None()
        {
            var row = new double[measures.Count];
            Array.Fill(row, double.NaN);
            return row;
        }
    }
}
