using Heaveline.Answers;
using Heaveline.Measures;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What years bring, in sentences.</summary>
/// <param name="answer">The answer.</param>
internal sealed class YearsWords(YearsAnswer answer)
{
    // Below this a reading parts cars hardly better than a coin: a choice of words.
    private const double Parting = 0.5;

    private readonly YearsAsked asked = answer.Asked;

    /// <summary>What is said, the finding first.</summary>
    public IReadOnlyList<Sentence> All =>
    [
        new("best-before", BestBefore),
        .. answer.Chances.Select(c => new Sentence(Id(c.Event), Chance(c))),
        .. answer.Chances.Where(c => c.Reading is not null).Select(c => new Sentence($"{Id(c.Event)}-reading", Reading(c))),
        .. answer.Chances.Any(c => c.Reading is not null) ? new[] { ReadingErrors } : [],
        .. answer.Fallen > 0 ? new[] { Fallen } : [],
        .. answer.Chances.Any(c => c.Event == YearsEvent.StandsOnStop && c.Shares.Any(share => share >= 0.05)) ? new[] { OnStops } : [],
        Wear,
        .. answer.Chances.Any(c => c.Event == YearsEvent.HighBeam)
            ? new[] { LampKept }
            : [],
        .. answer.Chances.Any(c => c.Event == YearsEvent.WeakDamping) ? new[] { LeastDamping } : [],
    ];

