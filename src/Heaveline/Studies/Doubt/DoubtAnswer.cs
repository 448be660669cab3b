using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Drives.Identification;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>How sure a car's numbers are, and what to measure better next.</summary>
public sealed record DoubtAnswer : Answer
{
    /// <summary>Figure of the bands and of whose doubt makes most of the last.</summary>
    public const string Bands = "bands";

    /// <summary>What is said of a car that states no doubts.</summary>
    public static Sentence NotStated { get; } = new("not-stated", "The car file states no doubts: write them behind the values (24.5 N/mm ± 5 %).");

    /// <summary>What was asked.</summary>
    public required DoubtAsked Asked { get; init; }

    /// <summary>Numbers of the standing car, in the order of the catalogue.</summary>
    public required JointStudy AtRest { get; init; }

    /// <summary>Numbers of the pass; null where no road was given.</summary>
    public required JointStudy? OverRoad { get; init; }

    /// <summary>What the car file leaves open of the numbers that other commands take a silent part's doubt for.</summary>
    public required IReadOnlyDictionary<CarNumber, FileDoubt> FromFile { get; init; }

    /// <summary>Every number that any drawn car has, in readers' units.</summary>
    public IReadOnlyList<DoubtResult> Results =>
        [.. AtRest.Cars[0].Concat(OverRoad?.Cars[0] ?? []).Where(r => r.Count > 0).Select(r => r.Shown())];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
    [
        new("draws", FormattableString.Invariant(
            $"{Asked.Car.Name}, {Asked.Car.Load.Name}: {Asked.Draws} cars drawn within the stated doubts, seed {Asked.Seed}.")),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => Asked.Road is { } road ? ShortRoad.Of(road, Asked.Car.Car) : [];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => [DrawnTable.Of(Results)];

    /// <summary>Which end is really the softer, what to measure better next, and what was left out.</summary>
    public override IReadOnlyList<Sentence> Sentences => AtRest.Doubts.Cars[0].AreStated
        ?
        [
            SofterEnd, .. SofterEndSilent, .. OnStops, .. MeasureNext, .. Silent, .. CoarserSteps, .. TooFew, .. LeftOut("at-rest", AtRest),
            .. OverRoad is { } passes ? LeftOut("over-road", passes) : [],
        ]
        : [NotStated, .. Silent];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources => [Answers.Sources.Draws, Answers.Sources.Steps, Answers.Sources.Parts];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [Bands];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Asked.Car.Name,
        ["load"] = Asked.Car.Load.Name,
        ["samples"] = Asked.Draws,
        ["seed"] = Asked.Seed,
        ["sentences"] = TablesJson.Texts(Sentences.Select(s => s.Text)),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id == Bands ? DoubtFigure.Of(Asked.Car.Name, Results, Asked.Draws, Asked.Seed) : base.Figure(id);

    private DoubtResult Ratio => AtRest.Cars[0].First(r => r.Measure == AxleCatalogue.FrequencyRatio);

    private Sentence SofterEnd => new("softer-end", DoubtSentences.SofterEnd(Ratio));

    // The share of a silent spring is no exact one: the same chance with what other commands take for it.
    private IEnumerable<Sentence> SofterEndSilent => SilentRatio is { } silent
        ?
        [
            new("softer-end-silent", $"That is with the silent parts as exact. With {SilentPart.Words(silent.Silent)} it is "
                + DoubtSentences.ChanceOf(silent.ChanceBeyond(Ratio.Stated), Ratio.Stated >= 1.0 ? "rear" : "front") + "."),
        ]
        : [];

    private FileDoubt? SilentRatio => FromFile.GetValueOrDefault(CarNumber.FrequencyRatio) is { Silent.IsEmpty: false } silent ? silent : null;

    // Passes of drawn cars are many.
    private IEnumerable<Sentence> CoarserSteps => OverRoad is null
        ? []
        :
        [
            new("coarser-steps", "Passes of drawn cars run in coarser steps than 'pass' does: of the numbers of the pass 'as stated' is the "
                + "stated car's by these steps, and may differ from that of 'pass' by a per cent or so; bands and shares are of these steps alone."),
        ];

    private IEnumerable<Sentence> OnStops => StandingStops.Words(Asked.Car.Model) is { Length: > 0 } stands
        ?
        [
            new("on-bump-stops", $"As described {stands} on the bump stops: rate and frequency there are the stops' as much as the springs', "
                + "and so is which end is the softer."),
        ]
        : [];

    // Other commands take a doubt of what is silent: the same car is not known to two different shares without a word.
    private IEnumerable<Sentence> Silent
    {
        get
        {
            (CarNumber Number, FileDoubt Doubt)[] silent =
                [.. FromFile.Where(one => !one.Value.Silent.IsEmpty).Select(one => (one.Key, one.Value))];
            if (silent.Length == 0)
            {
                yield break;
            }

            ImmutableArray<SilentPart> parts = [.. silent.SelectMany(one => one.Doubt.Silent).Distinct()];
            string Share(double log) => $"± {Numeral.Of(In.Percent.Of(log), 1)} %";
            var known = silent.Select(one =>
                $"the {PlanWords.Name(one.Number)} {Share(one.Doubt.HalfWidth)} in place of {Share(one.Doubt.Stated)}");
            yield return new("silent", $"The car file states no doubt of its {SpeedRanges.And([.. parts.Select(part => part.Name)])}: here they "
                + $"count as exact. 'why', 'plan' and 'drive' take {SilentPart.Words(parts)} (one standard deviation; common practice, no source), "
                + $"and so, nine times of ten on rigid tyres: {string.Join("; ", known)}.");
        }
    }

    private IEnumerable<Sentence> MeasureNext =>
        from result in (OverRoad?.Cars[0] ?? []).Prepend(Ratio)
        let next = result == Ratio && SilentRatio is { IsMostlySilent: true } silent
            ? silent.MeasureNext(Ratio.Measure.Name)
            : DoubtSentences.MeasureNext(result.Shown())
        where next is not null
        select new Sentence($"measure-next-{result.Measure.Key}", next);

    private IEnumerable<Sentence> TooFew => Asked.Draws >= AtRest.FewestForShares
        ? []
        :
        [
            new("too-few", FormattableString.Invariant(
                $"{Asked.Draws} cars are too few to tell whose doubt makes most of a band, of {AtRest.Doubts.Sources.Count} sources: ")
                + FormattableString.Invariant($"draw {AtRest.FewestForShares} or more.")),
        ];

    private static IEnumerable<Sentence> LeftOut(string of, JointStudy drawn) => drawn.Refused + drawn.Unfinished == 0
        ? []
        :
        [
            new($"left-out-{of}", FormattableString.Invariant(
                $"{drawn.Refused} draws could not stand as a car and {drawn.Unfinished} passes left the model's range: they are left out.")),
        ];
}
