using System.Collections.Immutable;
using Heaveline.Reports;
using Heaveline.Studies;
using Heaveline.Quantities;
using Heaveline.Web.Serving;
using Heaveline.Web.Tuning;
using Microsoft.AspNetCore.WebUtilities;
using Microsoft.Extensions.Primitives;

namespace Heaveline.Web.Pages.Reports;

/// <summary>Everything that a reader has chosen on the page of the report, as it stands in the address: words, not yet checked.</summary>
public sealed record ReportQuery
{
    /// <summary>Names of the cars, the first what the others are held against. Empty: the first car of the garage.</summary>
    public ImmutableArray<string> Cars { get; init; } = [];

    /// <summary>Name of the road.</summary>
    public string Road { get; init; } = Choices.Road.Usual!;

    /// <summary>Speed of the passes, with its unit.</summary>
    public string Speed { get; init; } = ReportStudy.Speed.Usual!;

    /// <summary>Speeds of comparison and ride, with commas between.</summary>
    public string Speeds { get; init; } = ReportStudy.Speeds.Usual!;

    /// <summary>Name of the load state; null: each car's first.</summary>
    public string? Load { get; init; }

    /// <summary>Letter of the road class.</summary>
    public string Class { get; init; } = ReportStudy.Class.Usual!;

    /// <summary>Word of the rule.</summary>
    public string Rule { get; init; } = ReportStudy.Rule.Usual!;

    /// <summary>How many cars are drawn within the doubts, in digits.</summary>
    public string Samples { get; init; } = ReportStudy.Samples.Usual!;

    /// <summary>Seed of the draws, in digits.</summary>
    public string Seed { get; init; } = ReportStudy.Seed.Usual!;

    /// <summary>Names of drives of the garage: none, one, or the one before a change and the one after it.</summary>
    public ImmutableArray<string> Drives { get; init; } = [];

    /// <summary>File of a study of what to buy; null: none.</summary>
    public string? Study { get; init; }

    /// <summary>Files of films of the garage.</summary>
    public ImmutableArray<string> Films { get; init; } = [];

    /// <summary>Files of films of the same car after a change.</summary>
    public ImmutableArray<string> FilmsAfter { get; init; } = [];

    /// <summary>Whether the films are of the first car, over the road.</summary>
    public bool IsFilmedCar { get; init; }

    /// <summary>Whether the change between the drives is forecast.</summary>
    public bool IsForecast { get; init; }

    /// <summary>Words of the parts with commas between; null: those that a report has unasked.</summary>
    public string? Parts { get; init; }

    /// <summary>The title; null: the cars' names.</summary>
    public string? Title { get; init; }

    /// <summary>Who made it; blank for nobody named.</summary>
    public string Author { get; init; } = "";

    /// <summary>The day as it is printed; null or blank: none.</summary>
    public string? Date { get; init; }

    /// <summary>Word of the sheet.</summary>
    public string Paper { get; init; } = ReportStudy.Paper.Usual!;

    /// <summary>Name of the file without ending; null: from the first car.</summary>
    public string? File { get; init; }

    /// <summary>
    /// What is tried and pinned on the first car and its road, by the keys of an address: no report is made of it, and the next page finds it again.
    /// </summary>
    public ImmutableSortedDictionary<string, string> Tried { get; init; } = CurrentCar.NoTrial;

    /// <summary>The keys that are a report's own; those of what is in hand are beside them.</summary>
    internal static IReadOnlyList<string> Keys { get; } =
    [
        "speeds", "class", "rule", "samples", "seed", "forecast", "study", "film", "film-after", "filmed-car", "parts", "title", "author", "date",
        "paper", "file",
    ];

