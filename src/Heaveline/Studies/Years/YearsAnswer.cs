using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>From which year on a car is more likely than not no longer what it was, and which reading shows it first.</summary>
public sealed record YearsAnswer : Answer
{
    /// <summary>Figure of the chances over the years.</summary>
    public const string Chart = "years";

    /// <summary>What was asked.</summary>
    public required YearsAsked Asked { get; init; }

    /// <summary>The chance of each event that is watched.</summary>
    public required ImmutableArray<YearsChance> Chances { get; init; }

    /// <summary>Cars that in some year could not stand any more.</summary>
    public required int Fallen { get; init; }

    /// <summary>Draws that no car could have and that were drawn again.</summary>
    public required int Refused { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
    [
        new("draws", FormattableString.Invariant(
            $"{Asked.Car.Name}, {Asked.Car.Load.Name}: {Asked.Draws} cars drawn within the stated doubts of the car and of what a year takes, ")
            + FormattableString.Invariant($"seed {Asked.Seed}.")),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => [YearsTable.Of(Chances, YearsTable.Few(Asked.Years))];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> WholeTables => [YearsTable.Of(Chances, [.. Enumerable.Range(0, Asked.Years + 1)])];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => Words.All;

    /// <inheritdoc/>
    protected override bool TellsFirst => true;

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => Studies.Cautions.All;

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
        [Answers.Sources.Axes, Answers.Sources.SideEffects, Answers.Sources.Draws, .. Asked.Road is null ? [] : new[] { Answers.Sources.Steps }];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [Chart];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["car"] = Asked.Car.Name,
        ["load"] = Asked.Car.Load.Name,
        ["samples"] = Asked.Draws,
        ["seed"] = Asked.Seed,
        ["fallen"] = Fallen,
        ["refused"] = Refused,
        ["events"] = new JsonArray([.. Chances.Select(c => (JsonNode)new JsonObject
        {
            ["event"] = YearsWords.Id(c.Event),
            ["year-of-a-tenth"] = c.YearOf(0.1),
            ["year-of-a-half"] = c.YearOf(0.5),
            ["year-of-a-half-from"] = c.Half.From,
            ["year-of-a-half-to"] = c.Half.To,
            ["year-of-nine-tenths"] = c.YearOf(0.9),
            ["reading"] = c.Reading is not { } reading ? null : new JsonObject
            {
                ["of"] = WorkshopReadingWords.Id(reading.Kind),
                ["limit"] = reading.Limit,
                ["found"] = reading.Found,
                ["mistaken"] = reading.Mistaken,
            },
        })]),
        ["sentences"] = TablesJson.Texts(Sentences.Select(s => s.Text)),
    };

    /// <inheritdoc/>
    public override Figure Figure(string id) => id == Chart
        ? YearsFigure.Of(
            $"{Asked.Car.Name}, {Asked.Car.Load.Name}: what the years bring",
            Sentences[0].Text,
            [.. Chances.Select(c => (FirstLetter.Raised(Words.Clause(c.Event)), c.Shares))])
        : base.Figure(id);

    private YearsWords Words => new(this);
}
