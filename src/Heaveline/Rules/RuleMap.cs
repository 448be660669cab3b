using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Rules;

/// <summary>
/// A rule of the trade as a map: one measure over what the rule turns and over speed, each point a pass of the car with that one thing changed,
/// judged against the same car at the reference value.
/// </summary>
public sealed record RuleMap
{
    /// <summary>A change smaller than this is no difference (–).</summary>
    public const double Threshold = 0.03;

    /// <summary>What is turned.</summary>
    public required RuleAxis Axis { get; init; }

    /// <summary>By what it is judged; less is better.</summary>
    public required Measure<Pass> Measure { get; init; }

    /// <summary>The car and load.</summary>
    public required RideModel Model { get; init; }

    /// <summary>The road.</summary>
    public required Road Road { get; init; }

    /// <summary>Speeds, m/s.</summary>
    public required IReadOnlyList<double> Speeds { get; init; }

    /// <summary>The measure by speed and value, shape (speeds)(values); NaN where not computed.</summary>
    public required IReadOnlyList<IReadOnlyList<double>> Measured { get; init; }

    /// <summary>How each pass ended, shape (speeds)(values); null where a value has no car.</summary>
    public required IReadOnlyList<IReadOnlyList<PassOutcome?>> Outcomes { get; init; }

    /// <summary>The measure at the reference value, shape (speeds); NaN where not computed.</summary>
    public required IReadOnlyList<double> Reference { get; init; }

    /// <summary>How the passes at the reference value ended, shape (speeds).</summary>
    public required IReadOnlyList<PassOutcome?> ReferenceOutcomes { get; init; }

    /// <summary>The measure at the car's own value, be it among those tried or not, shape (speeds); NaN where not computed.</summary>
    public required IReadOnlyList<double> OwnMeasured { get; init; }

    /// <summary>Why a value has no car, by value; empty text where it has.</summary>
    public required IReadOnlyList<string> Refusals { get; init; }

    /// <summary>Whether it is judged by the hit, and by nothing of what follows.</summary>
    public bool JudgesHit => Measure.LooksFor <= 0.0;

    /// <summary>Whether it is judged by the settling, and by nothing of the hit.</summary>
    public bool JudgesSettling => Measure.NeedsObstacle && !JudgesHit;

    /// <summary>The car's own value on the axis.</summary>
    public double Own => Axis.Own(Model);

    /// <summary>Indices of the values on the side that the rule recommends: above the reference, or above the car's own where that is it.</summary>
    public IReadOnlyList<int> Recommended
    {
        get
        {
            var reference = Axis.Reference ?? Own;
            // The reference itself, met again after rounding, is no change at all.
            return [.. Enumerable.Range(0, Axis.Values.Count).Where(j => Axis.Values[j] > reference + (1e-9 * Math.Abs(reference)))];
        }
    }

    /// <summary>The measure over that at the reference value (–); NaN where either has none.</summary>
    public double Relative(int speed, int value) => Measured[speed][value] / Reference[speed];

    /// <summary>Whether the car at the reference runs past the end of its travel at a speed, while some value does not.</summary>
    public bool OnlyReferenceBottomsOut(int speed) => BottomsOut(ReferenceOutcomes[speed]) && Measured[speed].Any(double.IsFinite);

    /// <summary>What the rule is worth at a point.</summary>
    public RuleVerdict Verdict(int speed, int value) =>
        (BottomsOut(ReferenceOutcomes[speed]), BottomsOut(Outcomes[speed][value])) switch
        {
            (true, true) => RuleVerdict.NeitherPasses,
            (true, false) when double.IsFinite(Measured[speed][value]) => RuleVerdict.OnlyThisPasses,
            (false, true) when double.IsFinite(Reference[speed]) => RuleVerdict.OnlyReferencePasses,
            _ => Relative(speed, value) switch
            {
                double.NaN => RuleVerdict.NotComputed,
                <= 1.0 - Threshold => RuleVerdict.Holds,
                >= 1.0 + Threshold => RuleVerdict.Fails,
                _ => RuleVerdict.NoDifference,
            },
        };

