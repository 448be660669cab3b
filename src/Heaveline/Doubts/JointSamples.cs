using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Doubts;

/// <summary>The numbers of cars drawn together, filled in from several threads.</summary>
internal sealed class JointSamples(JointDoubts doubts, int samples, ulong seed, int outputs)
{
    private readonly IReadOnlyList<double>[] errors = new IReadOnlyList<double>[Count(samples)];
    private readonly int[] refused = new int[samples];
    private readonly double[][][] values = [.. doubts.Cars.Select(_ => Enumerable.Range(0, outputs).Select(_ => new double[samples]).ToArray())];
    private int unfinished;

    /// <summary>Takes what came of draws that follow one another.</summary>
    /// <param name="first">The first draw.</param>
    /// <param name="group">What came of them.</param>
    public void Take(int first, DrawnGroup group)
    {
        for (var k = 0; k < group.Errors.Length; k++)
        {
            (errors[first + k], refused[first + k]) = (group.Errors[k], group.Refused[k]);
            for (var car = 0; car < group.Numbers.Length; car++)
            {
                Keep(car, first + k, group.Numbers[car][k] is { Length: > 0 } numbers ? numbers : null);
            }
        }
    }

    /// <summary>Runs over all draws in groups, several at once.</summary>
    /// <param name="width">Draws in a group.</param>
    /// <param name="degree">Groups at once.</param>
    /// <param name="progress">Told the share done.</param>
    /// <param name="group">Given the first draw of a group and how many there are.</param>
    /// <param name="cancellation">Stops the work.</param>
    public void Each(int width, int degree, IProgress<double>? progress, Action<int, int> group, CancellationToken cancellation)
    {
        var groups = (samples + width - 1) / width;
        var done = 0;
        ParallelLoop.Each(groups, Math.Max(1, degree), g =>
        {
            var first = g * width;
            group(first, Math.Min(width, samples - first));
            progress?.Report(Interlocked.Increment(ref done) / (double)groups);
        }, cancellation);
    }

    /// <summary>The cars of one draw.</summary>
    public IReadOnlyList<RideModel> Draw(int i)
    {
        var draw = JointDraw.Of(doubts, seed, i);
        errors[i] = draw.Errors;
        refused[i] = draw.Refused;
        return draw.Models;
    }

    /// <summary>Keeps the numbers of a car of one draw; null when its run gave none.</summary>
    public void Keep(int car, int draw, IEnumerable<double>? numbers)
    {
        if (numbers is null)
        {
            Interlocked.Increment(ref unfinished);
        }

        var j = 0;
        foreach (var number in numbers ?? Enumerable.Repeat(double.NaN, outputs))
        {
            values[car][j++][draw] = number;
        }
    }

    /// <summary>What came out.</summary>
    /// <param name="of">What the numbers are.</param>
    /// <param name="middle">The numbers of each car as stated, shape (cars)(numbers).</param>
    public JointStudy Study(IReadOnlyList<Measure> of, double[][] middle)
    {
        var fit = new ErrorFit(doubts.Sources, errors);
        DoubtResult Result(int j, double said, double[] drawn) => DoubtResult.Of(of[j], said, drawn, fit);
        return new JointStudy
        {
            Doubts = doubts,
            Seed = seed,
            Samples = samples,
            Refused = refused.Sum(),
            Unfinished = unfinished,
            Cars = [.. values.Select((car, k) => (IReadOnlyList<DoubtResult>)[.. car.Select((drawn, j) => Result(j, middle[k][j], drawn))])],
            Changes =
            [
                .. values.Skip(1).Select((car, k) => (IReadOnlyList<DoubtResult>)
                    [.. car.Select((drawn, j) => Result(
                        j,
                        middle[k + 1][j] - middle[0][j],
                        [.. drawn.Zip(values[0][j], (after, before) => after - before)]) with { IsChange = true })]),
            ],
        };
    }

    private static int Count(int samples) => samples is >= 10 and <= 1_000_000
        ? samples
        : throw new RefusedValueException(
            "number of draws", $"{samples}", "between 10 and 1000000", "2000 give an interval to about a tenth of its width.");
}
