using System.Collections.Immutable;
using Heaveline.Cars;
using Heaveline.Files.Garages;
using Heaveline.Files.Reporting;
using Heaveline.Files.Yaml;
using Heaveline.Press.Paper;
using Heaveline.Reports;
using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Reports;

/// <summary>What an address asks of a report, read against the garage as it is now: what is to be made, or why it cannot be.</summary>
public sealed class ReportQuestion
{
    private readonly ReportQuery query;
    private readonly string? units;

    private ReportQuestion(ReportQuery query, GarageView garageView, ServeOptions options)
    {
        this.query = query;
        units = garageView.Units is { IsImperial: true } imperial ? imperial.Word : null;
        CarNames = query.Cars.Length > 0 ? query.Cars : garageView.UsualCar is { } usual ? [usual] : [];
        Readings = [.. CarNames.Select(name => (name, garageView.Car(name)))];
        Date = query.Date ?? "";
        Drives = DrivesOf(query, garageView);
        PartWords = query.Parts ?? ReportPartChoice.Usual(HasSeveral, DriveCount, HasStudy, HasFilms);
        File = query.File ?? $"{Plain(CarNames.FirstOrDefault("car"))}-report";
        var reading = ReportStudy.Question.Read(Words, garageView);
        Objections =
        [
            .. reading.Objections,
            .. ReportFolder.Problem(File) is { } problem ? [new Objection("file", problem, IsUsage: true)] : Array.Empty<Objection>(),
        ];
        if (Objections.Count == 0)
        {
            Html = ReportFiles.Named(reading.Asked! with { Program = $"Heaveline {options.Version}" });
            Pdf = Html.To(File + ".pdf");
        }
    }

    /// <summary>Names of the cars; at least one unless the garage is empty.</summary>
    public ImmutableArray<string> CarNames { get; }

    /// <summary>The cars as read; null for a name that is not there.</summary>
    public IReadOnlyList<(string Name, Reading<Car>? Reading)> Readings { get; }

    /// <summary>The drives that are chosen and there.</summary>
    public IReadOnlyList<RecordedDrive> Drives { get; }

    /// <summary>Of how many drives the report can be; a single one counts as two where it follows on another.</summary>
    public int DriveCount => ReportDrives.Count(query.Drives.Length, Drives);

    /// <summary>The day that is printed: the address's; blank: none.</summary>
    public string Date { get; }

    /// <summary>Words of the parts with commas between.</summary>
    public string PartWords { get; }

    /// <summary>Whether the report is of several cars.</summary>
    public bool HasSeveral => CarNames.Length > 1;

    /// <summary>Whether a study of what to buy is chosen.</summary>
    public bool HasStudy => query.Study is not null;

    /// <summary>Whether films are chosen.</summary>
    public bool HasFilms => query.Films.Length > 0;

    /// <summary>Name of the file without ending.</summary>
    public string File { get; }

    /// <summary>The parts that are chosen.</summary>
    internal IReadOnlyList<PartKind> Parts => ReportPartChoice.Kinds(PartWords, HasSeveral, DriveCount, HasStudy, HasFilms);

    /// <summary>What is asked of the HTML file; null when anything is wrong.</summary>
    public ReportAsked? Html { get; }

    /// <summary>What is asked of the PDF; it differs in the command alone.</summary>
    public ReportAsked? Pdf { get; }

    /// <summary>Everything that is wrong.</summary>
    public IReadOnlyList<Objection> Objections { get; }

    /// <summary>The sheet of the PDF.</summary>
    public PaperSize Paper => query.Paper == "letter" ? PaperSize.Letter : PaperSize.A4;

    /// <summary>The query with its usual car written out, so that its address means the same whatever is usual later.</summary>
    public ReportQuery Pinned => query with { Cars = CarNames };

    /// <summary>Tells reports apart by all that they are made from: the choices and the texts of the files. Empty when nothing can be made.</summary>
    public string Key => Html is null ? "" : string.Join('\n', [Html.Command, Html.Program, .. Html.Inputs.Select(i => i.Sha256), .. Looks]);

    private IEnumerable<string> Looks => Html!.Drives.SelectMany(d => new[] { d.Look, d.Before?.Look ?? "" });

    // A drive that no part is of stays chosen, but is not asked about, so that its log stays unread. "All" asks for what two drives make possible.
    private bool Asks(params PartKind[] kinds) => ReportPartChoice.Kinds(PartWords, HasSeveral, drives: 2, HasStudy, HasFilms).Intersect(kinds).Any();

    private static IReadOnlyList<RecordedDrive> DrivesOf(ReportQuery query, GarageView garageView) =>
        [.. query.Drives.Select(name => NamedDrives.Find(garageView.Garage, name, file => file).Value).OfType<RecordedDrive>()];

    /// <summary>The title that is printed when none is given.</summary>
    public string UsualTitle => query.Title is null && Html is { } asked
        ? asked.Title
        : string.Join("; ", Readings.Select(r => r.Reading?.Value?.Name ?? r.Name));

    /// <summary>That the cars were chosen the other way round, a sentence; blank where they were not.</summary>
    public string Turned => Html?.Turned ?? "";

