using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Drives.Planning;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Causes;

/// <summary>Finds the road tests for causes that a load can change.</summary>
internal sealed class TestPlan
{
    /// <summary>Nobody is sent over an obstacle faster, m/s. Common practice, no source.</summary>
    public static double FastestOverObstacle { get; } = 30.0 / In.KilometresPerHour.Factor;

    /// <summary>Nor along a road without one, m/s. Common practice, no source.</summary>
    public static double FastestOnRoad { get; } = 50.0 / In.KilometresPerHour.Factor;

    /// <summary>Nor more slowly than this unless asked, m/s. Common practice, no source.</summary>
    public static double Slowest { get; } = 10.0 / In.KilometresPerHour.Factor;

    /// <summary>So far every wheel stays from its stops, m. Common practice, no source.</summary>
    public const double StopMargin = SafePass.StopMargin;

    /// <summary>A load that moves a cause by less of its value hardly changes it (–). Common practice, no source.</summary>
    public const double LeastMove = 0.02;

    private const int Draws = 100;
    private const int EnoughPasses = 10;

    private static readonly PassOptions Options = BatchedMeasures.Usual with { Record = new() { SettlingTime = 1.1 } };

    private readonly Why why;
    private readonly int degree;
    private readonly CancellationToken cancellation;
    private readonly IReadOnlyList<Lazy<Trial>> ballasted;
    private readonly Dictionary<(LoadState, LoadState), DoubtInterval> doubts = [];

    /// <summary>The plan for a car's causes; the same loads serve every cause.</summary>
    /// <param name="why">The causes.</param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="cancellation">Stops the work.</param>
    public TestPlan(Why why, int degree, CancellationToken cancellation)
    {
        (this.why, this.degree, this.cancellation) = (why, degree, cancellation);
        ballasted = [.. Ballasts(why.Model).Select(pair => new Lazy<Trial>(() => Tried(pair.First, pair.Second)))];
    }

    /// <summary>The greatest speed at which a test is planned, m/s.</summary>
    /// <param name="road">The road.</param>
    /// <param name="asked">The speed asked about, m/s.</param>
    public static double Fastest(Road road, double asked) => Math.Min(asked, road.Event is null ? FastestOnRoad : FastestOverObstacle);

    /// <summary>The test of a cause, or why there is none; neither for a cause that no load moves.</summary>
    /// <param name="kind">The cause.</param>
    public (PlannedTest? Test, NoTest? None) Of(PitchCauseKind kind)
    {
        if (kind != PitchCauseKind.Load && !CauseValue.Kinds.Contains(kind))
        {
            return (null, null);
        }

        var alone = NeutralLoad.Of(why.Model.Car, why.Model.Load);
        if (alone.Loads.Count == 0)
        {
            return (null, new(kind, NoTestReason.NoDriver, null));
        }

        PlannedTest? best = null, nearest = null;
        var reasons = new SortedSet<NoTestReason>();
        foreach (var trial in kind == PitchCauseKind.Load ? [Tried(why.Model.Load, alone)] : ballasted.Select(b => b.Value))
        {
            if (trial.Test is null)
            {
                reasons.Add(trial.Reason);
                continue;
            }

            var test = trial.Test with { Kind = kind };
            if (double.IsNaN(test.Part))
            {
                reasons.Add(NoTestReason.NotParted);
            }
            else if (test.IsTheCausesOwn && (best is null || test.Passes < best.Passes))
            {
                best = test;
                if (best.Passes <= EnoughPasses)
                {
                    break;
                }
            }

            nearest = nearest is null || Math.Abs(test.Part) > Math.Abs(nearest.Part) ? test : nearest;
        }

        return best is { IsWorthDriving: true } ? (WithDoubts(best), null)
            : best is not null ? (null, new(kind, NoTestReason.NotEnough, best))
            : nearest is not null && double.IsFinite(nearest.Part) ? (null, new(kind, Weak(nearest), nearest))
            : (null, new(kind, reasons.Count > 0 ? reasons.Min : NoTestReason.NoPlace, null));
    }

    // A load may move the cause well and something else more, or hardly at all.
    private static NoTestReason Weak(PlannedTest test) =>
        test.Moved.Single(m => m.Kind == test.Kind).Relative >= LeastMove && test.Moved.Any(m => Math.Abs(m.Part) > Math.Abs(test.Part))
            ? NoTestReason.OthersMore
            : NoTestReason.NotEnough;

