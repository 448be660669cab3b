using System.Globalization;
using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Reports;

/// <summary>Chosen answers as one file to publish or to print.</summary>
public static class ReportStudy
{
    // Longer than any title page; an address could hold thousands of signs.
    private const int LongestLine = 200;

    /// <summary>The parts by their words, in the order of <see cref="PartKind"/>.</summary>
    public static IReadOnlyList<string> PartWords { get; } = [.. ReportPartChoice.All.OrderBy(p => p.Kind).Select(p => p.Word)];

    /// <summary>The sheets of a PDF by their words.</summary>
    public static IReadOnlyList<string> Papers { get; } = ["a4", "letter"];

    /// <summary>The cars.</summary>
    public static Choice Cars { get; } = Choices.Cars with
    {
        Says = "One to five car files or variants. The first is what the others are held against; causes, doubts and the rule are of it.",
        Range = (1, 5),
    };

    /// <summary>The speed of the passes.</summary>
    public static Choice Speed { get; } = Choices.Speed with { Says = "Speed of the passes, the causes and the doubts." };

    /// <summary>Speeds of comparison and ride.</summary>
    public static Choice Speeds { get; } = Choices.Speeds with
    {
        Name = "speeds",
        Says = "Speeds of the comparison and the ride, with commas between.",
        Usual = "30 km/h, 50 km/h, 80 km/h, 110 km/h",
    };

    /// <summary>Class of the random road.</summary>
    public static Choice Class { get; } = Choices.Class with { Says = "Class of the random road, A to H (ISO 8608)." };

    /// <summary>The rule that is mapped.</summary>
    public static Choice Rule { get; } = new()
    {
        Name = "rule",
        Kind = ChoiceKind.Word,
        Says = $"Which rule of the trade is mapped: {string.Join(", ", TradeRule.Words)}.",
        HelpName = "RULE",
        Usual = "ratio",
        Words = TradeRule.Words,
        WordIs = "rule",
    };

    /// <summary>How many cars are drawn within the doubts.</summary>
    public static Choice Samples { get; } = Choices.Samples(2000) with { Says = "How many cars to draw within the doubts, 10 to 1000000." };

    /// <summary>Seed of those draws.</summary>
    public static Choice Seed { get; } = Choices.Seed() with { Says = "Seed of those draws." };

    /// <summary>The drives.</summary>
    public static Choice Drives { get; } = new()
    {
        Name = "drive",
        Kind = ChoiceKind.Log,
        Says = "A drive: its folder drives/NAME in a garage, with what drive.yaml says of it, or a log alone (a file, a folder, a .zip), driven by "
            + "the first car, of two logs the second by the second car where there is one. Twice: the drive before a change, then that after it; "
            + "once is enough where drive.yaml says which it follows.",
        HelpName = "DRIVE",
        IsRepeated = true,
    };

    /// <summary>A study of what to buy.</summary>
    public static Choice Study { get; } = new()
    {
        Name = "study",
        Kind = ChoiceKind.Word,
        Says = "The file of a study of what to buy, for the part choose: it names its car, its lists and its roads itself.",
        HelpName = "STUDY",
    };

    /// <summary>Films from the roadside.</summary>
    public static Choice Films { get; } = new()
    {
        Name = "film",
        Kind = ChoiceKind.Film,
        Says = "The sheet of a film from the roadside, its track kept beside it, for the part film. Repeat it: films of one car are read together, "
            + "cars that passed one bump are put in order.",
        HelpName = "FILM",
        IsRepeated = true,
    };

    /// <summary>Films of the same car after a change.</summary>
    public static Choice FilmsAfter { get; } = Films with
    {
        Name = "film-after",
        Says = "The sheet of a film of the same car after a change. Repeat it.",
    };

    /// <summary>Whether the first car stands beside its film.</summary>
    public static Choice FilmedCar { get; } = new()
    {
        Name = "filmed-car",
        Kind = ChoiceKind.Tick,
        Says = "The films are of the first car, over --road: its forecast stands beside them.",
    };

    /// <summary>What was the same in both drives.</summary>
    public static Choice Same { get; } = ProveStudy.Same with
    {
        Says = ProveStudy.Same.Says.TrimEnd('.') + ". What drive.yaml says to be the same need not be said again.",
    };

    /// <summary>Whether the change is forecast.</summary>
    public static Choice Forecast { get; } = new()
    {
        Name = "forecast",
        Kind = ChoiceKind.Tick,
        Says = "Also forecast on the drive before what the car of the drive after would do, and hold that against the drive after; "
            + "takes some seconds.",
    };

