using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Worksheets;

/// <summary>
/// Four-scale weighing with repeats, and with the car turned by 180° to average out a floor that is not level: what each wheel carries, and where the
/// whole car's centre of gravity lies in plan, with doubts. Friction and tyres shift load along the diagonals and make none: the wheels' scatter is
/// pooled over the wheels, that of the whole car and its axles comes from the sums that a shift along a diagonal leaves alone.
/// </summary>
public sealed record WeighingSheet
{
    /// <summary>Mean of both ways round, kg, each with its doubt.</summary>
    public required Weighing Weighing { get; init; }

    /// <summary>The whole car, kg.</summary>
    public required Amount<Mass> Total { get; init; }

    /// <summary>Front axle, kg.</summary>
    public required Amount<Mass> FrontAxle { get; init; }

    /// <summary>Rear axle, kg.</summary>
    public required Amount<Mass> RearAxle { get; init; }

    /// <summary>Front axle's share (–).</summary>
    public required Amount<Plain> FrontShare { get; init; }

    /// <summary>Cross weight: share of front right and rear left together (–). Half means an even stance across the diagonals.</summary>
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
            throw new RefusedValueException("the number of rounds of readings", "0", "one or more", "Read all four scales at least once.");
        }

        Checked.Positive(wheelbase, "From front to rear wheel centre.", "Wheelbase");
        Checked.Positive(frontTrack, "Between the middles of the tyres.", "FrontTrack");
        Checked.Positive(rearTrack, "Between the middles of the tyres.", "RearTrack");
        var rounds = readings.GroupBy(r => r.Turned).OrderBy(g => g.Key).Select(g => g.ToList()).ToList();
        double[][] means = [.. rounds.Select(Mean)];
        double[] mean = [.. Enumerable.Range(0, 4).Select(i => means.Average(m => m[i]))];
        var scatter = WeighingScatter.Of([.. rounds.Select(g => g.Select(r => r.Values).ToArray())]);
        double[] scale = [.. Enumerable.Range(0, 4).Select(i => readings.Max(r => r.Doubts[i]))];
        Amount<Mass> Wheel(int i) => new(mean[i], new Doubt(Math.Sqrt((scale[i] * scale[i]) + (scatter.Wheel * scatter.Wheel))));
        var weighing = new Weighing { FrontLeft = Wheel(0), FrontRight = Wheel(1), RearLeft = Wheel(2), RearRight = Wheel(3) };

        // Four wheels by their scales, four sums by their scatter, three lengths.
        double[] inputs = [.. mean, 0.0, 0.0, 0.0, 0.0, wheelbase.Si, frontTrack.Si, rearTrack.Si];
        double[] doubts =
        [
            .. scale, scatter.Sum, scatter.Sum, scatter.Sum, scatter.Cross,
            wheelbase.Doubt.HalfWidth, frontTrack.Doubt.HalfWidth, rearTrack.Doubt.HalfWidth,
        ];
        Amount<T> With<T>(Func<double[], double[], double> of)
            where T : struct, IDimension
        {
            double Of(double[] v) => of(WeighingScatter.Moved(v[..4], v[4..8]), v[8..]);
            return new(Of(inputs), new Doubt(DoubtBudget.Of(Of, inputs, doubts)));
        }

        var spread = rounds.Max(g => Enumerable.Range(0, 4).Max(i => g.Max(r => r.Values[i]) - g.Min(r => r.Values[i])));
        double? turn = means.Length == 2 ? Enumerable.Range(0, 4).Max(i => Math.Abs(means[1][i] - means[0][i])) : null;
        return new WeighingSheet
        {
            Weighing = weighing,
            Total = With<Mass>((w, _) => w.Sum()),
            FrontAxle = With<Mass>((w, _) => w[0] + w[1]),
            RearAxle = With<Mass>((w, _) => w[2] + w[3]),
            FrontShare = With<Plain>((w, _) => (w[0] + w[1]) / w.Sum()),
            CrossShare = With<Plain>((w, _) => (w[1] + w[2]) / w.Sum()),
            BehindFrontAxle = With<Length>((w, plan) => plan[0] * (w[2] + w[3]) / w.Sum()),
            LeftOfMiddle = With<Length>((w, plan) => 0.5 * ((plan[1] * (w[0] - w[1])) + (plan[2] * (w[2] - w[3]))) / w.Sum()),
            Spread = spread,
            TurnChange = turn,
            Notes =
            [
                .. WeighingSlips.Of(readings, wheelbase, [("front", frontTrack), ("rear", rearTrack)]),
                .. NotesOf(readings, spread, turn, mean.Sum()),
            ],
        };
    }

    private static double[] Mean(List<WheelReadings> rounds) => [.. Enumerable.Range(0, 4).Select(i => rounds.Average(r => r.Values[i]))];

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

        if (readings.Count - (turn is null ? 1 : 2) == 1)
        {
            yield return new("few-rounds", "One repeat tells little of the scatter: another round narrows the doubts.");
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
