using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Tuning;

namespace Heaveline.Causes;

/// <summary>Finds the road tests for causes that a load can change.</summary>
internal static class TestPlan
{
    /// <summary>Nobody is sent over an obstacle faster, m/s. Common practice, no source.</summary>
    public static double FastestOverObstacle { get; } = 30.0 / In.KilometresPerHour.Factor;

    /// <summary>Nor along a road without one, m/s. Common practice, no source.</summary>
    public static double FastestOnRoad { get; } = 50.0 / In.KilometresPerHour.Factor;

    /// <summary>So far every wheel stays from its stops, m. Common practice, no source.</summary>
    public const double StopMargin = 0.005;

    private const int Draws = 100;
    private const int EnoughPasses = 10;

    private static readonly PassOptions Options = BatchedMeasures.Usual with { Record = new() { SettlingTime = 1.1 } };

    /// <summary>The test of a cause; null where no load changes it, where none can be laid so, or where no speed is safe.</summary>
    /// <param name="why">The causes.</param>
    /// <param name="kind">The cause.</param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static PlannedTest? Of(Why why, PitchCauseKind kind, int degree, CancellationToken cancellation)
    {
        PlannedTest? best = null;
        foreach (var (first, second) in Loadings(why.Model, kind))
        {
            if (At(why, kind, first, second, cancellation) is { } test && (best is null || test.Passes < best.Passes))
            {
                best = test;
                if (best.Passes <= EnoughPasses)
                {
                    break;
                }
            }
        }

        return best is null ? null : WithDoubts(best, why, degree, cancellation);
    }

    // Two loadings that can be driven; the smaller ones first.
    private static IEnumerable<(LoadState First, LoadState Second)> Loadings(RideModel model, PitchCauseKind kind)
    {
        var alone = NeutralLoad.Of(model.Car, model.Load);
        if (alone.Loads.Count == 0)
        {
            yield break;
        }

        if (kind == PitchCauseKind.Load && alone != model.Load)
        {
            yield return (model.Load, alone);
        }

        if (kind == PitchCauseKind.FrequencyRatio)
        {
            var driver = alone.Loads[0];
            foreach (var mass in model.Rolls ? new[] { 40.0, 80.0, 120.0 } : [15.0, 30.0])
            {
                LoadState With(string where, double behind, double left, double height) => new()
                {
                    Name = FormattableString.Invariant($"{alone.Name} with {mass:F0} kg {where}"),
                    Loads =
                    [
                        .. alone.Loads,
                        new Load
                        {
                            Name = "ballast", Mass = new(mass), BehindFrontAxle = new(behind), LeftOfMiddle = new(left), Height = new(height),
                        },
                    ],
                };
                var free = model.Car.Seats.Where(s => Math.Abs(s.BehindFrontAxle.Si - driver.BehindFrontAxle.Si) > 0.3
                    || Math.Abs(s.LeftOfMiddle.Si - driver.LeftOfMiddle.Si) > 0.2).ToList();
                if (!model.Rolls)
                {
                    // Nothing can be laid over a front wheel; behind the rider there is a seat or nothing.
                    if (free.MaxBy(s => s.BehindFrontAxle.Si) is { } pillion && pillion.BehindFrontAxle.Si > driver.BehindFrontAxle.Si)
                    {
                        yield return (alone, With($"on the seat '{pillion.Name}'", pillion.BehindFrontAxle.Si, 0.0, pillion.Height.Si));
                    }

                    continue;
                }

                var front = free.MinBy(s => s.BehindFrontAxle.Si);
                var rear = With("on the floor over the rear axle", model.Car.Wheelbase.Si, 0.0, driver.Height.Si);
                yield return front is not null && front.BehindFrontAxle.Si < 0.65 * model.Car.Wheelbase.Si
                    ? (rear, With($"on the seat '{front.Name}'", front.BehindFrontAxle.Si, front.LeftOfMiddle.Si, front.Height.Si))
                    : (rear, alone);
            }
        }
    }

    private static PlannedTest? At(Why why, PitchCauseKind kind, LoadState first, LoadState second, CancellationToken cancellation)
    {
        try
        {
            var measure = (Measure<Pass>)why.Settling.Measure;
            RideModel[] models = [RideModel.Of(why.Model.Car, first), RideModel.Of(why.Model.Car, second)];
            foreach (var speed in Speeds(why.Road, why.Speed))
            {
                var passes = models.Select(m => Pass.Of(m, why.Road, speed, Options, cancellation)).ToList();
                if (passes.TrueForAll(IsSafe) && measure.Of(passes[0]) is var before && measure.Of(passes[1]) is var after && before != after)
                {
                    return new PlannedTest
                    {
                        Kind = kind,
                        Speed = speed,
                        First = first,
                        Second = second,
                        Ratio = (RideTuning.Of(models[0]).Ratio, RideTuning.Of(models[1]).Ratio),
                        Measure = measure,
                        Before = before,
                        After = after,
                        Doubts = new(after - before, after - before),
                    };
                }
            }
        }
        catch (RefusedValueException)
        {
            // The car cannot stand under such a load: there is no such test.
        }

        return null;
    }

    // From the fastest down in whole fives of km/h.
    private static IEnumerable<double> Speeds(Road road, double asked)
    {
        var most = Math.Min(asked, road.Event is null ? FastestOnRoad : FastestOverObstacle);
        yield return most;
        for (var v = (int)Math.Ceiling(In.KilometresPerHour.Of(most) / 5.0) - 1; v >= 2; v--)
        {
            yield return 5.0 * v / In.KilometresPerHour.Factor;
        }
    }

    /// <summary>Whether a pass ran to its end, its wheels on the ground and well off every stop.</summary>
    internal static bool IsSafe(Pass pass) =>
        pass.Outcome == PassOutcome.Completed && Enumerable.Range(0, 4).All(i =>
            pass.TyreLoad(i).All(n => n > 0.0)
            && pass.Travel(i).All(s => s < pass.Model.BumpTouch[i] - StopMargin && s > pass.Model.ReboundTouch[i] + StopMargin));

    private static PlannedTest WithDoubts(PlannedTest test, Why why, int degree, CancellationToken cancellation)
    {
        var study = JointStudy.OfPasses(
            [CarDoubts.Of(why.Model.Car, test.First), CarDoubts.Of(why.Model.Car, test.Second)],
            why.Road,
            test.Speed,
            [(Measure<Pass>)test.Measure],
            Draws,
            seed: 1,
            degree: degree,
            cancellation: cancellation);
        return study.Changes[0][0] is { Count: > 1 } change ? test with { Doubts = change.Central95 } : test;
    }
}
