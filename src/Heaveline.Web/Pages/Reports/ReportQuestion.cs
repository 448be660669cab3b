using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Reporting;
using Heaveline.Files.Roads;
using Heaveline.Press;
using Heaveline.Reports;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Reports;

/// <summary>What an address asks of a report, read against the garage as it is now: what is to be made, or why it cannot be.</summary>
public sealed class ReportQuestion
{
    // Longer than any title page; an address could hold thousands of signs.
    private const int LongestLine = 200;

    private readonly List<ReportObjection> objections = [];
    private readonly ReportQuery query;

    private ReportQuestion(ReportQuery query, GarageView garageView, ServeOptions options)
    {
        this.query = query;
        CarNames = query.Cars.Length > 0 ? query.Cars : [.. garageView.CarNames.Take(1)];
        Readings = [.. CarNames.Select(name => (name, garageView.Car(name)))];
        Date = query.Date ?? Today(options.Clock);
        PartWords = query.Parts ?? ReportPartChoice.Usual(CarNames.Length);
        File = query.File ?? $"{Plain(CarNames.FirstOrDefault("car"))}-report";
        foreach (var (name, reading) in Readings.Where(r => r.Reading is null))
        {
            Object("car", $"There is no car called '{name}' in the garage.");
        }

        if (CarNames.Distinct(StringComparer.Ordinal).Count() < CarNames.Length)
        {
            Object("car", "A car is chosen twice; take another one, or leave it out.");
        }

        // Never by a path: only what the garage holds, and what comes with the program.
        var road = GarageView.RoadNames.Contains(query.Road) ? NamedRoads.Find(query.Road) : garageView.Road(query.Road);
        if (road is null)
        {
            Object("road", $"There is no road called '{query.Road}'.");
        }
        else if (road.Road is null)
        {
            Object("road", $"The road '{query.Road}' is refused: {road.Refusals[0].Message} {road.Refusals[0].Advice}");
        }

        var samples = Whole<int>("samples", query.Samples, ReportAsked.UsualSamples);
        var seed = Whole("seed", query.Seed, 1UL);
        foreach (var (choice, text) in new[] { ("title", query.Title), ("author", query.Author), ("date", query.Date) }.Where(t => t.Item2 is { } line && (line.Length > LongestLine || line.Any(char.IsControl))))
        {
            Object(choice, FormattableString.Invariant($"Give one line of at most {LongestLine} signs."));
        }

        if (KeptReports.Problem(File) is { } problem)
        {
            Object("file", problem);
        }

        var asked = new ReportAsked
        {
            Road = query.Road,
            Speed = query.Speed,
            Speeds = query.Speeds,
            Load = query.Load,
            Class = query.Class,
            Rule = query.Rule,
            Samples = samples,
            Seed = seed,
            Parts = PartWords,
            Title = query.Title,
            Author = query.Author,
            Date = Date,
            Paper = query.Paper,
            Out = File + ".html",
            Program = $"Heaveline {options.Version}",
        };
        Read(asked, road ?? new RoadReading(null, []));
    }

    /// <summary>Names of the cars; at least one unless the garage is empty.</summary>
    public ImmutableArray<string> CarNames { get; }

    /// <summary>The cars as read; null for a name that is not there.</summary>
    public IReadOnlyList<(string Name, CarReading? Reading)> Readings { get; }

    /// <summary>The day that is printed: the address's, or today.</summary>
    public string Date { get; }

    /// <summary>Words of the parts with commas between.</summary>
    public string PartWords { get; }

    /// <summary>Name of the file without ending.</summary>
    public string File { get; }

    /// <summary>The choices of the HTML file; null when anything is wrong.</summary>
    public ReportChoices? Html { get; private set; }

    /// <summary>The choices of the PDF; they differ in the command alone.</summary>
    public ReportChoices? Pdf { get; private set; }

    /// <summary>Everything that is wrong.</summary>
    public IReadOnlyList<ReportObjection> Objections => objections;

    /// <summary>The sheet of the PDF.</summary>
    public PaperSize Paper => query.Paper == "letter" ? PaperSize.Letter : PaperSize.A4;

    /// <summary>The query with the proposed day written out, so that its address means the same tomorrow.</summary>
    public ReportQuery Pinned => query with { Cars = CarNames, Date = Date };

    /// <summary>Tells reports apart by all that they are made from: the choices and the texts of the files. Empty when nothing can be made.</summary>
    public string Key => Html is null ? "" : string.Join('\n', [Html.Command, Html.Program, .. Html.Inputs.Select(i => i.Sha256)]);

    /// <summary>The title that is printed when none is given.</summary>
    public string UsualTitle => string.Join("; ", Readings.Select(r => r.Reading?.Car?.Name ?? r.Name));

    /// <summary>Load states that every car has.</summary>
    public IReadOnlyList<string> Loads
    {
        get
        {
            var cars = Readings.Select(r => r.Reading?.Car).OfType<Car>().ToList();
            return [LoadState.Reference.Name, .. cars.Count == 0 ? [] : cars[0].LoadStates.Select(l => l.Name).Where(name => cars.All(c => c.LoadStates.Any(l => l.Name == name)))];
        }
    }

    /// <summary>Reads an address.</summary>
    internal static ReportQuestion Of(ReportQuery query, GarageView garageView, ServeOptions options) => new(query, garageView, options);

    /// <summary>What is wrong with one choice, in words; null when nothing is.</summary>
    public string? Refused(string choice) => objections.Where(o => o.Choice == choice).Select(o => o.Sentence).ToList() is { Count: > 0 } sentences ? string.Join(' ', sentences.Distinct()) : null;

    /// <summary>Today as a person writes it.</summary>
    public static string Today(TimeProvider clock) => clock.GetLocalNow().ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    private void Read(ReportAsked asked, RoadReading road)
    {
        if (Readings.Count == 0)
        {
            return;
        }

        // A car that is not there counts as one that is refused, so that all else is looked at too.
        List<CarReading> cars = [.. Readings.Select(r => r.Reading ?? new CarReading { Car = null, Refusals = [], Warnings = [], Sources = [new SourceText(r.Name, "")] })];
        var reading = asked.Read(cars, road, Environment.ProcessorCount);
        objections.AddRange(reading.Objections.Where(o => Refused(o.Choice) is null).ToList());
        if (objections.Count == 0)
        {
            Html = reading.Choices;
            Pdf = (asked with { Out = File + ".pdf" }).Read(cars, road, Environment.ProcessorCount).Choices;
        }
    }

    private T Whole<T>(string choice, string words, T usual)
        where T : struct, IParsable<T>
    {
        if (words.All(char.IsAsciiDigit) && T.TryParse(words, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        Object(choice, $"'{words}' must be a whole number, in digits.");
        return usual;
    }

    private void Object(string choice, string sentence) => objections.Add(new ReportObjection(choice, sentence, IsUsage: true));

    // A car's name may hold folders and signs that a report's file does not have.
    private static string Plain(string name) => string.Join('-', name.Split([.. name.Where(c => !char.IsAsciiLetterOrDigit(c)).Distinct()], StringSplitOptions.RemoveEmptyEntries)) is { Length: > 0 } plain ? plain[..Math.Min(60, plain.Length)] : "car";
}