    /// <summary>Load states that every car has.</summary>
    public IReadOnlyList<string> Loads
    {
        get
        {
            var cars = Readings.Select(r => r.Reading?.Value).OfType<Car>().ToList();
            return
            [
                LoadState.Reference.Name,
                .. cars.Count == 0 ? [] : cars[0].LoadStates.Select(l => l.Name).Where(name => cars.All(c => c.LoadStates.Any(l => l.Name == name))),
            ];
        }
    }

    /// <summary>The load state that is meant when none is named; blank where the cars' first ones are called differently.</summary>
    public string UsualLoad =>
        Readings.Select(r => r.Reading?.Value).OfType<Car>().Select(c => LoadedCar.UsualLoad(c).Name).Distinct().ToList() switch
        {
            [] => LoadState.Reference.Name,
            [var one] => one,
            _ => "",
        };

    /// <summary>Reads an address.</summary>
    internal static ReportQuestion Of(ReportQuery query, GarageView garageView, ServeOptions options) => new(query, garageView, options);

    /// <summary>
    /// The parts when other drives are chosen: those that are of drives come and go with them; null: the usual ones.
    /// </summary>
    /// <param name="next">The query with other drives.</param>
    /// <param name="garageView">The garage.</param>
    internal string? PartsWith(ReportQuery next, GarageView garageView)
    {
        if (query.Parts is null)
        {
            return null;
        }

        var (count, chosen) = (ReportDrives.Count(next.Drives.Length, DrivesOf(next, garageView)), Parts);
        bool Stays(ReportPartChoice part) => part.Kind switch
        {
            PartKind.Drive or PartKind.Prove => part.IsPossible(HasSeveral, count)
                && (!part.IsPossible(HasSeveral, DriveCount, HasStudy, HasFilms) || chosen.Contains(part.Kind)),
            _ => chosen.Contains(part.Kind),
        };
        return string.Join(',', ReportPartChoice.All.Where(Stays).Select(p => p.Word));
    }

    /// <summary>The parts with more cars or fewer: what is chosen stays as far as it is possible, and what becomes possible comes unasked.</summary>
    /// <param name="cars">How many cars there are then.</param>
    internal string? PartsWith(int cars)
    {
        var (several, chosen) = (cars > 1, Parts);
        if (several == HasSeveral)
        {
            return query.Parts;
        }

        var next = string.Join(", ", ReportPartChoice.All.Where(part => part.IsPossible(several, DriveCount, HasStudy, HasFilms)
            && (chosen.Contains(part.Kind) || (several && part.ForSeveral && !part.IsPossible(HasSeveral, DriveCount, HasStudy, HasFilms))))
            .Select(part => part.Word));
        return next == ReportPartChoice.Usual(several, DriveCount, HasStudy, HasFilms) ? null : next.Replace(" ", "", StringComparison.Ordinal);
    }

    /// <summary>What is wrong with one choice, in words; null when nothing is.</summary>
    public string? Refused(string choice) => Objections.Where(o => o.Choice == choice).Select(o => o.Sentence).ToList() is { Count: > 0 } sentences
        ? string.Join(' ', sentences.Distinct())
        : null;

    // A list of no parts stays one: left out, it would mean the usual ones.
    private Given Words => new(
    [
        .. CarNames.Select(name => (ReportStudy.Cars.Name, (string?)name)),
        .. Asks(PartKind.Drive, PartKind.Prove) ? query.Drives.Select(name => (ReportStudy.Drives.Name, (string?)name)) : [],
        (ReportStudy.Forecast.Name, query.IsForecast && Asks(PartKind.Prove) ? Choice.Yes : null),
        (ReportStudy.Study.Name, Asks(PartKind.Choose) ? query.Study : null),
        .. Asks(PartKind.Film) ? Films : [],
        (Choices.Road.Name, query.Road), (ReportStudy.Speed.Name, query.Speed), (ReportStudy.Speeds.Name, query.Speeds),
        (Choices.Load.Name, query.Load),
        (ReportStudy.Class.Name, query.Class), (ReportStudy.Rule.Name, query.Rule), (ReportStudy.Samples.Name, query.Samples),
        (ReportStudy.Seed.Name, query.Seed),
        (ReportStudy.Parts.Name, PartWords.Length > 0 ? PartWords : ","), (ReportStudy.Title.Name, query.Title),
        (ReportStudy.Author.Name, query.Author),
        (ReportStudy.Date.Name, Date), (ReportStudy.Paper.Name, query.Paper), (Choices.Units.Name, units), (ReportStudy.Out.Name, File + ".html"),
    ]);

    private IEnumerable<(string, string?)> Films =>
    [
        .. query.Films.Select(name => (ReportStudy.Films.Name, (string?)name)),
        .. query.FilmsAfter.Select(name => (ReportStudy.FilmsAfter.Name, (string?)name)),
        (ReportStudy.FilmedCar.Name, query.IsFilmedCar ? Choice.Yes : null),
    ];

    // A car's name may hold folders and signs that a report's file does not have.
    private static string Plain(string name) => string.Join(
        '-',
        name.Split([.. name.Where(c => !char.IsAsciiLetterOrDigit(c)).Distinct()], StringSplitOptions.RemoveEmptyEntries)) is { Length: > 0 } plain
        ? plain[..Math.Min(60, plain.Length)]
        : "car";
}
