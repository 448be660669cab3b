using MathNet.Numerics.LinearAlgebra;
using Heaveline.Models;
using Heaveline.Modes;

namespace Heaveline.Measures;

/// <summary>How a car holds itself up against roll, at trim, a fluid line at rest, about the middle plane.</summary>
public sealed record RollStiffness
{
    /// <summary>Springs, bars, interconnection and touching stops on rigid tyres, N m/rad.</summary>
    public required double Suspension { get; init; }

    /// <summary>Front axle's share of it (–).</summary>
    public required double FrontShare { get; init; }

    /// <summary>The same with the tyres in series, N m/rad.</summary>
    public required double WithTyres { get; init; }

    /// <summary>Front axle's share of it (–).</summary>
    public required double FrontShareWithTyres { get; init; }

    /// <summary>The bars' part of <see cref="Suspension"/> (–).</summary>
    public required double BarShare { get; init; }

    /// <summary>Gravity's tilting moment M·g·(h − h_axis) that works against it, N m/rad; null without a roll axis height.</summary>
    public required double? Gravity { get; init; }

    /// <summary>Roll of the body at one g of steady lateral acceleration, tyres and gravity included, rad; null without a roll axis height.</summary>
    public required double? AnglePerG { get; init; }

    internal static RollStiffness? Of(RideModel model, Matrix<double> suspension)
    {
        if (!model.Rolls)
        {
            return null;
        }

        double[] arm = [.. Enumerable.Range(0, 4).Select(i => 0.5 * (model.Y[i] - model.Y[i ^ 1]))];
        double Moment(Matrix<double> k, int wheels) =>
            Enumerable.Range(0, wheels).Sum(i => arm[i] * Enumerable.Range(0, 4).Sum(j => k[i, j] * arm[j]));
        var onTyres = SuspensionRates.ThroughTyres(suspension, model.Numbers.TyreRate);
        var total = Moment(suspension, 4);
        // A bar pulls with 2·k·(t/2)·φ at each of its two wheels.
        var bars = model.Car.Axles.Sum(axle => axle.AntiRollBar.Si * axle.Track.Si * axle.Track.Si);
        var hasAxis = model.Car.Body.RollAxisHeight is not null;
        return new RollStiffness
        {
            Suspension = total,
            FrontShare = Moment(suspension, 2) / total,
            WithTyres = Moment(onTyres, 4),
            FrontShareWithTyres = Moment(onTyres, 2) / Moment(onTyres, 4),
            BarShare = bars / total,
            Gravity = hasAxis ? model.RollGravity : null,
            AnglePerG = hasAxis ? StaticTangent.Solve(model, suspension, StaticPush.Of(model, 0.0, Elements.Gravity.Standard))[2] : null,
        };
    }
}