    /// <summary>What to include.</summary>
    public static Choice Parts { get; } = new()
    {
        Name = "parts",
        Kind = ChoiceKind.Word,
        Says = $"What to include, in order, with commas between: {string.Join(", ", PartWords)}; or all. Without it: "
            + $"{ReportPartChoice.Usual(several: false)} for one car, {ReportPartChoice.Usual(several: true)} for several; "
            + "and drive where one is given, prove where there are two, choose where there is a study, film where there is one. "
            + "Cautions, sources and how to make it again are always there.",
        HelpName = "PARTS",
    };

    /// <summary>The title.</summary>
    public static Choice Title { get; } =
        new() { Name = "title", Kind = ChoiceKind.Word, Says = "Title. Without it: the cars' names.", HelpName = "TEXT" };

    /// <summary>Who made it.</summary>
    public static Choice Author { get; } = new() { Name = "author", Kind = ChoiceKind.Word, Says = "Who made it.", HelpName = "TEXT" };

    /// <summary>The day it is of.</summary>
    public static Choice Date { get; } =
        new() { Name = "date", Kind = ChoiceKind.Word, Says = "The day it is of, as you want it printed. Nothing is filled in.", HelpName = "TEXT" };

    /// <summary>Sheet of a PDF.</summary>
    public static Choice Paper { get; } = new()
    {
        Name = "paper",
        Kind = ChoiceKind.Word,
        Says = "Sheet of a PDF: a4 or letter.",
        HelpName = "PAPER",
        Usual = Papers[0],
        Words = Papers,
        WordIs = "paper",
    };

    /// <summary>The file that it becomes.</summary>
    public static Choice Out { get; } = new()
    {
        Name = "out",
        Kind = ChoiceKind.Word,
        Says = "The file to write: .html (one file that needs nothing else, for screen, phone and print) or .pdf; - is standard output (HTML).",
        HelpName = "FILE",
        IsNeeded = true,
    };

    /// <summary>The question as a command offers it.</summary>
    public static Question<ReportAsked, Report> Question { get; } = new()
    {
        Word = "report",
        Says =
            """
            Write a report: the finding first, then the car at every load, modes, passes in figures and words, comparison, ride, rule, causes,
            what to buy, doubts, price, drives with a phone on the floor, before and after, films from the roadside; with cautions, sources, and
            the texts and the command that make it again.

            Examples:
              heaveline report examples/garage/fern-saloon.yaml --load "four up with luggage" --speed "40 km/h" --out fern.html
              heaveline report examples/garage/fern-saloon.yaml examples/garage/fern-saloon-cured.yaml --parts car,compare,cost --author "A. Fern" \
                  --date "1 May 2026" --out cure.pdf
              heaveline report examples/garage/fern-saloon.yaml --study examples/studies/fern-four-up.yaml --parts choose --out buy.pdf
              heaveline report examples/garage/fern-saloon.yaml --film examples/films/grey-saloon-25.yaml --parts film --out film.html
              heaveline report my-garage/my-car.yaml --drive my-garage/drives/after --parts drive,prove --out proof.html
            """,
        Choices =
        [
            Cars, Choices.Road, Speed, Speeds, Choices.Load, Class, Rule, Samples, Seed, Drives, Same, Forecast, Study, Films, FilmsAfter,
            FilmedCar, Parts, Title, Author, Date, Paper, Choices.Units, Out,
        ],
        Reads = Read,
        Answers = Report.From,
    };

    /// <summary>The name that stands for standard output, to which a report goes as HTML.</summary>
    public const string StandardOutput = "-";

    /// <summary>Whether a file of this name is a PDF.</summary>
    public static bool IsPdf(string file) => file.EndsWith(".pdf", StringComparison.OrdinalIgnoreCase);

