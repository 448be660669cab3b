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
    /// <summary>The part of what a setting can reach that a cure reaches (–): the last fifth costs as much again. Common practice, no source.</summary>
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
    private readonly RideModel[] described;
    private readonly double[][] before;
    private int passes;

    private CureSearch(CureAsked asked, ImmutableArray<LoadState> loads, CureGuard guard, StudyRun run)
    {
        (this.asked, this.loads, this.run, Guard) = (asked, loads, run, guard);
        described = [.. loads.Select(load => RideModel.Of(asked.Car.Car, load))];
        before = Rows([.. described]);
        // A change counts from what nobody would overlook on.
        Felt = MeasureChange.Felt * before[0][0];
    }

    /// <summary>What no cure may do.</summary>
    public CureGuard Guard { get; }

    /// <summary>Least change of what is to be less that anybody would feel, SI.</summary>
    public double Felt { get; }

    /// <summary>How many passes were driven.</summary>
    public int Passes => passes;

    /// <summary>The cures found, single settings first, each in the order of what it takes off.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="loads">The loads, that which is asked about first.</param>
    /// <param name="guard">What no cure may do.</param>
    /// <param name="run">How it is run.</param>
    /// <returns>The cures and how many passes were driven for them.</returns>
    public static (IReadOnlyList<CureTrial> Trials, int Passes) Of(
        CureAsked asked, ImmutableArray<LoadState> loads, CureGuard guard, StudyRun run)
    {
        var search = new CureSearch(asked, loads, guard, run);
        var (singles, reach) = search.Singles();
        run.Progress?.Report(0.4);
        var pairs = search.Paired(reach);
        run.Progress?.Report(1.0);
        var kept = pairs.Take(MostPairs).ToArray();
        return ([.. singles.Take(Most - kept.Length), .. kept], search.Passes);
    }

    // Each setting's better way, if there is one; and what each setting takes off at most within what is allowed.
    private (IReadOnlyList<CureTrial> Cures, Dictionary<Setting, double> Gains) Singles()
    {
        var ways = CureTurn.Ways(asked.Car.Car);
        CureTrial[] trials = [.. ways.SelectMany(way => way).Select(turn => new CureTrial([turn]))];
        var tried = Tried(trials);
        var (cures, at) = (new List<(CureTrial Trial, double Gain)>(), 0);
        foreach (var way in ways)
        {
            // Past the first step that is not allowed nobody looks.
            var steps = tried[at..(at + way.Length)].TakeWhile(one => one.IsAllowed).ToArray();
            at += way.Length;
            var most = steps.Length == 0 ? 0.0 : steps.Max(one => one.Gain);
            if (most >= Felt)
            {
                var first = steps.First(one => one.Gain >= Math.Max(Felt, Reached * most));
                cures.Add((first.Trial, first.Gain));
            }
        }

        var better = cures.GroupBy(cure => cure.Trial.Turns[0].Setting).Select(group => group.MaxBy(cure => cure.Gain))
            .OrderByDescending(cure => cure.Gain).ToArray();
        return ([.. better.Select(cure => cure.Trial)], better.ToDictionary(cure => cure.Trial.Turns[0].Setting, cure => cure.Gain));
    }

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
            var own = tried[at..(at + trials[k].Length)].Where(one => one.IsAllowed).ToArray();
            at += trials[k].Length;
            if (own.Length > 0)
            {
                var most = own.Max(one => one.Gain);
                var first = own.Where(one => one.Gain >= Reached * most).MinBy(one => (one.Trial.Effort, -one.Gain));
                cures.Add((first.Trial, first.Gain));
            }
        }

        return [.. cures.OrderByDescending(cure => cure.Gain).Select(cure => cure.Trial)];
    }

    // What each trial takes off under the load asked about, and whether it is allowed under every load. Those that take off less than is wanted are
    // not driven under the other loads.
    private (CureTrial Trial, double Gain, bool IsAllowed)[] Tried(CureTrial[] trials, Func<CureTrial, double>? atLeast = null)
    {
        var gains = new double[trials.Length];
        var allowed = new bool[trials.Length];
        for (var load = 0; load < loads.Length; load++)
        {
            var models = new RideModel?[trials.Length];
            ParallelLoop.Each(trials.Length, run.Degree, i =>
            {
                if (load > 0 && !allowed[i])
                {
                    return;
                }

                models[i] = trials[i].ModelOf(asked.Car.Car, loads[load]) is { } model && CureGuard.IsDamped(described[load], model)
                    ? model
                    : null;
            }, run.Cancellation);
            var rows = Rows(models);
            for (var i = 0; i < trials.Length; i++)
            {
                if (load == 0)
                {
                    gains[i] = before[0][0] - rows[i][0];
                    allowed[i] = Guard.Allows(before[0], rows[i]) && (atLeast is null || gains[i] >= atLeast(trials[i]));
                }
                else
                {
                    allowed[i] = allowed[i] && Guard.Allows(before[load], rows[i]);
                }
            }
        }

        return [.. trials.Select((trial, i) => (trial, gains[i], allowed[i]))];
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