    /// <summary>The best value at each speed, by the measure itself: the reference need not have one. Null where nothing was computed.</summary>
    public IReadOnlyList<BestValue?> Best => [.. Speeds.Select((_, i) => BestValue.Of(Axis.Values, Measured[i], Reference[i]))];

    /// <summary>Speeds at which the best value is the smallest one tried, m/s: nothing is known of what lies below.</summary>
    public IReadOnlyList<double> BestAtSmallest => BestAt(Axis.Values[0]);

    /// <summary>Speeds at which the best value is the largest one tried, m/s: nothing is known of what lies above.</summary>
    public IReadOnlyList<double> BestAtLargest => BestAt(Axis.Values[^1]);

    /// <summary>Maps of a rule by several measures from the same passes.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="road">The road.</param>
    /// <param name="axis">What to turn.</param>
    /// <param name="speeds">Speeds, m/s.</param>
    /// <param name="measures">By what to judge.</param>
    /// <param name="options">
    /// How to run the passes; null: 3 s of settling, without the error estimate. No pass runs longer than a measure looks.
    /// </param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="progress">
    /// Told the share done (–) after every group of passes, from several threads, so that a smaller share may come after a larger one.
    /// </param>
    /// <param name="cancellation">Stops the work: no further group is begun.</param>
    /// <exception cref="RefusedValueException">The car has no such number: it has no seats.</exception>
    /// <exception cref="OperationCanceledException">Cancelled.</exception>
    public static IReadOnlyList<RuleMap> Of(
        RideModel model,
        Road road,
        RuleAxis axis,
        IReadOnlyList<double> speeds,
        IReadOnlyList<Measure<Pass>> measures,
        PassOptions? options = null,
        int degree = 1,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(axis);
        ArgumentNullException.ThrowIfNull(speeds);
        ArgumentNullException.ThrowIfNull(measures);
        var passes = RulePasses.Of(model, road, axis, speeds, measures, options, cancellation);
        return Of(passes, passes.Run(0, speeds.Count, degree, progress, cancellation));
    }

    /// <summary>Maps of passes that were driven.</summary>
    /// <param name="passes">The passes.</param>
    /// <param name="driven">Their measures and how each ended, speed by speed.</param>
    internal static IReadOnlyList<RuleMap> Of(RulePasses passes, (double[][] Rows, PassOutcome?[] Outcomes) driven)
    {
        var (rows, outcomes) = driven;
        var (axis, speeds) = (passes.Axis, passes.Speeds);
        IReadOnlyList<T> Along<T>(Func<int, T> at) => [.. speeds.Select((_, i) => at(i * passes.Columns))];
        var ended = Along<IReadOnlyList<PassOutcome?>>(row => outcomes[row..(row + axis.Values.Count)]);
        return [.. passes.Measures.Select((measure, k) => new RuleMap
        {
            Axis = axis,
            Measure = measure,
            Model = passes.Model,
            Road = passes.Road,
            Speeds = speeds,
            Measured = Along<IReadOnlyList<double>>(row => [.. axis.Values.Select((_, j) => rows[row + j][k])]),
            Outcomes = ended,
            Reference = Along(row => rows[row + passes.Reference][k]),
            ReferenceOutcomes = Along(row => outcomes[row + passes.Reference]),
            OwnMeasured = Along(row => rows[row + passes.Own][k]),
            Refusals = passes.Refusals,
        })];
    }

    private IReadOnlyList<double> BestAt(double end)
    {
        var best = Best;
        return [.. Speeds.Where((_, i) => best[i] is { AtEdge: true } edge && edge.Value == end)];
    }

    private static bool BottomsOut(PassOutcome? outcome) => outcome == PassOutcome.TravelOutOfRange;
}
