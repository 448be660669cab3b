using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Pieces;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Studies;

/// <summary>A rule of the trade as a map over speed: where it is true for this car, where false, where it makes no difference.</summary>
public static class RuleStudy
{
    /// <summary>The rule that is mapped.</summary>
    public static Choice Rule { get; } = new()
    {
        Name = "rule",
        Kind = ChoiceKind.Word,
        Says = "What is turned: ratio (rear over front frequency), damping, index (dynamic index), wheelbase (inertia grows with it), "
            + "wheelbase-same-body (inertia kept), shared-springs, shared-damping (the share of a common spring or damper of front and rear).",
        HelpName = "RULE",
        Usual = TradeRule.All[0].Word,
        Words = TradeRule.Words,
        WordIs = "rule",
    };

    /// <summary>By what it is judged.</summary>
    public static Choice Measure { get; } = new()
    {
        Name = "measure",
        Kind = ChoiceKind.Word,
        Says = $"By what it is judged: {string.Join(", ", PassCatalogue.Judges.Select(m => $"{m.Word} ({m.Name})"))}.",
        HelpName = "MEASURE",
        Usual = SettlingCatalogue.RmsPitch.Word,
        Words = [.. PassCatalogue.Judges.Select(m => m.Word!)],
        WordIs = "measure",
    };

    private static readonly Choice SpeedCount = new()
    {
        Name = "speeds",
        Kind = ChoiceKind.Number,
        Says = "How many speeds, 2 to 400. "
            + FormattableString.Invariant($"Without it: {RuleDetail.Plain.Speeds}, with --fine {RuleDetail.Fine.Speeds}."),
        HelpName = "NUMBER",
        Range = (2, 400),
    };

