using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>
/// Tries what can be set on a car: every setting alone, both ways, in even steps to the end of its slider; then pairs. A cure is the smallest change
/// that reaches most of what its setting can reach without doing what no cure may do, under any of the car's loads.
/// </summary>
internal sealed class CureSearch
{
    /// <summary>The part of what a setting can reach that a cure reaches (–). Judged by eye, no source.</summary>
    public const double Reached = 0.8;

    /// <summary>Most cures that are told, pairs among them.</summary>
    public const int Most = 8;

    /// <summary>Most pairs that are told.</summary>
    public const int MostPairs = 3;

    // Every third step of a setting meets every third of another's.
    private const int PairStride = 3;

    private static readonly (Setting One, Setting Other)[] Pairs =
    [
        (new SpringSetting(AxleEnd.Front), new SpringSetting(AxleEnd.Rear)),
        (new DampingSetting(AxleEnd.Front), new DampingSetting(AxleEnd.Rear)),
        (new SpringSetting(AxleEnd.Front), new DampingSetting(AxleEnd.Front)),
        (new SpringSetting(AxleEnd.Rear), new DampingSetting(AxleEnd.Rear)),
        (new SpringSetting(AxleEnd.Front), new DampingSetting(AxleEnd.Rear)),
        (new SpringSetting(AxleEnd.Rear), new DampingSetting(AxleEnd.Front)),
    ];

    private readonly CureAsked asked;
    private readonly StudyRun run;
    private readonly ImmutableArray<LoadState> loads;
    private readonly CureStance[] stances;
    private readonly double[][] before;
    private readonly Func<CureTrial, CureEnd?> against;
    private int passes;

    private CureSearch(
        CureAsked asked, ImmutableArray<LoadState> loads, CureGuard guard, Func<CureTrial, CureEnd?> against, StudyRun run)
    {
        (this.asked, this.loads, this.run, this.against, Guard) = (asked, loads, run, against, guard);
        RideModel[] described = [.. loads.Select(load => RideModel.Of(asked.Car.Car, load))];
        stances = [.. described.Select(CureStance.Of)];
        before = Rows([.. described]);
        // A change counts from what nobody would overlook on.
        Felt = MeasureChange.Felt * before[0][0];
    }

    /// <summary>What no cure may do.</summary>
    public CureGuard Guard { get; }

    /// <summary>Least change of what is to be less that anybody would feel, SI.</summary>
    public double Felt { get; }

    /// <summary>The cures found, single settings first, each in the order of what it takes off.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="loads">The loads, that which is asked about first.</param>
    /// <param name="guard">What no cure may do.</param>
    /// <param name="against">What no cure may do and a trial does by the passes that are told; null for nothing.</param>
    /// <param name="run">How it is run.</param>
    /// <returns>The cures, what would help but is none, and how many passes were driven for them.</returns>
    public static (IReadOnlyList<CureTrial> Trials, IReadOnlyList<CureLeft> Left, int Passes) Of(
        CureAsked asked, ImmutableArray<LoadState> loads, CureGuard guard, Func<CureTrial, CureEnd?> against, StudyRun run)
    {
        var search = new CureSearch(asked, loads, guard, against, run);
        if (guard.Measured[0].IsShownAsNothing(search.before[0][0]))
        {
            run.Progress?.Report(1.0);
            return ([], [], search.passes);
        }

        var (singles, reach, left) = search.Singles();
        run.Progress?.Report(0.4);
        var pairs = search.Paired(reach);
        run.Progress?.Report(1.0);
        var kept = pairs.Take(MostPairs).ToArray();
        return ([.. singles.Take(Most - kept.Length), .. kept], left, search.passes);
    }