    /// <summary>Name of an event for machines.</summary>
    public static string Id(YearsEvent what) => what switch
    {
        YearsEvent.SofterRear => "softer-rear",
        YearsEvent.StandsOnStop => "stands-on-stop",
        YearsEvent.TouchesStop => "touches-stop",
        YearsEvent.HighBeam => "high-beam",
        YearsEvent.WeakDamping => "weak-damping",
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, null),
    };

    // Of n cars without a single case the chance is below 3/n (95 % confidence).
    private string Percent(double share)
    {
        var least = Math.Max(1.0, Math.Ceiling(300.0 / asked.Draws));
        return share switch
        {
            0.0 => Text($"below {least:F0} %"),
            1.0 => Text($"above {100.0 - least:F0} %"),
            // So near an end the count says more than a share that would read as none, or as less than "below".
            _ when In.Percent.Of(share) is var near && (near <= least || near >= 100.0 - least) =>
                Text($"{share * asked.Draws:F0} of {asked.Draws} cars"),
            _ => Text($"{In.Percent.Of(share):F0} %"),
        };
    }

    /// <summary>An event as a clause: "the rear is the softer end".</summary>
    public string Clause(YearsEvent what) => what switch
    {
        YearsEvent.SofterRear => "the rear is the softer end",
        YearsEvent.StandsOnStop => "the car stands on a bump stop",
        YearsEvent.TouchesStop => $"a bump stop is touched over {asked.Road!.Name} at {Speed}",
        YearsEvent.HighBeam => "the dipped beam points above its range",
        YearsEvent.WeakDamping => Text($"an axle's damping ratio is below {CureGuard.LeastDamping:F2}"),
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, null),
    };

    private string Speed => Text($"{In.KilometresPerHour.Of(asked.Speed):0.#} km/h");

    private string Load => $"Under '{asked.Car.Load.Name}'";

    private string BestBefore
    {
        get
        {
            var already = answer.Chances.Where(c => c.IsSo).ToArray();
            var now = already.Length == 0
                ? ""
                : $" As described {string.Join(" and ", already.Select(c => $"{Clause(c.Event)} ({Percent(c.Shares[0])})"))} already.";
            var next = answer.Chances.Where(c => !c.IsSo && c.Half.From is not null).MinBy(c => c.YearOf(0.5) ?? double.MaxValue);
            return next is null
                ? already.Length > 0
                    ? $"{Load} the years bring nothing more that is watched here and becomes more likely than not within {Years(asked.Years)}.{now}"
                    : $"{Load} nothing that is watched here becomes more likely than not within {Years(asked.Years)}."
                : next.IsTold
                    ? Text($"{Load} it is best before year {next.YearOf(0.5):F1}{Told(next)}: from then on it is more likely than not that ")
                        + $"{Clause(next.Event)}.{now}"
                    : $"{Load} no one year can be named: that {Clause(next.Event)} is about as likely as not {Creeping(next)}.{now}";
        }
    }

    private string Chance(YearsChance chance)
    {
        var last = $"{Percent(chance.Shares[^1])} in year {Numeral.Of(asked.Years, 0)}";
        var today = $"{Percent(chance.Shares[0])} today";
        var clause = FirstLetter.Raised(Clause(chance.Event));
        return (chance.IsSo, chance.YearOf(0.5)) switch
        {
            (true, _) => $"{clause}: {today}, {last}.",
            (_, { } half) when chance.IsTold => Text($"{clause}: {today}, {Tenth(chance)}one half in year {half:F1}{Told(chance)}, {last}."),
            _ when chance.Half.From is not null => $"{clause}: {today}, {Tenth(chance)}about one half {Creeping(chance)}, {last}.",
            _ => $"{clause}: {today}, {Tenth(chance)}{last}; it stays the less likely.",
        };
    }

    // Nine times of ten.
    private string Told(YearsChance chance) => chance.Half is { From: { } from, To: { } to } && to - from > 0.1
        ? Text($" ({from:F1} to {to:F1}: {asked.Draws} draws tell it no closer)") : "";

    private string Creeping(YearsChance chance) => (chance.Half.To is { } to
        ? Text($"from year {chance.Half.From:F1} to year {to:F1}")
        : Text($"from year {chance.Half.From:F1} on")) + Text($" ({asked.Draws} draws tell it no closer)");

    private static string Tenth(YearsChance chance) =>
        chance.Shares[0] < 0.1 && chance.YearOf(0.1) is { } year ? Text($"one in ten in year {year:F1}, ") : "";

    private string Reading(YearsChance chance)
    {
        var reading = chance.Reading!;
        var shares = Text($"of the drawn cars and years in which {Clause(chance.Event)}, {In.Percent.Of(reading.Found):F0} % are beyond that, ")
            + Text($"of the others {In.Percent.Of(reading.Mistaken):F0} %");
        return reading.Parts >= Parting
            ? $"What shows it in a workshop that {Clause(chance.Event)}: {Limit(reading)}; {shares}."
            : $"No quick reading shows well that {Clause(chance.Event)}. The best of them: {Limit(reading)}; {shares}.";
    }

    private static string Limit(YearsReading reading) => reading.Kind switch
    {
        WorkshopReading.FrontSinking => $"the empty car's front {Sunk(reading.Limit)} than when it was described",
        WorkshopReading.RearSinking => $"the empty car's rear {Sunk(reading.Limit)} than when it was described",
        WorkshopReading.RearMoreThanFront when reading.Limit >= 0.0 =>
            Text($"the empty car's rear sunk by {In.Millimetres.Of(reading.Limit):F0} mm more than its front"),
        WorkshopReading.RearMoreThanFront =>
            Text($"the empty car's front sunk by less than {In.Millimetres.Of(-reading.Limit):F0} mm more than its rear"),
        WorkshopReading.FrontSwings => Swings("front", reading.Limit),
        WorkshopReading.RearSwings => Swings("rear", reading.Limit),
        _ => throw new ArgumentOutOfRangeException(nameof(reading), reading.Kind, null),
    };

    private static string Sunk(double by) => Text($"{In.Millimetres.Of(Math.Abs(by)):F0} mm {(by >= 0.0 ? "lower" : "higher")}");

    private static string Swings(string end, double count) =>
        Text($"its {end}, pushed down and let go, swings on more than {count:F1} times until a tenth is left");

    private static Sentence ReadingErrors { get; } = new("reading-errors", WorkshopReadingWords.Errors);

    private Sentence Fallen => new("fallen", Text(
        $"{answer.Fallen} of the {asked.Draws} cars came down so far within {Years(asked.Years)} that they cannot stand as described: from then on ")
        + "they count as standing on their stops.");

    private static Sentence LampKept { get; } =
        new("lamp-kept", "The lamp is taken as it was set when the car was described: setting it anew takes that event away.");

    private static Sentence LeastDamping { get; } = new("least-damping", Text(
        $"The bound of {CureGuard.LeastDamping:F2} on the damping ratio is common practice, no source."));

    private static Sentence OnStops { get; } = new(
        "on-bump-stops",
        "Of a car that stands on a bump stop the stop makes the rate as much as the spring: which end is the softer is told of its springs alone, "
        + "as they would carry it without the stops.");

    private Sentence Wear
    {
        get
        {
            var wear = asked.Wear;
            string[] all =
            [
                .. wear.FrontSag.Si > 0.0 ? new[] { $"the front's springs let it sink by {Millimetres(wear.FrontSag)}" } : [],
                .. wear.RearSag.Si > 0.0 ? new[] { $"the rear's springs let it sink by {Millimetres(wear.RearSag)}" } : [],
                .. wear.BushCreep.Si > 0.0 ? new[] { $"creeping bushes let both ends sink by {Millimetres(wear.BushCreep)}" } : [],
                .. wear.DamperLoss.Si > 0.0
                    ? new[] { $"dampers lose {QuantityText.Format(wear.DamperLoss, "%", 3)} of the force that is left" } : [],
            ];
            return new("wear", $"Taken as asked, each year alike: {string.Join("; ", all)}. No published rate stands behind these: measure heights "
                + "and swings of your own car years apart.");
        }
    }

    private static string Millimetres(Amount<Length> rate) => QuantityText.Format(rate, "mm", 3);

    private static string Years(int years) => years == 1 ? "a year" : Text($"{years} years");
}
