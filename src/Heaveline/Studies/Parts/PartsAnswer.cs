using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Parts;

namespace Heaveline.Studies;

/// <summary>What a list of parts holds, and what of it fits a car, place by place.</summary>
public sealed record PartsAnswer : Answer
{
    /// <summary>The list.</summary>
    public required PartsList List { get; init; }

    /// <summary>The car; null where none is asked about.</summary>
    public Car? Car { get; init; }

    /// <summary>What is odd in the list, a sentence each.</summary>
    public IReadOnlyList<string> Slips { get; init; } = [];

    /// <summary>What fits, place by place; none without a car.</summary>
    public IReadOnlyList<PlaceFit> Places => field ??= Car is { } car ? PlaceFit.Of(car, List) : [];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Head => [new("parts", $"{List.Name}: {Held}{Currency}.")];

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => PartsTables.Of(List);

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => Car is { } car
        ? [
            new("car", $"{car.Name}, each part by itself and everything else as it is:"),
            .. Places.SelectMany(PartsWords.Of),
        ]
        : [];

    /// <inheritdoc/>
    public override IReadOnlyList<string> Closing => Car is null ? [] :
    [
        "Judged by the lengths, strokes and forces that both files give: threads, mounts, bushes and the room around wheel and spring are seen at "
        + "the car alone, and how it stands and rides on them under its loads is told once they are in its file.",
        Studies.Cautions.Short,
    ];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["list"] = List.Name,
        ["currency"] = List.Currency,
        ["slips"] = TablesJson.Texts(Slips),
        ["parts"] = new JsonArray([.. List.Parts.Select(part => (JsonNode)new JsonObject
        {
            ["part"] = part.Name,
            ["sort"] = part.Sort.ToString().ToLowerInvariant(),
            ["price"] = part.Price?.Value,
            ["labour-h"] = part.Labour is { } time ? Quantities.In.Hours.Of(time.Si) : null,
            ["fitting"] = part.FittingPrice?.Value,
            ["stock"] = part.Stock,
            ["settings"] = part.Options.Count,
        })]),
        ["car"] = Car?.Name,
        ["places"] = new JsonArray([.. Places.Select(place => (JsonNode)new JsonObject
        {
            ["place"] = place.Place.Name(),
            ["options"] = new JsonArray([.. place.Options.Select(FactsOf)]),
            ["sold-for-another-place"] = TablesJson.Texts(place.Elsewhere.Select(part => part.Name)),
        })]),
    };

    private static JsonNode FactsOf(OptionFit fit) => new JsonObject
    {
        ["part"] = fit.Option.Name,
        ["fits"] = fit.Misfits.Count == 0,
        ["cost"] = fit.Fitted?.Cost?.Value,
        ["packing-m"] = fit.Fitted?.Packers is [{ Height: { } height }] ? height : null,
        ["remarks"] = TablesJson.Texts(fit.Fitted?.Remarks.Select(remark => remark.Text) ?? []),
        ["misfits"] = new JsonArray([.. fit.Misfits.Select(misfit => (JsonNode)new JsonObject
        {
            ["kind"] = misfit.Kind.ToString(),
            ["words"] = misfit.Words,
            ["advice"] = misfit.Advice,
            ["value-si"] = double.IsFinite(misfit.Value) ? misfit.Value : null,
            ["limit-si"] = double.IsFinite(misfit.Limit) ? misfit.Limit : null,
        })]),
    };

    private string Held => string.Join(", ", List.Parts.GroupBy(part => part.Sort).Select(sort =>
        FormattableString.Invariant($"{sort.Count()} {sort.Key.ToString().ToLowerInvariant()}{(sort.Count() > 1 ? "s" : "")}")
        + Settings([.. sort])));

    private string Currency => (List.Currency.Length > 0 ? $"; prices in {List.Currency}" : "")
        + (List.HourlyPrice is { } hour ? $"; fitting at {hour} an hour" : "");

    private static string Settings(IReadOnlyList<Part> parts) =>
        parts.Sum(part => part.Options.Count) is var all && all > parts.Count ? FormattableString.Invariant($" ({all} settings)") : "";
}