    // Two loadings that can be driven; the smaller ones first.
    private static IEnumerable<(LoadState First, LoadState Second)> Ballasts(RideModel model)
    {
        var alone = NeutralLoad.Of(model.Car, model.Load);
        if (alone.Loads.Count == 0)
        {
            yield break;
        }

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

    private Trial Tried(LoadState first, LoadState second)
    {
        try
        {
            var measure = (Measure<Pass>)why.Settling.Measure;
            RideModel[] models = [RideModel.Of(why.Model.Car, first), RideModel.Of(why.Model.Car, second)];
            var stands = true;
            foreach (var speed in Speeds(why.Road, why.Speed))
            {
                var passes = models.Select(m => Pass.Of(m, why.Road, speed, Options, cancellation)).ToList();
                stands = passes.TrueForAll(StandsFree);
                if (!stands)
                {
                    break;
                }

                if (passes.TrueForAll(SafePass.Is))
                {
                    var (before, after) = (measure.Of(passes[0]), measure.Of(passes[1]));
                    return new(
                        new PlannedTest
                        {
                            Kind = PitchCauseKind.Load,
                            Speed = speed,
                            First = first,
                            Second = second,
                            Moved = [.. CauseValue.Kinds.Where(k => why.Settling.Causes.Any(c => c.Kind == k))
                                .Select(k => Moved(k, models[0], models[1], speed, after))],
                            Measure = measure,
                            Before = before,
                            After = after,
                            OwnScatter = Scatter(passes, models, speed),
                            Doubts = new(after - before, after - before),
                        },
                        default);
                }
            }

            return new(null, stands ? NoTestReason.NoSafeSpeed : NoTestReason.StandsAtStop);
        }
        catch (RefusedValueException)
        {
            return new(null, NoTestReason.CannotStand);
        }
    }

    // Of both loadings together, each with how much its speed counts.
    private double? Scatter(List<Pass> passes, RideModel[] models, double speed)
    {
        if (why.Road.Event is null)
        {
            return null;
        }

        var faster = SafePass.Tried(speed).Max();
        var measure = (Measure<Pass>)why.Settling.Measure;
        return Math.Sqrt(passes.Select((pass, i) =>
        {
            var other = measure.Of(Pass.Of(models[i], why.Road, faster, Options, cancellation));
            return PassScatter.Of(pass, Math.Log(other / measure.Of(pass)) / Math.Log(faster / speed), RoadClass.B);
        }).Average(s => s * s));
    }

    private MovedCause Moved(PitchCauseKind kind, RideModel first, RideModel second, double speed, double after)
    {
        var (from, to) = (CauseValue.Of(first, kind), CauseValue.Of(second, kind));
        return new MovedCause { Kind = kind, First = from, Second = to, Part = Part() };

        double Part()
        {
            try
            {
                var pass = Pass.Of(CauseValue.Set(second, kind, from), why.Road, speed, Options, cancellation);
                return pass.Outcome == PassOutcome.Completed ? after - ((Measure<Pass>)why.Settling.Measure).Of(pass) : double.NaN;
            }
            catch (RefusedValueException)
            {
                return double.NaN;
            }
        }
    }

    // From the fastest down in whole fives of km/h.
    private static IEnumerable<double> Speeds(Road road, double asked)
    {
        var most = Fastest(road, asked);
        yield return most;
        for (var v = (int)Math.Ceiling(In.KilometresPerHour.Of(most) / 5.0) - 1; v >= 2; v--)
        {
            yield return 5.0 * v / In.KilometresPerHour.Factor;
        }
    }

    // Before the obstacle: every wheel bears, none near a stop. Where one is, no obstacle is low enough.
    private static bool StandsFree(Pass pass) => Enumerable.Range(0, 4).All(i =>
        pass.TyreLoad(i)[0] > 0.0
        && pass.Travel(i)[0] < pass.Model.BumpTouch[i] - StopMargin && pass.Travel(i)[0] > pass.Model.ReboundTouch[i] + StopMargin);

    private PlannedTest WithDoubts(PlannedTest test)
    {
        if (!doubts.TryGetValue((test.First, test.Second), out var interval))
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
            interval = study.Changes[0][0] is { Count: > 1 } change ? change.Central95 : test.Doubts;
            doubts[(test.First, test.Second)] = interval;
        }

        return test with { Doubts = interval };
    }

    // Two loadings driven in thought: the test but for its cause, or why it cannot be driven.
    private sealed record Trial(PlannedTest? Test, NoTestReason Reason);
}
