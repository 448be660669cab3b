using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Drives.Comparison;
using Heaveline.Drives.Identification;
using Heaveline.Drives.Recovery;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>Whether a change worked, by the passes of two drives.</summary>
public sealed record ProveAnswer : Answer
{
    /// <summary>Figure of every pass against speed.</summary>
    public const string Dots = "dots";

    /// <summary>Figure of what so many passes would show.</summary>
    public const string Power = "power";

    /// <summary>Figure of what was forecast beside what was measured.</summary>
    public const string Foreseen = "forecast";

    /// <summary>What was asked.</summary>
    public required ProveAsked Asked { get; init; }

    /// <summary>The drive before.</summary>
    public required ProvedDrive Before { get; init; }

    /// <summary>The drive after.</summary>
    public required ProvedDrive After { get; init; }

    /// <summary>The bumps that both crossed.</summary>
    public required SiteMatches Matches { get; init; }

    /// <summary>The numbers that were compared, the one that decides first.</summary>
    public required ImmutableArray<ProvedNumber> Numbers { get; init; }

    /// <summary>
    /// The car that moves most like the drive before, by all of that drive's bumps; null where it was not asked for, or the log does not bear it.
    /// </summary>
    public CarFromDrive? CarBefore { get; init; }

    /// <summary>Likewise of the drive after.</summary>
    public CarFromDrive? CarAfter { get; init; }

    /// <summary>
    /// The car by which a forecast's roads are told: that of the drive before, by the bumps that both drives crossed; null where none was asked for.
    /// </summary>
    internal CarFromDrive? CarOfForecast { get; init; }

    /// <summary>Whether the speeds are as they were logged, no car having checked them: it may still be decided otherwise.</summary>
    internal bool IsAsLogged { get; init; }

    /// <summary>What changed in the car; null where either is not known.</summary>
    public CarChange? Change => CarBefore is { } before && CarAfter is { } after ? CarChange.Of(before, after, Asked.Comparison) : null;

    /// <summary>
    /// What the change was forecast to do on the drive before; null where it was not asked for, or that drive does not tell its car.
    /// </summary>
    public Forecast? Forecast { get; init; }

    /// <summary>The number that decides.</summary>
    public ProvedNumber Main => Numbers[0];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head =>
    [
        new("verdict", ProveWords.Verdict(Main)),
        .. Numbers.Skip(1).Select(n => new Sentence("beside", ProveWords.Beside(n))),
        .. Described.Select(s => new Sentence("described", s)),
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => [.. Numbers.Select(ProveTable.Of), .. ChangeTable.Of(Change)];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Cautions => [.. ProveCautions.Of(this)];

    private IReadOnlyList<string> Described => Asked.Described(Before.Events, After.Events);

    /// <inheritdoc/>
    internal override IReadOnlyList<string> Opening => [.. ProveCautions.Names(this)];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences =>
    [
        .. Asked.Forecast is null ? [] : ForecastWords.Of(this),
        .. Asked.WhatChanged ? ChangeWords.Of(CarBefore, CarAfter, Change, Asked.Comparison.Confidence) : [],
        .. ProveWords.Intervals(Main.Result) is { } level ? new[] { new Sentence("intervals", level) } : [],
        .. ProveWords.Power(Main.Result).Select(s => new Sentence("power", s)),
        .. Asked.Comparison.Looks == 1
            ? new[]
            {
                new Sentence(
                    "looks", "If you add passes after this and judge again, say --looks 2 both times: looking often finds something by chance."),
            }
            : [],
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => [DriveWords.Safety];

    /// <inheritdoc/>
    public override IReadOnlyList<Source> Sources =>
    [
        Answers.Sources.Parts,
        Answers.Sources.Covariance,
        .. CarBefore is null && CarAfter is null && CarOfForecast is null ? Array.Empty<Source>() : [Answers.Sources.Identification],
    ];

    /// <inheritdoc/>
    public override IReadOnlyList<string> FigureIds => [Dots, Power, .. Forecast is null ? Array.Empty<string>() : [Foreseen]];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["verdict"] = ProveWords.Word(Main.Result.Verdict),
        ["sentence"] = ProveWords.Verdict(Main),
        ["measure"] = Main.Word,
        ["matters"] = Asked.Comparison.Matters,
        ["confidence"] = Asked.Comparison.Confidence,
        ["looks"] = Asked.Comparison.Looks,
        ["same"] = TablesJson.Texts(Asked.Same),
        ["drive-files"] = TablesJson.Texts(Described),
        ["numbers"] = new JsonObject([.. Numbers.Select(n => KeyValuePair.Create(n.Word, (JsonNode?)ProveJson.Of(n)))]),
        ["sites"] = new JsonArray([.. Matches.All.Select(m => (JsonNode)new JsonObject
        {
            ["name"] = m.Name,
            ["before"] = m.Before.Name,
            ["after"] = m.After.Name,
            ["by"] = m.Basis switch { SiteBasis.Name => "name", SiteBasis.Position => "position", _ => "order" },
        })]),
        ["car"] = Asked.WhatChanged ? ProveJson.Of(Change, ChangeWords.Of(CarBefore, CarAfter, Change, Asked.Comparison.Confidence)) : null,
        ["forecast"] = ForecastWords.Facts(this),
        ["cautions"] = TablesJson.Texts([.. Cautions, .. Closing]),
    };

    /// <inheritdoc/>
    public override byte[] Csv() => ProveCsv.Of(Numbers);

    /// <inheritdoc/>
    public override Figure Figure(string id) => id switch
    {
        Dots => BeforeAfterFigure.Of(Main.Result, Main.Title, Main.Unit, ProveWords.Verdict(Main)),
        Power => PowerFigure.Of(Main.Result, Main.Title),
        Foreseen => Forecast is { } forecast
            ? ForecastFigure.Of(
                forecast,
                Main.Result,
                Main.Number == ComparedNumber.Hit,
                Matches.All.ToDictionary(m => m.Before.Name, m => m.Name, StringComparer.Ordinal),
                Main.Number == ComparedNumber.Headline ? Main.Title : Main.Name)
            : throw new RefusedValueException(
                "forecasts of the change", "0", "1", "Give --change or --change-by; look at what the answer says of the forecast."),
        _ => base.Figure(id),
    };
}