    /// <summary>What an address says; what it does not say stands as usual.</summary>
    /// <param name="query">The query with or without its question mark.</param>
    public static ReportQuery Of(string query)
    {
        var said = QueryHelpers.ParseQuery(query);
        var current = CurrentCar.Of(query);
        string? One(string key) => said.TryGetValue(key, out var values) ? values[^1] : null;
        ImmutableArray<string> All(Choice choice) =>
            [.. said.GetValueOrDefault(choice.Name, StringValues.Empty).OfType<string>().Where(name => name.Length > 0)];
        string Word(string key, string usual) => One(key) is { Length: > 0 } word ? word : usual;
        var plain = new ReportQuery();
        return new ReportQuery
        {
            Cars = Cars(said.GetValueOrDefault("car", StringValues.Empty), current),
            Road = current.Road ?? current.Ground ?? plain.Road,
            Speed = current.Speed is not { } speed ? plain.Speed : QuantityText.IsBare(speed) ? QuantityText.Whole(speed, "km/h") : speed,
            Speeds = Word("speeds", plain.Speeds),
            Load = current.Load,
            Class = Word("class", plain.Class),
            Rule = Word("rule", plain.Rule),
            Samples = Word("samples", plain.Samples),
            Seed = Word("seed", plain.Seed),
            Drives = current.Drives,
            IsForecast = One("forecast") == Choice.Yes,
            Films = All(ReportStudy.Films),
            FilmsAfter = All(ReportStudy.FilmsAfter),
            IsFilmedCar = One(ReportStudy.FilmedCar.Name) == Choice.Yes,
            Study = One("study") is { Length: > 0 } study ? study : null,
            Parts = One("parts"),
            Title = One("title") is { Length: > 0 } title ? title : null,
            Author = One("author") ?? "",
            Date = One("date"),
            Paper = Word("paper", plain.Paper),
            File = One("file") is { Length: > 0 } file ? file : null,
            Tried = With(With(current.Trial, CurrentCar.HeightKey, current.Height), CurrentCar.PinsKey, current.Pins),
        };

        static ImmutableSortedDictionary<string, string> With(ImmutableSortedDictionary<string, string> tried, string key, string? word) =>
            word is null ? tried : tried.SetItem(key, word);

        // The car that the one in hand is held against comes along.
        static ImmutableArray<string> Cars(StringValues named, CurrentCar current)
        {
            ImmutableArray<string> cars = [.. named.OfType<string>().Where(name => name.Length > 0)];
            return cars is [_] && current.Beside is { } beside && beside != cars[0] ? cars.Add(beside) : cars;
        }
    }

    /// <summary>
    /// The address's query that says this, with its question mark; what stands as usual is left out. Two
    /// queries that say the same give the same text.
    /// </summary>
    public string Address
    {
        get
        {
            var plain = new ReportQuery();
            List<(string Key, string? Word, string? Usual)> words =
            [
                .. Cars.Select(name => ("car", (string?)name, (string?)null)),
                ("road", Road, plain.Road), ("speed", Speed, plain.Speed), ("speeds", Speeds, plain.Speeds), ("load", Load, null),
                ("class", Class, plain.Class),
                ("rule", Rule, plain.Rule), ("samples", Samples, plain.Samples), ("seed", Seed, plain.Seed),
                .. Drives.Select(name => (CurrentCar.DriveKey, (string?)name, (string?)null)),
                ("forecast", IsForecast ? Choice.Yes : null, null), ("study", Study, null),
                .. Films.Select(name => (ReportStudy.Films.Name, (string?)name, (string?)null)),
                .. FilmsAfter.Select(name => (ReportStudy.FilmsAfter.Name, (string?)name, (string?)null)),
                (ReportStudy.FilmedCar.Name, IsFilmedCar ? Choice.Yes : null, null), ("parts", Parts, null),
                ("title", Title, null), ("author", Author, ""), ("date", Date, null), ("paper", Paper, plain.Paper), ("file", File, null),
                .. Tried.Select(one => (one.Key, (string?)one.Value, (string?)null)),
            ];
            return PageAddress.Query(words.Where(w => w.Word != w.Usual).Select(w => (w.Key, w.Word)));
        }
    }
}
