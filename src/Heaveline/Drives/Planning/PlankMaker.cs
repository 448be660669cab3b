using System.Collections.Immutable;
using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Drives.Planning;

/// <summary>
/// Finds rows of planks that excite almost only one motion of a car's body: rows of one to four raised places, by the linear car's closed form at
/// 15 to 30 km/h, the purest moved about until none beside is purer, then driven by the nonlinear car; kept is the one that both find purest among
/// those whose passes are safe.
/// </summary>
public sealed class PlankMaker
{
    // Purest rows of each goal and height that are driven, and how many of those that prove safe are moved about.
    private const int Driven = 80;
    private const int Moved = 3;

    // So many times the least motion the linear car must make (–).
    private const double Spare = 1.25;

    // Steps uphill by the real car's passes.
    private const int MostSteps = 12;

    // Whoever saws boards takes the shorter list where it costs no more than this of the share, per metre of board.
    private const double PerMetre = 0.0005;

    private static readonly PassOptions Options = BatchedMeasures.Usual with { Record = new() { SettlingTime = 1.1 } };
    private static readonly double[] SpeedFactors = [1.0, 1.0 - PlankWish.SpeedError, 1.0 + PlankWish.SpeedError];

    private readonly PlankWish wish;
    private readonly CancellationToken stop;
    private readonly double[] speeds;
    private readonly PlankResponse[][] responses;

    private PlankMaker(PlankWish wish, CancellationToken stop)
    {
        (this.wish, this.stop) = (wish, stop);
        speeds = [.. Enumerable.Range(0, 7).Select(k => PlankWish.Slowest + ((PlankWish.Fastest - PlankWish.Slowest) * k / 6.0))];
        responses = [.. speeds.Select(v => SpeedFactors.Select(f => new PlankResponse(wish.Model, f * v)).ToArray())];
    }

