using Heaveline.Cars;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Measures;

/// <summary>One number of a subject: of a pass, of a car at rest, of a car on a random road.</summary>
/// <typeparam name="TSubject">What it is a number of.</typeparam>
/// <param name="Key">Name for machines.</param>
/// <param name="Label">Name for people.</param>
/// <param name="Unit">Unit that it is shown in.</param>
/// <param name="Digits">Digits behind the point.</param>
/// <param name="Of">The number, SI; not finite where there is none.</param>
/// <param name="Says">What it is, in one sentence.</param>
public sealed record Measure<TSubject>(string Key, string Label, ShownUnit Unit, int Digits, Func<TSubject, double> Of, string Says)
    : Measure(Key, Label, Unit, Digits, Says)
{
    /// <summary>How long after the rear wheels have left a pass the number still looks, s; infinite: to the record's end, however far.</summary>
    public double LooksFor { get; init; } = double.PositiveInfinity;

    /// <summary>Its definition over the curves of a pass, by which it is had while the pass runs; null: it reads a recorded pass.</summary>
    internal CurveNumber? InFlight { get; init; }

    /// <summary>Whether there is a number only on a road with an obstacle.</summary>
    public bool NeedsObstacle { get; init; }

    /// <summary>Why a car has no such number, in a sentence; null where it has, and by itself for measures that every car has.</summary>
    internal Func<Car, string?> WhyNone { get; init; } = _ => null;

    /// <summary>Where it is taken up besides on a road without an obstacle.</summary>
    public MeasureUse UsesWithoutObstacle { get; init; }

    /// <summary>Whether it is taken up somewhere when a road is driven.</summary>
    /// <param name="road">The road.</param>
    /// <param name="use">Where.</param>
    public bool IsUsed(Road road, MeasureUse use)
    {
        ArgumentNullException.ThrowIfNull(road);
        return road.Event is null ? !NeedsObstacle && (Uses | UsesWithoutObstacle).HasFlag(use) : Uses.HasFlag(use);
    }

    /// <summary>The number as shown; null where there is none.</summary>
    public double? ShownOf(TSubject subject) => Shown(Of(subject));
}
