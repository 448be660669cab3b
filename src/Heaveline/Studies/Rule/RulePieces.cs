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

    private readonly Dictionary<RulePiece, RulePasses> maps = [];
    private readonly Lock making = new();
    private readonly Lazy<IReadOnlyList<double>> owns = new(() => OwnValues(asked));

    /// <summary>The loads: first that which was asked for.</summary>
    public IReadOnlyList<LoadState> Loads { get; } =
        [asked.Car.Load, .. RuleStudy.AllLoads(asked.Car.Car).Where(l => l.Name != asked.Car.Load.Name)];

    /// <summary>The measures, in groups that share passes: those that look about as long, with the one by the hit beside.</summary>
    public IReadOnlyList<(IReadOnlyList<Measure<Pass>> Measures, int Count)> Groups { get; } = GroupsOf(asked);

    /// <summary>The car's own value under each load that it can stand under: the map reaches past all of them.</summary>
    public IReadOnlyList<double> Owns => owns.Value;

    /// <summary>Values and speeds of the map under another load than that which was asked for.</summary>
    public (int Values, int Speeds) AnotherLoad => (RuleDetail.Plain.Values, Math.Min(asked.Detail.Speeds, asked.Detail.LoadSpeeds));

    /// <summary>The car under one of the loads.</summary>
    /// <exception cref="RefusedValueException">It cannot stand so.</exception>
    public RideModel Model(int load) => load == 0 ? asked.Car.Model : RideModel.Of(asked.Car.Car, Loads[load]);

    /// <inheritdoc/>
    public byte[] Do(byte[] piece, CancellationToken cancellation)
    {
        var own = RulePiece.Of(piece);
        return own is { First: >= 0, Count: > 0 and <= AtOnce } && own.First <= own.Speeds - own.Count
            ? RulePiece.Answer(Passes(own, cancellation).Run(own.First, own.Count, 1, null, cancellation))
            : throw Another();
    }

    /// <summary>A map by the measures of a group.</summary>
    /// <param name="map">Which: its speeds are all of them.</param>
    /// <param name="doer">Does its pieces; null: driven here.</param>
    /// <param name="run">How.</param>
    public IReadOnlyList<RuleMap> Maps(RulePiece map, IPieceDoer? doer, StudyRun run)
    {
        var passes = Passes(map, run.Cancellation);
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

    private static FormatException Another() => new("This is no piece of this study.");

    // Of several that ask at once one makes the cars; where it is stopped, the next one does.
    private RulePasses Passes(RulePiece piece, CancellationToken cancellation)
    {
        var map = piece with { First = 0, Count = 0 };
        lock (making)
        {
            if (!maps.TryGetValue(map, out var passes))
            {
                maps.Add(map, passes = Made(map, cancellation));
            }

            return passes;
        }
    }

    private RulePasses Made(RulePiece map, CancellationToken cancellation)
    {
        if (!IsAsked(map))
        {
            throw Another();
        }

        var model = Model(map.Load);
        return RulePasses.Of(
            model, asked.Road, asked.Rule.Axis(model, map.Values, Owns), EvenSpeeds.Of(asked.Slowest, asked.Fastest, map.Speeds),
            Groups[map.Group].Measures, null, cancellation);
    }

    // What another machine sends may be anything; a map of a million values is not begun.
    private bool IsAsked(RulePiece map)
    {
        var size = (map.Values, map.Speeds);
        return map.Load >= 0 && map.Load < Loads.Count && map.Group >= 0 && map.Group < Groups.Count
            && (map.Load == 0 ? size == (asked.Detail.Values, asked.Detail.Speeds) || size == asked.Detail.First : size == AnotherLoad);
    }
}
