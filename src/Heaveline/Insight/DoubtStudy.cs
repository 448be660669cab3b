using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;
using Heaveline.Responses;
using Heaveline.Roads;

namespace Heaveline.Insight;

/// <summary>
/// A car's doubts carried through to its numbers by drawing cars (Monte Carlo; JCGM 101:2008, the propagation of distributions). Draw number i depends
/// on the seed and i alone, so that results repeat, whatever the degree of parallelism, and a study of passes meets the cars of a study at rest.
/// </summary>
public sealed record DoubtStudy
{
    /// <summary>The doubts.</summary>
    public required CarDoubts Doubts { get; init; }

    /// <summary>Seed of the draws.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Number of drawn cars.</summary>
    public required int Samples { get; init; }

    /// <summary>Draws that no car could have and that were drawn again.</summary>
    public required int Refused { get; init; }

    /// <summary>Passes that did not run to their end; they have no numbers.</summary>
    public required int Unfinished { get; init; }

    /// <summary>One result per number asked for, in order.</summary>
    public required IReadOnlyList<DoubtResult> Results { get; init; }

    /// <summary>Numbers of the standing car.</summary>
    /// <param name="car">As measured.</param>
    /// <param name="load">Load state; null for none.</param>
    /// <param name="outputs">What to follow.</param>
    /// <param name="samples">How many cars, 10 to 1 000 000.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="degree">How many draws run at once.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static DoubtStudy Of(Car car, LoadState? load, IReadOnlyList<StaticOutput> outputs, int samples, ulong seed, int degree = 1, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        var doubts = CarDoubts.Of(car, load);
        var draws = new Draws(doubts, samples, outputs.Count);
        Parallel.For(0, samples, Options(degree, cancellation), i =>
        {
            var rest = new CarAtRest(draws.Draw(seed, i).Model);
            for (var j = 0; j < outputs.Count; j++)
            {
                draws.Values[j][i] = outputs[j].Of(rest);
            }
        });
        var stated = new CarAtRest(RideModel.Of(doubts.Car, doubts.Load));
        return draws.Study(seed, [.. outputs.Select(o => (o.Name, o.Symbol, o.Of(stated)))], 0);
    }

    /// <summary>Numbers of the car over a road at a speed, many cars side by side.</summary>
    /// <param name="car">As measured.</param>
    /// <param name="load">Load state; null for none.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="outputs">What to follow.</param>
    /// <param name="samples">How many cars, 10 to 1 000 000.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="options">How to run the passes; null: 3 s of settling in steps of 1.25 ms, 200 samples a second, without the error estimate: far below the scatter of the draws.</param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static DoubtStudy OfPasses(
        Car car, LoadState? load, Road road, double speed, IReadOnlyList<PassMeasure> outputs, int samples, ulong seed, PassOptions? options = null, int degree = 1, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        options ??= PassOptions.Default with { StatesError = false, SamplesPerSecond = 200.0, LargestStep = 1.25e-3 };
        var doubts = CarDoubts.Of(car, load);
        var draws = new Draws(doubts, samples, outputs.Count);
        var width = PassBatch.Width;
        var unfinished = new int[samples];
        Parallel.For(0, (samples + width - 1) / width, Options(degree, cancellation), group =>
        {
            var first = group * width;
            var count = Math.Min(width, samples - first);
            var passes = PassBatch.Of([.. Enumerable.Range(first, count).Select(i => new PassRequest(draws.Draw(seed, i).Model, road, speed))], options, cancellation);
            for (var k = 0; k < count; k++)
            {
                var completed = passes[k].Outcome == PassOutcome.Completed;
                unfinished[first + k] = completed ? 0 : 1;
                for (var j = 0; j < outputs.Count; j++)
                {
                    draws.Values[j][first + k] = completed ? outputs[j].Of(passes[k]) : double.NaN;
                }
            }
        });
        var stated = Pass.Of(RideModel.Of(doubts.Car, doubts.Load), road, speed, options, cancellation);
        return draws.Study(seed, [.. outputs.Select(o => (o.Name, o.Symbol, o.Of(stated)))], unfinished.Sum());
    }

    private static ParallelOptions Options(int degree, CancellationToken cancellation) => new() { MaxDegreeOfParallelism = Math.Max(1, degree), CancellationToken = cancellation };

    private sealed class Draws(CarDoubts doubts, int samples, int outputs)
    {
        private readonly IReadOnlyList<double>[] errors = new IReadOnlyList<double>[Count(samples)];
        private readonly int[] refused = new int[samples];

        public double[][] Values { get; } = [.. Enumerable.Range(0, outputs).Select(_ => new double[samples])];

        public CarDraw Draw(ulong seed, int i)
        {
            var draw = CarDraw.Of(doubts, seed, i);
            errors[i] = draw.Errors;
            refused[i] = draw.Refused;
            return draw;
        }

        public DoubtStudy Study(ulong seed, IReadOnlyList<(string Name, string Symbol, double Stated)> of, int unfinished) => new()
        {
            Doubts = doubts,
            Seed = seed,
            Samples = samples,
            Refused = refused.Sum(),
            Unfinished = unfinished,
            Results = [.. of.Select((o, j) => DoubtResult.Of(o.Name, o.Symbol, o.Stated, Values[j], doubts.Sources, errors))],
        };

        private static int Count(int samples) => samples is >= 10 and <= 1_000_000
            ? samples
            : throw new RefusedValueException("number of draws", $"{samples}", "between 10 and 1000000", "2000 give an interval to about a tenth of its width.");
    }
}
