using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
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
    };

    /// <summary>The question as a page offers it: of the car's first load where none is named, a coarse map first.</summary>
    public static Question<RuleAsked, RuleAnswer> OnPage { get; } = Question with
    {
        Choices = [Choices.Car, Choices.Load, Choices.Road, Rule, Measure, Choices.From, Choices.To],
        Reads = reader => Read(reader, Choices.Load, RuleDetail.Stepwise),
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
        var (detail, beside, owns) = (asked.Detail, Beside.Nothing, OwnValues(asked));
        var first = detail.First is { } few ? MapsOf(asked, model, owns, few.Values, few.Speeds, run.Between(0.0, 0.03)) : null;
        if (first is not null)
        {
            run.Meanwhile?.Invoke(AnswerOf(asked, first, isCoarse: true, beside));
        }

        if (!asked.MapAlone)
        {
            var values = (first?[0].Axis ?? asked.Rule.Axis(model, detail.Values, owns)).Values;
            beside = BesideOf(asked, model, owns, values, run.Between(0.03, 0.2));
            if (first is not null)
            {
                run.Meanwhile?.Invoke(AnswerOf(asked, first, isCoarse: true, beside));
            }
        }

        var maps = MapsOf(asked, model, owns, detail.Values, detail.Speeds, run.Between(asked.MapAlone ? 0.03 : 0.25, 1.0));
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

    private static IEnumerable<LoadState> AllLoads(Car car) => car.LoadStates.Prepend(LoadState.Reference);

    // The car's own value under each load that it can stand under: the map reaches past all of them.
    private static IReadOnlyList<double> OwnValues(RuleAsked asked)
    {
        var own = asked.Rule.Axis(asked.Car.Model, 2).Own;
        var owns = new List<double> { own(asked.Car.Model) };
        foreach (var load in AllLoads(asked.Car.Car).Where(l => l.Name != asked.Car.Load.Name))
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

    // The map asked for, and behind it the one by the hit, from the same passes.
    private static IReadOnlyList<RuleMap> MapsOf(
        RuleAsked asked, RideModel model, IReadOnlyList<double> owns, int values, int speeds, StudyRun run)
    {
        var maps = RuleMap.Of(
            model, asked.Road, asked.Rule.Axis(model, values, owns), EvenSpeeds.Of(asked.Slowest, asked.Fastest, speeds),
            asked.Measure.LooksFor <= 0.0 ? [asked.Measure] : [asked.Measure, HitCatalogue.PeakPitchAcceleration],
            degree: run.Degree, progress: run.Progress, cancellation: run.Cancellation);
        return maps[0].Best.Any(b => b is not null)
            ? maps
            : throw new RunFailedException(
                "No point of this map could be computed.",
                maps[0].Refusals.FirstOrDefault(r => r.Length > 0) ?? "Every pass left the model's range: take a lower bump or lower speeds.");
    }

    private static RuleAnswer AnswerOf(RuleAsked asked, IReadOnlyList<RuleMap> maps, bool isCoarse, Beside beside) => new()
    {
        Asked = asked,
        Map = maps[0],
        Hit = maps.ElementAtOrDefault(1),
        IsCoarse = isCoarse,
        Loads =
        [
            .. AllLoads(asked.Car.Car)
                .Select(l => l.Name == asked.Car.Load.Name ? RuleLoad.Of(maps[0]) : beside.Loads.GetValueOrDefault(l.Name)).OfType<RuleLoad>(),
        ],
        NotMarked = beside.NotMarked,
        Damping = beside.Damping,
    };

    // Another load asks for a map of its own, since masses and rates change with it; a coarse one tells the speed.
    private static Beside BesideOf(
        RuleAsked asked, RideModel model, IReadOnlyList<double> owns, IReadOnlyList<double> ratios, StudyRun run)
    {
        var loads = new Dictionary<string, RuleLoad>(StringComparer.Ordinal);
        var notMarked = new List<string>();
        var others = AllLoads(asked.Car.Car).Where(l => l.Name != asked.Car.Load.Name).ToList();
        foreach (var (load, k) in others.Select((load, k) => (load, k)))
        {
            try
            {
                var between = run.Between(k / (double)others.Count, (k + 1.0) / others.Count);
                loads[load.Name] = LoadOf(asked, RideModel.Of(asked.Car.Car, load), owns, between);
            }
            catch (NoAnswerException e)
            {
                notMarked.Add($"{load.Name}: not marked. {e.Message}");
            }
        }

        var damping = asked.Rule.Kind == RuleKind.Damping ? RoughDamping.Of(model, asked.Slowest, asked.Fastest, ratios, run) : null;
        return new Beside(loads, notMarked, damping);
    }

    private static RuleLoad LoadOf(RuleAsked asked, RideModel model, IReadOnlyList<double> owns, StudyRun run) =>
        asked.Rule.Kind == RuleKind.FrequencyRatio
        ? RuleLoad.Of(MapsOf(asked, model, owns, RuleDetail.Plain.Values, Math.Min(asked.Detail.Speeds, asked.Detail.LoadSpeeds), run)[0])
        : new RuleLoad(model.Load.Name, asked.Rule.Axis(model, 2).Own(model), null, null, null);

    // What is told beside the map: the other loads, and damping on a rough road.
    private sealed record Beside(IReadOnlyDictionary<string, RuleLoad> Loads, IReadOnlyList<string> NotMarked, RoughDamping? Damping)
    {
        public static Beside Nothing { get; } = new(new Dictionary<string, RuleLoad>(), [], null);
    }
}
