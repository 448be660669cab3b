using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
using Heaveline.Ties;

namespace Heaveline.Files.Ties;

/// <summary>The words for a sheet of cable ties.</summary>
internal static class TieWords
{
    private const string AtLeast = "at least ";

    private static readonly Key<string> Name = Key.Required(
        "ties", "What the sheet is called.", Kind.Text(), "evening on the village hump", property: "Name");

    private static readonly Key<string> Note = Key.Optional("note", "Who read it, how, which day.", Kind.Lines(), "Car bounced before each reading.");

    /// <summary>The obstacle.</summary>
    public static readonly Key<string> Over = Key.Required(
        "over", "The obstacle: a road's short name, or its road file, relative to this file.", Kind.Text(), "village-hump");

    private static readonly Key<string> Load = Key.Optional(
        "load", "Load state of the passes by its name in the car file.", Kind.Text(), "four up with luggage");

    private static readonly Key<Amount<Velocity>> Speed = Key.Required(
        "speed", "Steady speed of the pass; good to ± 5 % when no doubt is given.", Kind.Amount<Velocity>(), "20 km/h ± 1 km/h");

    private static readonly (TiePlace Place, Key<TieTravel> Key)[] Places =
    [
        (TiePlace.Front, Tie("front", "Both front ties, which read alike; of unlike ones the farther.")),
        (TiePlace.Rear, Tie("rear", "Both rear ties, which read alike; of unlike ones the farther.")),
        (TiePlace.FrontLeft, Tie("front-left", "The front left tie.")),
        (TiePlace.FrontRight, Tie("front-right", "The front right tie.")),
        (TiePlace.RearLeft, Tie("rear-left", "The rear left tie.")),
        (TiePlace.RearRight, Tie("rear-right", "The rear right tie.")),
    ];

    private static readonly Shape<TiePass> Pass = new Shape(
        "pass with ties", "One crossing: its speed, and how far each tie was pushed along its rod.", [Speed, .. Places.Select(p => p.Key)])
        .As(MakePass);

    private static readonly Key<IReadOnlyList<TiePass>> Passes = Key.Required(
        "passes", "The crossings, three speeds or more.", Kind.List(Pass), "[{speed: 20 km/h, front: 52 mm, rear: 36 mm}]");

    private static readonly Key<Amount<Plain>> Count = Key.Required(
        "count", "Whole swings, down and up again; good to a quarter when no doubt is given.", Kind.Amount<Plain>(), "2", property: "Count");

    private static readonly Key<Amount<Time>> Time = Key.Required(
        "time", "Time that they took; good to 0.3 s when no doubt is given.", Kind.Amount<Time>(), "1.6 s ± 0.2 s", property: "Time");

    private static readonly Key<Amount<Length>> Before = Key.Required(
        "before", "From the wheel's middle up to the arch, the car empty; good to ± 2 mm when no doubt is given.", Kind.Amount<Length>(), "392 mm");

    private static readonly Key<Amount<Length>> After = Key.Required("after", "The same under the load.", Kind.Amount<Length>(), "371 mm");

    private static readonly Shape<AxleSwings> Swung = new Shape(
        "swings of an end", "An end pushed down and let go, dampers on.", Count, Time)
        .As(f => new AxleSwings { End = AxleEnd.Front, Count = f.Required(Count), Time = f.Required(Time) });

    private static readonly Shape<AxleHeights> Stood = new Shape(
        "heights of an axle", "The body's height over the wheels before and after the load came aboard, mean of both sides.", Before, After)
        .As(f => new AxleHeights { End = AxleEnd.Front, Before = f.Required(Before), After = f.Required(After) });

    private static readonly Key<AxleSwings> FrontSwings = Key.Optional("front-swings", "Swings counted at the front, under the load.", Swung);
    private static readonly Key<AxleSwings> RearSwings = Key.Optional("rear-swings", "Swings counted at the rear, under the load.", Swung);
    private static readonly Key<AxleHeights> FrontHeights = Key.Optional("front-heights", "Front heights before and after loading.", Stood);
    private static readonly Key<AxleHeights> RearHeights = Key.Optional("rear-heights", "Rear heights before and after loading.", Stood);