    private static ReportAsked? Read(AskedReader reader)
    {
        var (cars, turned) = BaseFirst.Read(reader, Cars, Choices.Load);
        if (reader.Given.All(Cars) is var names && names.Distinct(StringComparer.Ordinal).Count() < names.Count)
        {
            reader.Object(Cars.Name, "A car is chosen twice; take another one, or leave it out.");
        }

        var road = reader.Road(Choices.Road);
        var speed = reader.Speed(Speed);
        var speeds = reader.Speeds(Speeds);
        var roadClass = reader.Class(Class);
        var rule = reader.Word(Rule);
        var samples = reader.Whole(Samples);
        var seed = reader.Seed(Seed);
        var (drives, drivesTurned) = ReportDrives.Of(reader, cars);
        var studyFile = reader.Text(Study);
        var study = studyFile is null ? null : reader.Asked(Study, ChooseStudy.Question, new Given([(Choices.Car.Name, studyFile)]));
        if (study is not null && cars.Count > 0 && !cars.Any(car => car.Car.Name == study.Car.Name))
        {
            reader.Object(
                Study.Name, $"The study '{studyFile}' asks what to buy for {study.Car.Name}, and the report is of "
                    + $"{string.Join(" and ", cars.Select(car => car.Name))}: report that car, or name a study of this one.", isUsage: false);
        }

        var films = ReportFilms.Of(reader);
        var parts = ReportParts.Of(
            reader, names.Count > 1, ReportDrives.Count(reader.Given.All(Drives).Count, drives), studyFile is not null,
            reader.Given.All(Films).Count > 0);
        var same = ProveStudy.Circumstances(reader, Same);
        var isForecast = reader.IsTicked(Forecast);
        ReportDrives.Check(reader, parts, drives, isForecast);
        var (title, author, date) = (Line(reader, Title), Line(reader, Author) ?? "", Line(reader, Date) ?? "");
        var paper = reader.Word(Paper);
        var units = reader.Word(Choices.Units);
        var file = reader.Text(Out) ?? "";
        if (file != StandardOutput && !IsPdf(file) && !file.EndsWith(".html", StringComparison.OrdinalIgnoreCase))
        {
            reader.Object(Out.Name, $"--out '{file}': the name must end in .html or .pdf.");
        }

        if (reader.IsRefused)
        {
            return null;
        }

        title = string.IsNullOrWhiteSpace(title) ? string.Join("; ", cars.Select(c => c.Name)) : title;
        InputText[] ground = [.. reader.Inputs(Choices.Road).SelectMany(i => i)];
        var roadName = ground is [{ BuiltIn: false } own, ..] ? own.Name : reader.Text(Choices.Road);
        return new ReportAsked
        {
            Title = title,
            Author = author,
            Date = date,
            Cars = [.. cars.Select(c => c with { Car = c.Car with { Name = c.Name } })],
            Turned = string.Join(' ', new[] { turned, drivesTurned }.Where(said => said.Length > 0)),
            Road = road!,
            Speed = speed!.Value,
            Speeds = [.. speeds],
            RoadClass = roadClass!,
            Rule = TradeRule.Of(rule!),
            Draws = samples!.Value,
            Seed = seed!.Value,
            Drives = [.. drives],
            Study = study,
            Films = films,
            Same = same,
            IsForecast = isForecast,
            Parts = [.. parts],
            Paper = paper!,
            Units = ReaderUnits.Of(units),
            Inputs =
            [
                .. reader.Inputs(Cars).SelectMany(i => i).Concat(ground).Concat(reader.Inputs(Drives).SelectMany(i => i))
                    .Concat(reader.Inputs(Study).SelectMany(i => i))
                    .Concat(reader.Inputs(Films).Concat(reader.Inputs(FilmsAfter)).SelectMany(i => i)).DistinctBy(i => i.Name),
            ],
            Words = new Given(
            [
                .. reader.Inputs(Cars).Select(own => (Cars.Name, (string?)own[0].Name)),
                (Choices.Road.Name, roadName),
                .. new[] { Speed, Speeds, Choices.Load, Class, Rule, Samples, Seed }.Select(choice => (choice.Name, reader.Text(choice))),
                .. (drivesTurned.Length > 0 ? drives.Reverse() : drives).Select(drive => (Drives.Name, (string?)drive.Path)),
                (Same.Name, reader.Text(Same)),
                (Forecast.Name, isForecast ? Choice.Yes : null),
                (Study.Name, studyFile),
                .. new[] { Films, FilmsAfter }.SelectMany(choice => reader.Given.All(choice).Select(name => (choice.Name, (string?)name))),
                (FilmedCar.Name, films is { IsFirstCar: true } ? Choice.Yes : null),
                (Parts.Name, string.Join(',', parts).ToLowerInvariant()),
                (Title.Name, title),
                (Author.Name, author),
                (Date.Name, date),
                // As it always was where nothing is turned: that is the usual.
                (Choices.Units.Name, units == ReaderUnits.Imperial.Word ? units : null),
            ]),
        }
        .To(file);
    }

    private static string? Line(AskedReader reader, Choice choice)
    {
        var text = reader.Text(choice);
        if (text is not null && (text.Length > LongestLine || text.Any(char.IsControl)))
        {
            reader.Object(choice.Name, string.Create(
                CultureInfo.InvariantCulture,
                $"{choice.Name}: give one line of at most {LongestLine} signs; "
                + $"it has {text.Length}{(text.Any(char.IsControl) ? ", one that is not seen among them" : "")}."));
        }

        return text;
    }
}