    private static readonly Choice IsFine = new()
    {
        Name = "fine",
        Kind = ChoiceKind.Tick,
        Says = FormattableString.Invariant($"A fine map: {RuleDetail.Fine.Values} values instead of {RuleDetail.Plain.Values}."),
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<RuleAsked, RuleAnswer> Question { get; } = new()
    {
        Word = "rule",
        Says =
            """
            Map a rule of the trade over speed for this car: where it is true, where it is false, where it makes no difference, and where the car
            stands at every load.

            Examples:
              heaveline rule examples/garage/fern-saloon.yaml --load driver
              heaveline rule examples/garage/fern-saloon.yaml --rule damping --measure hit
              heaveline rule examples/garage/fern-saloon.yaml --rule wheelbase-same-body --from "30 km/h" --to "90 km/h" --fine \
                  --figure wheelbase.pdf
            """,
        Choices = [Choices.Car, Rule, Measure, Choices.Road, Choices.From, Choices.To, SpeedCount, IsFine, Choices.Load],
        CsvSays = "Write every point of the map to FILE.",
        Reads = reader =>
        {
            var detail = reader.IsTicked(IsFine) ? RuleDetail.Fine : RuleDetail.Plain;
            var count = reader.Whole(SpeedCount);
            return Read(reader, Choices.Load, detail with { Speeds = count ?? detail.Speeds });
        },
        Answers = Run,
        Pieces = Pieces,
    };

    /// <summary>
    /// The question as a page offers it: of the car's first load where none is named, a coarse map first, and judged by every measure at once.
    /// </summary>
    public static Question<RuleAsked, RuleAnswer> OnPage { get; } = Question with
    {
        Choices = [Choices.Car, Choices.Load, Choices.Road, Rule, Measure, Choices.From, Choices.To],
        Reads = reader => Read(reader, Choices.Load, RuleDetail.Stepwise) is { } asked
            ? asked with { Also = PassCatalogue.Judges }
            : null,
    };

    /// <summary>Maps a rule.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="run">How it is run; null: plainly. Where a coarse map was asked for, it comes by <see cref="StudyRun.Meanwhile"/>.</param>
    /// <exception cref="RefusedValueException">The car cannot stand under its load.</exception>
    /// <exception cref="RunFailedException">No point of the map could be computed.</exception>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static RuleAnswer Run(RuleAsked asked, StudyRun? run = null)
    {
        ArgumentNullException.ThrowIfNull(asked);
        run ??= StudyRun.Plain;
        var model = asked.Car.Model;
        var (detail, beside, own) = (asked.Detail, Beside.Nothing, new RulePieces(asked));
        var work = (own, run.Through?.Invoke(own));
        var first = detail.First is { } few ? MapsOf(work, 0, few.Values, few.Speeds, run.Between(0.0, 0.03)) : null;
        if (first is not null)
        {
            run.Meanwhile?.Invoke(AnswerOf(asked, first, isCoarse: true, beside));
        }

        if (!asked.MapAlone)
        {
            var values = (first?[0].Map.Axis ?? asked.Rule.Axis(model, detail.Values, own.Owns)).Values;
            beside = BesideOf(asked, work, values, run.Between(0.03, 0.2));
            if (first is not null)
            {
                run.Meanwhile?.Invoke(AnswerOf(asked, first, isCoarse: true, beside));
            }
        }

        var maps = MapsOf(work, 0, detail.Values, detail.Speeds, run.Between(asked.MapAlone ? 0.03 : 0.25, 1.0));
        return AnswerOf(asked, maps, isCoarse: false, beside);
    }

    private static RuleAsked? Read(AskedReader reader, Choice load, RuleDetail detail)
    {
        var rule = reader.Word(Rule);
        var measure = reader.Word(Measure);
        var speeds = reader.Speeds(Choices.From, Choices.To, 2);
        var car = reader.Car(Choices.Car, load);
        var road = reader.Road(Choices.Road);
        if (road is not null && RuleAsked.NoBump(road) is { } noBump)
        {
            reader.Object(Choices.Road.Name, noBump, isUsage: false);
        }

        return reader.IsRefused
            ? null
            : new RuleAsked
            {
                Car = car!,
                Road = road!,
                Rule = TradeRule.Of(rule!),
                Measure = PassCatalogue.Judges.First(m => m.Word == measure),
                Slowest = speeds[0],
                Fastest = speeds[^1],
                Detail = detail,
            };
    }

    /// <summary>Does pieces of the maps: some speeds each.</summary>
    /// <param name="asked">What is asked.</param>
    public static IPieceDoer Pieces(RuleAsked asked)
    {
        ArgumentNullException.ThrowIfNull(asked);
        return new RulePieces(asked);
    }

    /// <summary>Every load of a car.</summary>
    internal static IEnumerable<LoadState> AllLoads(Car car) => car.LoadStates.Prepend(LoadState.Reference);

    // A map by every measure: first that asked for, each with the one by the hit from the same passes. Measures that look about as long share passes.
    private static IReadOnlyList<Judged> MapsOf((RulePieces Own, IPieceDoer? Doer) work, int load, int values, int speeds, StudyRun run)
    {
        var judged = new List<Judged>();
        foreach (var ((_, count), k) in work.Own.Groups.Select((group, k) => (group, k)))
        {
            var between = run.Between(k / (double)work.Own.Groups.Count, (k + 1.0) / work.Own.Groups.Count);
            var maps = work.Own.Maps(new RulePiece(load, values, speeds, k, 0, speeds), work.Doer, between);
            var byHit = maps.FirstOrDefault(map => map.Measure.Key == HitCatalogue.PeakPitchAcceleration.Key);
            judged.AddRange(maps.Take(count).Select(map => new Judged(map, map.JudgesHit ? null : byHit)));
        }

        return judged[0].HasPoint
            ? [judged[0], .. judged.Skip(1).Where(one => one.HasPoint)]
            : throw new RunFailedException(
                "No point of this map could be computed.",
                judged[0].Map.Refusals.FirstOrDefault(r => r.Length > 0)
                    ?? "Every pass left the model's range: take a lower bump or lower speeds.");
    }

    private static RuleAnswer AnswerOf(RuleAsked asked, IReadOnlyList<Judged> maps, bool isCoarse, Beside beside)
    {
        RuleLoad? LoadOf(LoadState load, RuleMap map) => load.Name == asked.Car.Load.Name
            ? RuleLoad.Of(map)
            : beside.Loads.GetValueOrDefault((load.Name, map.Measure.Key));
        RuleAnswer Of(Judged one) => new()
        {
            Asked = asked with { Measure = one.Map.Measure },
            Map = one.Map,
            Hit = one.Hit,
            IsCoarse = isCoarse,
            Loads =
            [
                .. AllLoads(asked.Car.Car).Select(l => LoadOf(l, one.Map)).OfType<RuleLoad>()
                    .Select(l => l with { Doubt = beside.Doubts.GetValueOrDefault(l.Name) }),
            ],
            NotMarked = beside.NotMarked,
            Damping = beside.Damping,
        };
        return Of(maps[0]) with { Others = [.. maps.Skip(1).Select(Of)] };
    }

    // Another load asks for a map of its own, since masses and rates change with it; a coarse one tells the speed.
    private static Beside BesideOf(
        RuleAsked asked, (RulePieces Own, IPieceDoer? Doer) work, IReadOnlyList<double> ratios, StudyRun run)
    {
        var loads = new Dictionary<(string Load, string Measure), RuleLoad>();
        var doubts = new Dictionary<string, DoubtInterval?>(StringComparer.Ordinal) { [asked.Car.Load.Name] = DoubtOf(asked, asked.Car.Load) };
        var notMarked = new List<string>();
        var others = work.Own.Loads.Count - 1;
        for (var k = 0; k < others; k++)
        {
            var load = work.Own.Loads[k + 1];
            try
            {
                var between = run.Between(k / (double)others, (k + 1.0) / others);
                foreach (var (measure, one) in LoadsOf(asked, work, k + 1, between))
                {
                    loads[(load.Name, measure)] = one;
                }

                doubts[load.Name] = DoubtOf(asked, load);
            }
            catch (NoAnswerException e)
            {
                notMarked.Add($"{load.Name}: not marked. {e.Message}");
            }
        }

        var damping = asked.Rule.Kind == RuleKind.Damping ? RoughDamping.Of(asked.Car.Model, asked.Slowest, asked.Fastest, ratios, run) : null;
        return new Beside(loads, doubts, notMarked, damping);
    }

    // By the measure's key.
    private static IEnumerable<(string Measure, RuleLoad Load)> LoadsOf(
        RuleAsked asked, (RulePieces Own, IPieceDoer? Doer) work, int load, StudyRun run)
    {
        var model = work.Own.Model(load);
        return asked.Rule.Kind == RuleKind.FrequencyRatio
            ? MapsOf(work, load, work.Own.AnotherLoad.Values, work.Own.AnotherLoad.Speeds, run)
                .Select(one => (one.Map.Measure.Key, RuleLoad.Of(one.Map)))
            : asked.Also.Prepend(asked.Measure).Select(m =>
                (m.Key, new RuleLoad(model.Load.Name, asked.Rule.Axis(model, 2).Own(model), null, null, null)));
    }

    // How far the car's own value may lie off, by the doubts of its file; only where the answer holds more than one map is it shown.
    private static DoubtInterval? DoubtOf(RuleAsked asked, LoadState load)
    {
        if (asked.Also.Count == 0)
        {
            return null;
        }

        var own = asked.Rule.Axis(asked.Car.Model, 2).Own;
        var number = new Measure<CarAtRest>("own", "the car's own value", In.Plain, 3, rest => own(rest.Model), "Where the car stands.");
        var result = FirstOrder.Of(asked.Car.Car, load, [number]).Results[0];
        return result.StandardDeviation > 0.0 ? result.Central90 : null;
    }

    // A map, and the one by the hit from the same passes; null where the map is itself of the hit.
    private sealed record Judged(RuleMap Map, RuleMap? Hit)
    {
        public bool HasPoint { get; } = Map.Best.Any(b => b is not null);
    }

    // What is told beside the map: the other loads by measure, how sure the car's own values are, and damping on a rough road.
    private sealed record Beside(
        IReadOnlyDictionary<(string Load, string Measure), RuleLoad> Loads,
        IReadOnlyDictionary<string, DoubtInterval?> Doubts,
        IReadOnlyList<string> NotMarked,
        RoughDamping? Damping)
    {
        public static Beside Nothing { get; } =
            new(new Dictionary<(string, string), RuleLoad>(), new Dictionary<string, DoubtInterval?>(), [], null);
    }
}