    /// <summary>The best row for each goal; a goal for which no row is safe and moves the car enough is left out.</summary>
    /// <param name="wish">What is looked for.</param>
    /// <param name="degree">How many goals are looked for at once.</param>
    /// <param name="progress">Told the share done (–).</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static ImmutableArray<PlankFind> Of(
        PlankWish wish, int degree = 1, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(wish);
        var maker = new PlankMaker(wish, stop);
        progress?.Report(0.1);
        PlankRow[] rows = [.. PlankRow.All(wish.Boards)];
        var energies = new BodyEnergy[rows.Length][];
        ParallelLoop.Each(rows.Length, degree, i => energies[i] = maker.Nominal(rows[i]), stop);
        progress?.Report(0.5);
        var goals = Enum.GetValues<PlankGoal>();
        var finds = new PlankFind?[goals.Length];
        ParallelLoop.Each(goals.Length, degree, g => finds[g] = maker.Best(goals[g], rows, energies), stop);
        progress?.Report(1.0);
        return [.. finds.OfType<PlankFind>()];
    }

    private BodyEnergy[] Nominal(PlankRow row)
    {
        stop.ThrowIfCancellationRequested();
        return [.. responses.Select(at => at[0].After(row.Edges, row.End))];
    }

    private PlankFind? Best(PlankGoal goal, PlankRow[] rows, BodyEnergy[][] energies)
    {
        var direction = BodyDirection.Of(wish.Model, goal);
        var far = direction.FartherEnd(wish.Model);
        var tries = new List<Try>();
        foreach (var height in wish.Boards.SelectMany(b => new[] { b.Thickness, 2.0 * b.Thickness }).Where(h => h <= PlankWish.MostHeight + 1e-9)
            .Distinct().OrderDescending())
        {
            // Friction and dampers that stiffen leave the real car less motion than the linear one.
            var least = Spare * PlankWish.LeastMotion / (height * far);
            var ranked = Enumerable.Range(0, rows.Length)
                .Where(i => IsMade(rows[i], height))
                .SelectMany(i => Enumerable.Range(0, speeds.Length).Select(v => (Row: rows[i], V: v, Energy: energies[i][v])))
                .Where(r => r.Energy.Along(direction) >= least * least)
                .OrderByDescending(r => r.Energy.ShareOf(direction) - (PerMetre * r.Row.Metres))
                .DistinctBy(r => (r.V, r.Row.Kind))
                .Take(Driven)
                .Select(r => new Try(r.Row, r.V, height))
                .ToList();
            tries.AddRange(Safe(goal, direction, ranked).Take(Moved).SelectMany(
                t => new[] { t, MovedAbout(t, direction, least) }));
        }

        (Try Try, PlankFind Find)? best = null;
        foreach (var one in tries)
        {
            best = Better(best, one);
        }

        // The last steps are the real car's own.
        for (var step = 0; best is { Try: var here } && step < MostSteps; step++)
        {
            foreach (var beside in here.Row.Neighbours().Select(row => here with { Row = row })
                .Concat(new[] { here.V - 1, here.V + 1 }.Where(v => v >= 0 && v < speeds.Length).Select(v => here with { V = v })))
            {
                best = Better(best, beside);
            }

            if (best?.Try == here)
            {
                break;
            }
        }

        return best?.Find;

        (Try, PlankFind)? Better((Try Try, PlankFind Find)? best, Try other)
        {
            stop.ThrowIfCancellationRequested();
            foreach (var layout in other.Row.Layouts(wish.Boards).Where(l => Math.Abs(l.Height - other.Height) < 1e-9))
            {
                if (Drive(goal, direction, layout, other.V) is { } find && (best is not { } b || Worth(find) > Worth(b.Find) + 1e-9))
                {
                    best = (other, find);
                }
            }

            return best;
        }
    }

    // Those of the rows whose pass at the speed is safe, the purest first.
    private IEnumerable<Try> Safe(PlankGoal goal, BodyDirection direction, List<Try> tries)
    {
        List<PlankLayout> layouts = [.. tries.Select(t => t.Row.Layouts(wish.Boards).First(l => Math.Abs(l.Height - t.Height) < 1e-9))];
        var passes = PassBatch.Of([.. tries.Select((t, k) => new PassRequest(wish.Model, layouts[k].Road, speeds[t.V]))], Options, stop);
        return tries.Select((t, k) => (Try: t, Find: Find(goal, direction, layouts[k], t.V, [passes[k]])))
            .Where(t => t.Find is not null)
            .OrderByDescending(t => Worth(t.Find!))
            .Select(t => t.Try);
    }

    private bool IsMade(PlankRow row, double height) => row.Layouts(wish.Boards).Any(l => Math.Abs(l.Height - height) < 1e-9);

    // Uphill to the purest row nearby; the least share of three speeds counts.
    private Try MovedAbout(Try from, BodyDirection direction, double least)
    {
        var (best, at, height, worth) = (from.Row, from.V, from.Height, Worth(from.Row, from.V, direction, least));
        for (var step = 0; step < 40; step++)
        {
            stop.ThrowIfCancellationRequested();
            var (found, foundAt, foundWorth) = (best, at, worth);
            foreach (var (beside, besideAt) in best.Neighbours().Select(n => (n, at))
                .Concat(new[] { at - 1, at + 1 }.Where(k => k >= 0 && k < speeds.Length).Select(k => (best, k))))
            {
                if (Worth(beside, besideAt, direction, least) is var w && w > foundWorth + 1e-6 && IsMade(beside, height))
                {
                    (found, foundAt, foundWorth) = (beside, besideAt, w);
                }
            }

            if (foundWorth <= worth)
            {
                break;
            }

            (best, at, worth) = (found, foundAt, foundWorth);
        }

        return new(best, at, height);
    }

    private double Worth(PlankRow row, int v, BodyDirection direction, double least)
    {
        BodyEnergy[] three = [.. responses[v].Select(r => r.After(row.Edges, row.End))];
        return three[0].Along(direction) < least * least
            ? double.NegativeInfinity
            : three.Min(e => e.ShareOf(direction)) - (PerMetre * row.Metres);
    }

    private static double Worth(PlankFind find) => Math.Min(find.LeastShare, find.LinearShare) - (PerMetre * CuttingList.Metres(find.Layout, 2));

    private PlankFind? Drive(PlankGoal goal, BodyDirection direction, PlankLayout layout, int v)
    {
        var road = layout.Road;
        return Find(
            goal, direction, layout, v, PassBatch.Of([.. SpeedFactors.Select(f => new PassRequest(wish.Model, road, f * speeds[v]))], Options, stop));
    }

    // Null where a pass is not safe, or moves the car too little.
    private PlankFind? Find(PlankGoal goal, BodyDirection direction, PlankLayout layout, int v, IReadOnlyList<Pass> passes)
    {
        if (!passes.All(p => SafePass.Is(p) && SafePass.LeastLoad(p) >= PlankWish.LeastLoad))
        {
            return null;
        }

        var motions = passes.Select(PlankMotion.Of).ToList();
        var motion = direction.FartherEnd(wish.Model) * Math.Sqrt(motions[0].After.Along(direction));
        return motion < PlankWish.LeastMotion
            ? null
            : new PlankFind
            {
                Goal = goal,
                Layout = layout,
                Speed = speeds[v],
                LinearShare = LinearShare(responses[v][0], layout, direction),
                Share = motions[0].After.ShareOf(direction),
                LeastShare = motions.Min(m => m.After.ShareOf(direction)),
                WholeShare = motions[0].Whole.ShareOf(direction),
                Motion = motion,
                LeastLoad = passes.Min(SafePass.LeastLoad),
                TravelLeft = passes.Min(SafePass.TravelLeft),
                Pass = passes[0],
            };
    }

    private static double LinearShare(PlankResponse response, PlankLayout layout, BodyDirection direction)
    {
        var (step, heave, turn) = response.Over(layout);
        var from = (int)Math.Ceiling((layout.End + response.Model.Car.Wheelbase.Si) / response.Speed / step);
        var count = (int)(PitchSettling.Second / step);
        var (zz, zt, tt) = (0.0, 0.0, 0.0);
        for (var k = from; k < from + count; k++)
        {
            (zz, zt, tt) = (zz + (heave[k] * heave[k]), zt + (heave[k] * turn[k]), tt + (turn[k] * turn[k]));
        }

        return new BodyEnergy(zz / count, zt / count, tt / count).ShareOf(direction);
    }

    // A row at a speed, its greatest height.
    private readonly record struct Try(PlankRow Row, int V, double Height);
}
