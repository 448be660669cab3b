using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Cars.Worksheets;

/// <summary>
/// Four-scale weighing with repeats, and with the car turned by 180° to average out a floor that is not level: what each wheel carries, and where the
/// whole car's centre of gravity lies in plan, with doubts.
/// </summary>
public sealed record WeighingSheet
{
    /// <summary>Mean of both ways round, kg, each with its doubt.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>The whole car, kg.</summary>
    public required Amount<Mass> Total { get; init; }

    /// <summary>Front axle's share (–).</summary>
    public required Amount<Plain> FrontShare { get; init; }

    /// <summary>Share of front right and rear left together (–): half means an even stance across the diagonals.</summary>
    public required Amount<Plain> CrossShare { get; init; }

    /// <summary>Centre of gravity of the whole car behind the front axle, m.</summary>
    public required Amount<Length> BehindFrontAxle { get; init; }

    /// <summary>Centre of gravity of the whole car left of the middle, m.</summary>
    public required Amount<Length> LeftOfMiddle { get; init; }

    /// <summary>Largest difference between repeats of one wheel one way round, kg; 0 without repeats.</summary>
    public required double Spread { get; init; }

    /// <summary>Largest change of one wheel's mean by turning the car, kg; null when it was not turned.</summary>
    public required double? TurnChange { get; init; }

    /// <summary>What the readings say about themselves, one sentence each.</summary>
    public required IReadOnlyList<SheetNote> Notes { get; init; }

    /// <summary>Works the sheet out.</summary>
    /// <param name="readings">The rounds; their own doubts are the scales'.</param>
    /// <param name="wheelbase">Wheelbase.</param>
    /// <param name="frontTrack">Front track.</param>
    /// <param name="rearTrack">Rear track.</param>
    public static WeighingSheet Of(
        IReadOnlyList<WheelReadings> readings, Amount<Length> wheelbase, Amount<Length> frontTrack, Amount<Length> rearTrack)
    {
        ArgumentNullException.ThrowIfNull(readings);
        if (readings.Count == 0)
        {
            throw new RefusedValueException("rounds of readings", "none", "one or more", "Read all four scales at least once.");
        }

        Checked.Positive(wheelbase, "From front to rear wheel centre.", "Wheelbase");
        Checked.Positive(frontTrack, "Between the middles of the tyres.", "FrontTrack");
        Checked.Positive(rearTrack, "Between the middles of the tyres.", "RearTrack");
        var rounds = readings.GroupBy(r => r.Turned).OrderBy(g => g.Key).Select(g => g.ToList()).ToList();
        double[][] means = [.. rounds.Select(Mean)];
        double[] mean = [.. Enumerable.Range(0, 4).Select(i => means.Average(m => m[i]))];
        double[] doubt = [.. Enumerable.Range(0, 4).Select(i => Doubt(i, readings, rounds, means))];
        var weighing = new Weighing
        {
            FrontLeft = new(mean[0], new Doubt(doubt[0])),
            FrontRight = new(mean[1], new Doubt(doubt[1])),
            RearLeft = new(mean[2], new Doubt(doubt[2])),
            RearRight = new(mean[3], new Doubt(doubt[3])),
        };
        double[] plan = [wheelbase.Si, frontTrack.Si, rearTrack.Si];
        double[] inputs = [.. mean, .. plan];
        double[] doubts = [.. doubt, wheelbase.Doubt.HalfWidth, frontTrack.Doubt.HalfWidth, rearTrack.Doubt.HalfWidth];
        Amount<T> With<T>(Func<double[], double> of)
            where T : struct, IDimension => new(of(inputs), new Doubt(DoubtBudget.Of(of, inputs, doubts)));
        var spread = rounds.Max(g => Enumerable.Range(0, 4).Max(i => g.Max(r => r.Values[i]) - g.Min(r => r.Values[i])));
        double? turn = means.Length == 2 ? Enumerable.Range(0, 4).Max(i => Math.Abs(means[1][i] - means[0][i])) : null;
        return new WeighingSheet
        {
            Weighing = weighing,
            Total = With<Mass>(v => v[0] + v[1] + v[2] + v[3]),
            FrontShare = With<Plain>(v => (v[0] + v[1]) / (v[0] + v[1] + v[2] + v[3])),
            CrossShare = With<Plain>(v => (v[1] + v[2]) / (v[0] + v[1] + v[2] + v[3])),
            BehindFrontAxle = With<Length>(v => v[4] * (v[2] + v[3]) / (v[0] + v[1] + v[2] + v[3])),
            LeftOfMiddle = With<Length>(v => 0.5 * ((v[5] * (v[0] - v[1])) + (v[6] * (v[2] - v[3]))) / (v[0] + v[1] + v[2] + v[3])),
            Spread = spread,
            TurnChange = turn,
            Notes = [.. NotesOf(readings, spread, turn, mean.Sum())],
        };
    }

    private static double[] Mean(List<WheelReadings> rounds) => [.. Enumerable.Range(0, 4).Select(i => rounds.Average(r => r.Values[i]))];

    // The scatter of repeats, pooled over both ways round, with Student's factor; beside it the scale's own doubt, which repeats do not average out.
    private static double Doubt(int i, IReadOnlyList<WheelReadings> readings, List<List<WheelReadings>> rounds, double[][] means)
    {
        var freedom = readings.Count - rounds.Count;
        var scale = readings.Max(r => r.Doubts[i]);
        if (freedom == 0)
        {
            return scale;
        }

        var squares = rounds.Zip(means, (g, m) => g.Sum(r => Math.Pow(r.Values[i] - m[i], 2))).Sum();
        var ofMean = Math.Sqrt(squares / freedom * rounds.Sum(g => 1.0 / g.Count)) / rounds.Count;
        return Math.Sqrt((scale * scale) + Math.Pow(LeastSquares.Student(freedom) * ofMean, 2));
    }

    private static IEnumerable<SheetNote> NotesOf(IReadOnlyList<WheelReadings> readings, double spread, double? turn, double total)
    {
        if (readings.Count == 1)
        {
            yield return new("one-round", "One round only: roll the car off and on again and repeat, so that friction and tyres show their scatter.");
        }
        else if (spread > 0.01 * total)
        {
            yield return new("spread", FormattableString.Invariant(
                $"Repeats of one wheel differ by {spread:F1} kg: bounce the car and let it roll free before each reading, bars unhooked."));
        }

        if (turn is null)
        {
            yield return new("not-turned", "The car was not turned round: a floor out of level moves weight from wheel to wheel unseen.");
        }
        else
        {
            yield return new("turned", FormattableString.Invariant(
                $"Turning the car moved up to {turn:F1} kg at a wheel; half of it was the floor or the scales and is averaged out."));
        }

        if (readings.All(r => r.Doubts.All(d => d == 0.0)))
        {
            yield return new("no-scale-doubt", "No doubt of the scales is given: only the scatter of repeats counts.");
        }
    }
}
