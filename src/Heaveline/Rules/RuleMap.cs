using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Rules;

/// <summary>
/// A rule of the trade as a map: one measure over what the rule turns and over speed, each place a pass of the car with that one thing changed,
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

    /// <summary>The measure at the reference value, shape (speeds).</summary>
    public required IReadOnlyList<double> Reference { get; init; }

    /// <summary>Why a value has no car, by value; empty text where it has.</summary>
    public required IReadOnlyList<string> Refusals { get; init; }

    /// <summary>Whether it is judged by the hit, and by nothing of what follows.</summary>
    public bool JudgesHit => Measure.LooksFor <= 0.0;

    /// <summary>Whether it is judged by the settling, and by nothing of the hit.</summary>
    public bool JudgesSettling => Measure.NeedsObstacle && !JudgesHit;

    /// <summary>The car's own value on the axis.</summary>
    public double Own => Axis.Own(Model);

    /// <summary>The measure over that at the reference value (–).</summary>
    public double Relative(int speed, int value) => Measured[speed][value] / Reference[speed];

    /// <summary>What the rule is worth at a place.</summary>
    public RuleVerdict Verdict(int speed, int value) => Relative(speed, value) switch
    {
        double.NaN => RuleVerdict.NotComputed,
        <= 1.0 - Threshold => RuleVerdict.Holds,
        >= 1.0 + Threshold => RuleVerdict.Fails,
        _ => RuleVerdict.NoDifference,
    };

    /// <summary>The best value at each speed; null where nothing was computed.</summary>
    public IReadOnlyList<BestValue?> Best =>
        [.. Speeds.Select((_, i) => BestValue.Of(Axis.Values, [.. Axis.Values.Select((_, j) => Relative(i, j))]))];

    /// <summary>
    /// The speed whose best value a given value is, m/s, straight between the speeds of the map; null when the value suits none of them. Speeds whose
    /// best lies at the edge of the values do not count. Where several suit, the slowest.
    /// </summary>
    public double? SuitedSpeed(double value)
    {
        var best = Best;
        for (var i = 1; i < Speeds.Count; i++)
        {
            if (best[i - 1] is { AtEdge: false } a && best[i] is { AtEdge: false } b && (a.Value - value) * (b.Value - value) <= 0.0
                && a.Value != b.Value)
            {
                return Speeds[i - 1] + ((Speeds[i] - Speeds[i - 1]) * (value - a.Value) / (b.Value - a.Value));
            }
        }

        return null;
    }

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
        if (measures.Select(m => (m.Name, Why: m.WhyNone(model.Car))).FirstOrDefault(m => m.Why is not null) is (var name, { } why))
        {
            throw new RefusedValueException("measure", name, "one that this car has", why);
        }

        var columns = axis.Values.Count + 1;
        var cars = new RideModel?[columns];
        var refusals = new string[axis.Values.Count];
        cars[^1] = axis.Reference is { } reference ? axis.Change(model, reference) : model;
        for (var j = 0; j < axis.Values.Count; j++)
        {
            cancellation.ThrowIfCancellationRequested();
            (cars[j], refusals[j]) = Changed(model, axis, axis.Values[j]);
        }

        var rows = BatchedMeasures.Of(
            [.. speeds.SelectMany(v => cars.Select(car => car is null ? null : new PassRequest(car, road, v)))],
            measures,
            options,
            degree,
            progress,
            cancellation);
        return [.. measures.Select((measure, k) => new RuleMap
        {
            Axis = axis,
            Measure = measure,
            Model = model,
            Road = road,
            Speeds = speeds,
            Measured = [.. speeds.Select((_, i) => (IReadOnlyList<double>)[.. axis.Values.Select((_, j) => rows[(i * columns) + j][k])])],
            Reference = [.. speeds.Select((_, i) => rows[(i * columns) + columns - 1][k])],
            Refusals = refusals,
        })];
    }

    private static (RideModel? Car, string Refusal) Changed(RideModel model, RuleAxis axis, double value)
    {
        try
        {
            return (axis.Change(model, value), "");
        }
        catch (RefusedValueException refusal)
        {
            return (null, refusal.Message);
        }
    }
}
