using System.Collections.Concurrent;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Pieces;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>The maps of a rule, some speeds at a time: here all at once, or piece by piece through others.</summary>
/// <param name="asked">What is asked.</param>
internal sealed class RulePieces(RuleAsked asked) : IPieceDoer
{
    // Of a fine map about 250 passes, some hundredths of a second's work: no long wait at its end, and few pieces for so small a study.
    private const int AtOnce = 4;

    private readonly ConcurrentDictionary<RulePiece, Lazy<RulePasses>> maps = new();
    private readonly Lazy<IReadOnlyList<double>> owns = new(() => OwnValues(asked));

    /// <summary>The loads: first that which was asked for.</summary>
    public IReadOnlyList<LoadState> Loads { get; } =
        [asked.Car.Load, .. RuleStudy.AllLoads(asked.Car.Car).Where(l => l.Name != asked.Car.Load.Name)];

    /// <summary>The measures, in groups that share passes: those that look about as long, with the one by the hit beside.</summary>
    public IReadOnlyList<(IReadOnlyList<Measure<Pass>> Measures, int Count)> Groups { get; } = GroupsOf(asked);

    /// <summary>The car's own value under each load that it can stand under: the map reaches past all of them.</summary>
    public IReadOnlyList<double> Owns => owns.Value;

    /// <summary>The car under one of the loads.</summary>
    /// <exception cref="RefusedValueException">It cannot stand so.</exception>
    public RideModel Model(int load) => load == 0 ? asked.Car.Model : RideModel.Of(asked.Car.Car, Loads[load]);

    /// <inheritdoc/>
    public byte[] Do(byte[] piece, CancellationToken cancellation)
    {
        var own = RulePiece.Of(piece);
        return RulePiece.Answer(Passes(own).Run(own.First, own.Count, 1, null, cancellation));
    }

    /// <summary>A map by the measures of a group.</summary>
    /// <param name="map">Which: its speeds are all of them.</param>
    /// <param name="doer">Does its pieces; null: driven here.</param>
    /// <param name="run">How.</param>
    public IReadOnlyList<RuleMap> Maps(RulePiece map, IPieceDoer? doer, StudyRun run)
    {
        var passes = Passes(map);
        return RuleMap.Of(passes, doer is null
            ? passes.Run(0, map.Speeds, run.Degree, run.Progress, run.Cancellation)
            : Through(map, doer, run));
    }

    private static (double[][] Rows, PassOutcome?[] Outcomes) Through(RulePiece map, IPieceDoer doer, StudyRun run)
    {
        var parts = new (double[][] Rows, PassOutcome?[] Outcomes)[(map.Speeds + AtOnce - 1) / AtOnce];
        var done = 0;
        ParallelLoop.Each(parts.Length, run.PiecesAtOnce, k =>
        {
            var first = k * AtOnce;
            var piece = map with { First = first, Count = Math.Min(AtOnce, map.Speeds - first) };
            parts[k] = RulePiece.Answer(doer.Do(piece.ToBytes(), run.Cancellation));
            run.Progress?.Report(Interlocked.Increment(ref done) / (double)parts.Length);
        }, run.Cancellation);
        return ([.. parts.SelectMany(part => part.Rows)], [.. parts.SelectMany(part => part.Outcomes)]);
    }

    private static (IReadOnlyList<Measure<Pass>> Measures, int Count)[] GroupsOf(RuleAsked asked)
    {
        var hit = HitCatalogue.PeakPitchAcceleration;
        Measure<Pass>[] measures =
            [asked.Measure, .. asked.Also.Where(m => m.Key != asked.Measure.Key && m.WhyNone(asked.Car.Car) is null)];
        return
        [
            .. measures.GroupBy(m => m.LooksFor > PitchSettling.Second).Select(all =>
            {
                Measure<Pass>[] group = [.. all];
                return group.All(m => m.LooksFor <= 0.0 || m.Key == hit.Key) || group.Any(m => m.Key == hit.Key)
                    ? ((IReadOnlyList<Measure<Pass>>)group, group.Length)
                    : ([.. group, hit], group.Length);
            }),
        ];
    }

    private static IReadOnlyList<double> OwnValues(RuleAsked asked)
    {
        var own = asked.Rule.Axis(asked.Car.Model, 2).Own;
        var owns = new List<double> { own(asked.Car.Model) };
        foreach (var load in RuleStudy.AllLoads(asked.Car.Car).Where(l => l.Name != asked.Car.Load.Name))
        {
            try
            {
                owns.Add(own(RideModel.Of(asked.Car.Car, load)));
            }
            catch (NoAnswerException)
            {
                // No line for this load either; why is said beside the map.
                continue;
            }
        }

        return owns;
    }

    private RulePasses Passes(RulePiece piece) => maps.GetOrAdd(piece with { First = 0, Count = 0 }, map => new Lazy<RulePasses>(() =>
    {
        if (map.Load < 0 || map.Load >= Loads.Count || map.Group < 0 || map.Group >= Groups.Count)
        {
            throw new FormatException("This is no piece of this study.");
        }

        var model = Model(map.Load);
        return RulePasses.Of(
            model, asked.Road, asked.Rule.Axis(model, map.Values, Owns), EvenSpeeds.Of(asked.Slowest, asked.Fastest, map.Speeds),
            Groups[map.Group].Measures, null, CancellationToken.None);
    })).Value;
}