    // Each setting's better way, if there is one; what each takes off; and the ways that would take off what is felt but for what no cure may do.
    private (IReadOnlyList<CureTrial> Cures, Dictionary<Setting, double> Gains, IReadOnlyList<CureLeft> Left) Singles()
    {
        var ways = CureTurn.Ways(asked.Car.Car);
        CureTrial[] trials = [.. ways.SelectMany(way => way).Select(turn => new CureTrial([turn]))];
        var tried = Tried(trials);
        var (cures, left, at) = (new List<(CureTrial Trial, double Gain)>(), new List<(Setting Setting, CureLeft Left)>(), 0);
        var ends = Ends(ways, tried);
        foreach (var (w, way) in ways.Index())
        {
            // Past the first step that is not allowed nobody looks.
            var all = tried[at..(at + way.Length)];
            var steps = all.TakeWhile(one => one.Breach == CureBreach.None).ToArray();
            at += way.Length;
            var most = steps.Length == 0 ? 0.0 : steps.Max(one => one.Gain);
            var end = ends[w];
            if (most >= Felt)
            {
                // That which reaches most of it with the least, or where the passes that are told speak against it the next smaller.
                var first = steps.Index().First(one => one.Item.Gain >= Math.Max(Felt, Reached * most)).Index;
                CureEnd? said = null;
                for (; first >= 0 && steps[first].Gain >= Felt && against(steps[first].Trial) is { } objection; first--)
                {
                    (said, end) = (objection, objection with { Last = first == 0 ? "" : way[first - 1].Amount });
                }

                if (first >= 0 && steps[first].Gain >= Felt)
                {
                    cures.Add((steps[first].Trial with { End = end }, steps[first].Gain));
                }
                else if (said is not null)
                {
                    left.Add((way[0].Setting, new CureLeft(way[0].Act, said)));
                }
            }
            else if (end is not null && all.Any(one => one.Gain >= Felt))
            {
                left.Add((way[0].Setting, new CureLeft(way[0].Act, end)));
            }
        }

        var better = cures.GroupBy(cure => cure.Trial.Turns[0].Setting).Select(group => group.MaxBy(cure => cure.Gain))
            .OrderByDescending(cure => cure.Gain).ToArray();
        return ([.. better.Select(cure => cure.Trial)], better.ToDictionary(cure => cure.Trial.Turns[0].Setting, cure => cure.Gain),
            [.. left.Select(one => one.Left)]);
    }

    // How far each way may be turned, to a step of its slider, and what it does there under which load; null where its slider ends first.
    private CureEnd?[] Ends(
        IReadOnlyList<ImmutableArray<CureTurn>> ways, (CureTrial Trial, double Gain, CureBreach Breach, string Load)[] tried)
    {
        var (at, open) = (0, new List<Bound>());
        var ends = new CureEnd?[ways.Count];
        foreach (var (w, way) in ways.Index())
        {
            var allowed = tried[at..(at + way.Length)].TakeWhile(one => one.Breach == CureBreach.None).Count();
            if (allowed < way.Length)
            {
                open.Add(new Bound(w, allowed == 0 ? null : way[allowed - 1], way[allowed], tried[at + allowed]));
            }

            at += way.Length;
        }

        while (open.Count > 0)
        {
            var between = open.ToDictionary(bound => bound.Way, bound => CureTurn.Between(bound.Allowed, bound.Refused));
            foreach (var done in open.Where(bound => between[bound.Way] is null))
            {
                ends[done.Way] = CureCrossing.Told(
                    asked, done.By.Trial, new CureEnd(done.By.Breach, done.By.Load, done.Allowed?.Amount ?? ""), loads, run.Cancellation);
            }

            open.RemoveAll(bound => between[bound.Way] is null);
            var met = Tried([.. open.Select(bound => new CureTrial([between[bound.Way]!]))]);
            open = [.. open.Select((bound, k) => met[k].Breach == CureBreach.None
                ? bound with { Allowed = between[bound.Way] }
                : bound with { Refused = between[bound.Way]!, By = met[k] })];
        }

        return ends;
    }

