using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Quantities;
using Heaveline.Reports;
using Heaveline.Roads;
using Heaveline.Studies;

namespace Heaveline.Files.Reporting;

/// <summary>From the words of what was asked to records, gathering all that is wrong on the way.</summary>
internal sealed class AskedReading(ReportAsked asked, IReadOnlyList<CarReading> readings, RoadReading road)
{
    private readonly List<ReportObjection> objections = [];

    public ReportReading Read(int degree)
    {
        if (readings.Count == 0)
        {
            Object("car", "No car is chosen.");
        }

        foreach (var refused in readings.Where(r => r.Car is null))
        {
            Object("car", $"{Path.GetFileName(refused.Sources[0].File)} is refused for {Count(refused.Refusals.Count)}.", isUsage: false);
        }

        if (road.Road is null)
        {
            Object("road", $"The road '{asked.Road}' is refused for {Count(road.Refusals.Count)}.", isUsage: false);
        }

        var speed = Speed("speed", asked.Speed);
        double[] speeds = [.. asked.Speeds.Split(',', StringSplitOptions.TrimEntries).Select(words => Speed("speeds", words)).Distinct().Order()];
        CheckLoad();
        var roadClass = RoadClass.All.FirstOrDefault(c => string.Equals(c.Letter.ToString(), asked.Class, StringComparison.OrdinalIgnoreCase));
        if (roadClass is null)
        {
            Object("class", $"'{asked.Class}' is no road class; there are A to H, A the smoothest.");
        }

        OneOf("rule", asked.Rule, TradeRule.Words, "rule");
        if (asked.Samples is < 10 or > 1_000_000)
        {
            Object("samples", FormattableString.Invariant($"The draws are {asked.Samples}; they must be 10 to 1000000. 2000 tell a band to a few hundredths of itself."), isUsage: false);
        }

        var parts = Parts();
        OneOf("paper", asked.Paper, ReportAsked.Papers, "paper");
        return objections.Count > 0 ? new ReportReading { Choices = null, Objections = objections } : Whole(speed, speeds, roadClass!, parts, degree);
    }

    private ReportReading Whole(double speed, double[] speeds, RoadClass roadClass, List<PartKind> parts, int degree)
    {
        var builtIn = NamedRoads.All.ContainsKey(asked.Road);
        var files = new SharedFolder([.. readings.SelectMany(r => r.Sources), .. builtIn ? [] : road.Sources]);
        var cars = Told();
        var title = string.IsNullOrWhiteSpace(asked.Title) ? string.Join("; ", cars.Select(c => c.Name)) : asked.Title;
        try
        {
            var choices = new ReportChoices
            {
                Title = title,
                Author = asked.Author,
                Date = asked.Date,
                Program = asked.Program,
                Command = new AskedLine(asked, files, builtIn ? asked.Road : files.NameOf(road.Sources[0].File)).Of(title, parts, readings),
                Cars = [.. cars],
                Load = asked.Load,
                Road = road.Road!,
                Speed = speed,
                Speeds = [.. speeds],
                RoadClass = roadClass,
                Rule = TradeRule.Of(asked.Rule),
                Draws = asked.Samples,
                Seed = asked.Seed,
                Parts = [.. parts],
                Inputs = [.. files.Inputs, .. builtIn ? road.Sources.Select(BuiltIn) : []],
                Degree = degree,
            };
            return new ReportReading { Choices = choices, Objections = [] };
        }
        catch (RefusedValueException refusal)
        {
            return new ReportReading { Choices = null, Objections = [new ReportObjection("car", refusal.Message, IsUsage: false)] };
        }
    }

    private void CheckLoad()
    {
        foreach (var car in asked.Load is null || asked.Load == LoadState.Reference.Name ? [] : readings.Select(r => r.Car).OfType<Car>())
        {
            if (car.LoadStates.All(l => l.Name != asked.Load))
            {
                Object("load", $"'{asked.Load}' is no load state of {car.Name}; it has: {string.Join(", ", car.LoadStates.Select(l => l.Name).Prepend(LoadState.Reference.Name))}.", isUsage: false);
            }
        }
    }

    private double Speed(string choice, string words)
    {
        var parsed = QuantityText.Parse<Velocity>(words);
        if (!parsed.IsRead)
        {
            Object(choice, $"Speed '{words}': {parsed.Refusal!.Message} {parsed.Refusal.Advice}");
        }
        else if (!(parsed.Amount.Si > 0.0))
        {
            Object(choice, $"Speed '{words}' must be above 0 km/h.");
        }

        return parsed.IsRead ? parsed.Amount.Si : double.NaN;
    }

    private List<PartKind> Parts()
    {
        var several = readings.Count > 1;
        var usual = several ? ReportAsked.UsualForSeveral : ReportAsked.UsualForOne;
        var words = asked.Parts is "all" ? string.Join(',', ReportAsked.Words.Where(w => w != "compare" || several)) : asked.Parts ?? usual;
        var kinds = new List<PartKind>();
        foreach (var word in words.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var place = ReportAsked.Words.Select((known, k) => (known, k)).Where(w => w.known.Equals(word, StringComparison.OrdinalIgnoreCase)).Select(w => w.k).DefaultIfEmpty(-1).First();
            if (place < 0)
            {
                Object("parts", $"'{word}' is no part; there are {string.Join(", ", ReportAsked.Words)}; or all.");
            }
            else
            {
                kinds.Add(Enum.GetValues<PartKind>()[place]);
            }
        }

        if (kinds.Contains(PartKind.Compare) && !several)
        {
            Object("parts", "The part compare needs two cars or variants.");
        }
        else if (kinds.Count == 0 && objections.All(o => o.Choice != "parts"))
        {
            Object("parts", $"The list of parts is empty; choose among {string.Join(", ", ReportAsked.Words)}.");
        }

        return [.. kinds.Distinct()];
    }

    private void OneOf(string choice, string word, IReadOnlyList<string> known, string what)
    {
        if (!known.Contains(word))
        {
            Object(choice, $"'{word}' is no {what}; there are {string.Join(", ", known)}.");
        }
    }

    // Cars of one name are told apart by their files, and those by their place in the list.
    private List<Car> Told()
    {
        var names = readings.Select(r => readings.Count(o => o.Car!.Name == r.Car!.Name) == 1 ? r.Car!.Name : $"{r.Car!.Name} ({Path.GetFileNameWithoutExtension(r.Sources[0].File)})").ToList();
        return [.. readings.Select((r, i) => r.Car! with { Name = names.Count(n => n == names[i]) == 1 ? names[i] : FormattableString.Invariant($"{names[i]}, no. {i + 1}") })];
    }

    private void Object(string choice, string sentence, bool isUsage = true) => objections.Add(new ReportObjection(choice, sentence, isUsage));

    private static ReportInput BuiltIn(SourceText source) => new() { Name = source.File, Text = source.Text, Sha256 = source.Sha256, BuiltIn = true };

    private static string Count(int reasons) => reasons == 1 ? "1 reason" : FormattableString.Invariant($"{reasons} reasons");
}
