using Heaveline.Cars;
using Heaveline.Cli.Output;
using Heaveline.Files;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;

namespace Heaveline.Cli.Commands;

/// <summary>What was asked of the report command, as typed.</summary>
internal sealed record ReportAsked
{
    public const string UsualForOne = "car, modes, pass, why, doubt, ride, cost";
    public const string UsualForSeveral = "car, compare, why, ride, cost";

    /// <summary>The parts by their words.</summary>
    public static string[] Words { get; } = [.. Enum.GetNames<PartKind>().Select(n => n.ToLowerInvariant())];

    public required string[] Cars { get; init; }

    public required string Road { get; init; }

    public required string Speed { get; init; }

    public required string Speeds { get; init; }

    public required string? Load { get; init; }

    public required string Class { get; init; }

    public required string Rule { get; init; }

    public required int Samples { get; init; }

    public required ulong Seed { get; init; }

    public required string? Parts { get; init; }

    public required string? Title { get; init; }

    public required string Author { get; init; }

    public required string Date { get; init; }

    public required string Paper { get; init; }

    public required string Out { get; init; }

    /// <summary>The same as records, files read.</summary>
    public ReportChoices Choices(Streams streams)
    {
        var parts = PartKinds();
        var speeds = Inputs.Speeds(Speeds);
        var speed = Inputs.Speed(Speed);
        var roadClass = RideCommand.Class(Class);
        List<CarReading> readings = [.. Cars.Select(path => Inputs.CarReading(path, streams))];
        foreach (var reading in readings)
        {
            _ = Inputs.Load(reading.Car!, Load);
        }

        var road = Inputs.RoadReading(Road, streams);
        var builtIn = NamedRoads.All.ContainsKey(Road);
        var files = new SharedFolder([.. readings.SelectMany(r => r.Sources), .. builtIn ? [] : road.Sources]);
        var cars = Told(readings);
        var title = Title ?? string.Join("; ", cars.Select(c => c.Name));
        return new ReportChoices
        {
            Title = title,
            Author = Author,
            Date = Date,
            Program = $"Heaveline {Release.Version}",
            Command = Command(title, parts, files, builtIn),
            Cars = [.. cars],
            Load = Load,
            Road = road.Road!,
            Speed = speed,
            Speeds = [.. speeds],
            RoadClass = roadClass,
            Rule = model => MapRule.Of(Rule, model, RuleValues),
            Draws = Samples,
            Seed = Seed,
            Parts = [.. parts],
            Inputs = [.. files.Inputs, .. builtIn ? road.Sources.Select(BuiltIn) : []],
            Degree = Environment.ProcessorCount,
        };
    }

    // As the map command has them without --fine.
    private const int RuleValues = 25;

    private List<PartKind> PartKinds()
    {
        var words = (Parts ?? (Cars.Length > 1 ? UsualForSeveral : UsualForOne)) is "all" ? string.Join(',', Words.Where(w => w != "compare" || Cars.Length > 1)) : Parts ?? (Cars.Length > 1 ? UsualForSeveral : UsualForOne);
        var kinds = new List<PartKind>();
        foreach (var word in words.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            kinds.Add(Array.IndexOf(Words, word.ToLowerInvariant()) is >= 0 and var k
                ? Enum.GetValues<PartKind>()[k]
                : throw new Stopped($"heaveline: --parts: '{word}' is no part; there are {string.Join(", ", Words)}; or all.", ExitCode.WrongUsage));
        }

        if (kinds.Contains(PartKind.Compare) && Cars.Length < 2)
        {
            throw new Stopped("heaveline: --parts compare needs two cars or variants.", ExitCode.WrongUsage);
        }

        return kinds.Count > 0 ? [.. kinds.Distinct()] : throw new Stopped($"heaveline: --parts is empty; choose among {string.Join(", ", Words)}.", ExitCode.WrongUsage);
    }

    // Cars of one name are told apart by their files, and those by their place on the command line.
    private List<Car> Told(List<CarReading> readings)
    {
        var names = readings.Select((r, i) => readings.Count(o => o.Car!.Name == r.Car!.Name) == 1 ? r.Car!.Name : $"{r.Car!.Name} ({Path.GetFileNameWithoutExtension(Cars[i])})").ToList();
        return [.. readings.Select((r, i) => r.Car! with { Name = names.Count(n => n == names[i]) == 1 ? names[i] : FormattableString.Invariant($"{names[i]}, no. {i + 1}") })];
    }

    // Every choice written out, so that a later default changes nothing.
    private string Command(string title, IEnumerable<PartKind> parts, SharedFolder files, bool builtIn)
    {
        List<string> words =
        [
            "heaveline", "report", .. Cars.Select(files.NameOf),
            "--road", builtIn ? Road : files.NameOf(Road),
            "--speed", Speed, "--speeds", Speeds,
            .. Load is null ? [] : new[] { "--load", Load },
            "--class", Class, "--rule", Rule, "--samples", FormattableString.Invariant($"{Samples}"), "--seed", FormattableString.Invariant($"{Seed}"),
            "--parts", string.Join(',', parts).ToLowerInvariant(),
            "--title", title,
            .. Author.Length > 0 ? ["--author", Author] : Array.Empty<string>(),
            .. Date.Length > 0 ? ["--date", Date] : Array.Empty<string>(),
            .. Path.GetExtension(Out).Equals(".pdf", StringComparison.OrdinalIgnoreCase) ? ["--paper", Paper] : Array.Empty<string>(),
            "--out", Path.GetFileName(Out),
        ];
        return string.Join(' ', words.Select(Quoted));
    }

    private static string Quoted(string word) =>
        word.Length > 0 && word.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.' or ',' or '/' or ':') ? word : $"\"{word.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";

    private static ReportInput BuiltIn(SourceText source) => new() { Name = source.File, Text = source.Text, Sha256 = source.Sha256, BuiltIn = true };
}