    private sealed record Bound(int Way, CureTurn? Allowed, CureTurn Refused, (CureTrial Trial, double Gain, CureBreach Breach, string Load) By);

    // Pairs that take off more than the better of their two alone, by what is felt.
    private IReadOnlyList<CureTrial> Paired(Dictionary<Setting, double> alone)
    {
        var ways = CureTurn.Ways(asked.Car.Car).ToLookup(way => way[0].Setting, way => way.Where(turn => turn.Step % PairStride == 0));
        CureTrial[] Trials((Setting One, Setting Other) pair) =>
        [
            .. from first in ways[pair.One]
               from second in ways[pair.Other]
               from one in first
               from other in second
               select new CureTrial([one, other]),
        ];
        var trials = Pairs.Select(Trials).ToArray();
        var tried = Tried([.. trials.SelectMany(one => one)], atLeast: pair =>
            Felt + pair.Turns.Max(turn => alone.GetValueOrDefault(turn.Setting)));
        var (cures, at) = (new List<(CureTrial Trial, double Gain)>(), 0);
        foreach (var (k, pair) in Pairs.Index())
        {
            var own = tried[at..(at + trials[k].Length)].Where(one => one.Breach == CureBreach.None).ToArray();
            at += trials[k].Length;
            if (own.Length > 0)
            {
                var most = own.Max(one => one.Gain);
                foreach (var first in own.Where(one => one.Gain >= Reached * most).OrderBy(one => (one.Trial.Effort, -one.Gain)))
                {
                    if (against(first.Trial) is null)
                    {
                        cures.Add((first.Trial, first.Gain));
                        break;
                    }
                }
            }
        }

        return [.. cures.OrderByDescending(cure => cure.Gain).Select(cure => cure.Trial)];
    }

    // What each trial takes off under the load asked about, and what it does under any load that no cure may do. Those that do it are not driven
    // under the other loads, nor are those that take off less than is wanted: they count as none.
    private (CureTrial Trial, double Gain, CureBreach Breach, string Load)[] Tried(CureTrial[] trials, Func<CureTrial, double>? atLeast = null)
    {
        var gains = new double[trials.Length];
        var (breaches, under) = (new CureBreach[trials.Length], new string[trials.Length]);
        for (var load = 0; load < loads.Length; load++)
        {
            var models = new RideModel?[trials.Length];
            ParallelLoop.Each(trials.Length, run.Degree, i =>
            {
                if (breaches[i] == CureBreach.None && (models[i] = trials[i].ModelOf(asked.Car.Car, loads[load])) is { } model
                    && CureStance.Of(model).Breach(stances[load]) is not CureBreach.None and var breach)
                {
                    (breaches[i], under[i]) = (breach, loads[load].Name);
                    // Driven all the same where it may be told that it would help.
                    models[i] = load == 0 && atLeast is null ? model : null;
                }
            }, run.Cancellation);
            var rows = Rows(models);
            for (var i = 0; i < trials.Length; i++)
            {
                gains[i] = load == 0 ? before[0][0] - rows[i][0] : gains[i];
                if (breaches[i] == CureBreach.None)
                {
                    under[i] = loads[load].Name;
                    breaches[i] = load == 0 && atLeast is not null && !(gains[i] >= atLeast(trials[i]))
                        ? CureBreach.NoCrossing
                        : Guard.Breach(before[load], rows[i]);
                }
            }
        }

        return [.. trials.Select((trial, i) => (trial, gains[i], breaches[i], under[i]))];
    }

    private double[][] Rows(IReadOnlyList<RideModel?> models)
    {
        passes += models.Count(model => model is not null);
        return BatchedMeasures.Of(
            [.. models.Select(model => model is null ? null : new PassRequest(model, asked.Road, asked.Speed))],
            Guard.Measured,
            BatchedMeasures.Usual,
            run.Degree,
            run.Cancellation);
    }
}