    private static readonly Key<Travels> FrontMoves = Moves("front");
    private static readonly Key<Travels> RearMoves = Moves("rear");

    /// <summary>The whole file.</summary>
    public static readonly Shape<TieSheet> Shape = new Shape(
        "sheet of ties",
        "What cable ties on the damper rods showed after crossing one obstacle at several speeds; swings and heights beside them.",
        Name,
        Note,
        Over,
        Load,
        Passes,
        FrontSwings,
        RearSwings,
        FrontHeights,
        RearHeights,
        FrontMoves,
        RearMoves)
        .As(f => new TieSheet
        {
            Name = f.Required(Name),
            Over = f.Required(Over),
            Load = f.Optional(Load),
            Readings = new TieReadings
            {
                Passes = [.. f.Required(Passes)],
                Swings = [.. Both(f.Optional(FrontSwings), f.Optional(RearSwings), (swings, end) => swings with { End = end })],
                Heights = [.. Both(f.Optional(FrontHeights), f.Optional(RearHeights), (heights, end) => heights with { End = end })],
                FrontRatio = Ratio(f.Optional(FrontMoves)),
                RearRatio = Ratio(f.Optional(RearMoves)),
            },
        });

    /// <summary>Whether a document is a sheet of ties.</summary>
    public static bool IsSheet(Node root) => root.At(Name.Name) is not null;

    private static Key<TieTravel> Tie(string name, string meaning) => Key.Optional(
        name,
        $"{meaning} Travel at the rod from where the loaded car stood, good to ± 2 mm when no doubt is given; \"at least\" before it where the tie "
        + "went as far as it could.",
        Kind.Phrase("a travel with its unit, or at least 62 mm", @"^(at least )?.*[0-9].*$", ReadTie),
        "52 mm ± 2 mm");

    private static (TieTravel Value, QuantityRefusal? Refusal) ReadTie(string text)
    {
        var from = text.StartsWith(AtLeast, StringComparison.Ordinal) ? AtLeast.Length : 0;
        var read = QuantityText.Parse<Length>(text[from..]);
        return (new TieTravel(read.Amount, from > 0), read.Refusal is { } refusal ? refusal with { Start = from + refusal.Start } : null);
    }

    private static TiePass? MakePass(Fields f)
    {
        var readings = Places.Where(p => f.Has(p.Key)).Select(p => (p.Key, Reading: Reading(f, p.Place, p.Key))).ToList();
        if (readings.Count == 0)
        {
            f.Refuse("has no tie.", "Give front and rear, or each wheel: front-left, front-right, rear-left, rear-right.");
            return null;
        }

        return readings.Any(r => r.Reading is null)
            ? null
            : new TiePass { Speed = f.Required(Speed), Readings = [.. readings.Select(r => r.Reading!)] };
    }

    // The record refuses a travel that no rod has; the reader says where it stands.
    private static TieReading? Reading(Fields f, TiePlace place, Key<TieTravel> key)
    {
        var tie = f.Required(key);
        try
        {
            return new TieReading { Place = place, Travel = tie.Travel, IsAtLeast = tie.IsAtLeast };
        }
        catch (RefusedValueException refused)
        {
            f.Refuse(key, ValueLimit.Of(refused), refused.Advice);
            return null;
        }
    }

    private static Key<Travels> Moves(string end) => Key.Optional(
        $"{end}-damper-moves",
        $"Where the car file gives the {end} a damping ratio: travel of its damper for a travel of the wheel.",
        Kind.Phrase(Travels.Words, Travels.Pattern, Travels.Parse),
        "39 mm for 50 mm at the wheel");

    private static MotionRatio? Ratio(Travels? moves) => moves is null ? null : MotionRatio.FromTravels(moves.Element, moves.Wheel);

    private static IEnumerable<T> Both<T>(T? front, T? rear, Func<T, AxleEnd, T> at)
        where T : class
    {
        if (front is not null)
        {
            yield return at(front, AxleEnd.Front);
        }

        if (rear is not null)
        {
            yield return at(rear, AxleEnd.Rear);
        }
    }
}
