using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Doubts;

/// <summary>
/// A car's doubts carried through by slopes alone (the GUM's law of propagation, JCGM 100:2008 clause 5): central differences along each independent
/// source of error, so that shared errors stay shared. Two cars per source instead of thousands; right while the number runs straight over the doubt.
/// </summary>
public sealed record FirstOrder
{
    // Small enough for the curvature to drop out, far above rounding.
    private const double Shift = 0.05;

    /// <summary>The doubts.</summary>
    public required CarDoubts Doubts { get; init; }

    /// <summary>One result per number asked for, in order.</summary>
    public required IReadOnlyList<FirstOrderResult> Results { get; init; }

    /// <summary>Numbers of the standing car.</summary>
    /// <exception cref="RefusedValueException">The car as stated, or its neighbours on one side at every distance, cannot stand.</exception>
    public static FirstOrder Of(Car car, LoadState? load, IReadOnlyList<Measure<CarAtRest>> outputs)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        var doubts = CarDoubts.Of(car, load);
        var stated = new CarAtRest(RideModel.Of(doubts.Car, doubts.Load)) { ModesLike = BodyModes.OfEmpty(doubts.Car) };
        double[] Numbers(int source, double shift)
        {
            var errors = new double[doubts.Sources.Count];
            errors[source] = shift;
            var (shifted, with) = doubts.At(errors);
            var rest = new CarAtRest(RideModel.Of(shifted, with)) { ModesLike = stated.Modes };
            return [.. outputs.Select(o => o.Of(rest))];
        }

        double[] middle = [.. outputs.Select(o => o.Of(stated))];
        double[][] slopes = [.. Enumerable.Range(0, doubts.Sources.Count).Select(s =>
        {
            var up = Numbers(s, Shift);
            var down = Numbers(s, -Shift);
            return up.Zip(down, (u, d) => (u - d) / (2.0 * Shift)).ToArray();
        })];
        return new FirstOrder
        {
            Doubts = doubts,
            Results = [.. outputs.Select((o, j) => new FirstOrderResult
            {
                Measure = o,
                Stated = middle[j],
                Slopes = [.. slopes.Select(s => s[j])],
                Sources = doubts.Sources,
            })],
        };
    }

    /// <summary>Covariance of two results: the sources they share.</summary>
    public double Covariance(int first, int second) => Results[first].Slopes.Zip(Results[second].Slopes, (a, b) => a * b).Sum();
}
