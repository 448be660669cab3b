using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Rules;

/// <summary>
/// The passes of a map: at each speed the car at every value, at the reference, and as it is. What comes of a speed is the same whichever others are
/// driven beside it.
/// </summary>
internal sealed class RulePasses
{
    private readonly RideModel?[] cars;
    private readonly PassOptions? options;

    private RulePasses(RideModel?[] cars, PassOptions? options) => (this.cars, this.options) = (cars, options);

    /// <summary>The car and load.</summary>
    public required RideModel Model { get; init; }

    /// <summary>The road.</summary>
    public required Road Road { get; init; }

    /// <summary>What is turned.</summary>
    public required RuleAxis Axis { get; init; }

    /// <summary>Speeds, m/s.</summary>
    public required IReadOnlyList<double> Speeds { get; init; }

    /// <summary>By what it is judged.</summary>
    public required IReadOnlyList<Measure<Pass>> Measures { get; init; }

    /// <summary>Why a value has no car, by value; empty text where it has.</summary>
    public required IReadOnlyList<string> Refusals { get; init; }

    /// <summary>How many passes a speed has.</summary>
    public int Columns => cars.Length;

    /// <summary>Which of them is that at the reference value.</summary>
    public int Reference => Axis.Values.Count;

    /// <summary>Which of them is that of the car as it is.</summary>
    public int Own => Axis.Reference is null ? Reference : Reference + 1;

    /// <summary>The cars of a map.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="road">The road.</param>
    /// <param name="axis">What to turn.</param>
    /// <param name="speeds">Speeds, m/s.</param>
    /// <param name="measures">By what to judge.</param>
    /// <param name="options">How to run the passes; null: plainly.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RefusedValueException">The car has no such number: it has no seats.</exception>
    public static RulePasses Of(
        RideModel model,
        Road road,
        RuleAxis axis,
        IReadOnlyList<double> speeds,
        IReadOnlyList<Measure<Pass>> measures,
        PassOptions? options,
        CancellationToken cancellation)
    {
        if (measures.Select(m => (m.Name, Why: m.WhyNone(model.Car))).FirstOrDefault(m => m.Why is not null) is (var name, { } why))
        {
            throw new RefusedValueException("measure", name, "one that this car has", why);
        }

        // Beside the values the reference, and the car's own value, which need not be among those tried.
        var cars = new RideModel?[axis.Values.Count + 2];
        var refusals = new string[axis.Values.Count];
        cars[^2] = axis.Reference is { } against ? axis.Change(model, against) : model;
        cars[^1] = axis.Reference is null ? null : Changed(model, axis, axis.Own(model)).Car;
        for (var j = 0; j < axis.Values.Count; j++)
        {
            cancellation.ThrowIfCancellationRequested();
            (cars[j], refusals[j]) = Changed(model, axis, axis.Values[j]);
        }

        return new RulePasses(cars, options)
        {
            Model = model, Road = road, Axis = axis, Speeds = speeds, Measures = measures, Refusals = refusals,
        };
    }

    /// <summary>Drives some speeds.</summary>
    /// <param name="first">The first of them.</param>
    /// <param name="count">How many.</param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="progress">Told the share done (–); null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <returns>The measures and how each pass ended, speed by speed, shape (count × columns).</returns>
    public (double[][] Rows, PassOutcome?[] Outcomes) Run(
        int first, int count, int degree, IProgress<double>? progress, CancellationToken cancellation) => BatchedMeasures.WithOutcomes(
        [.. Speeds.Skip(first).Take(count).SelectMany(v => cars.Select(car => car is null ? null : new PassRequest(car, Road, v)))],
        Measures,
        options,
        degree,
        progress,
        cancellation);

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
