using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Studies;

namespace Heaveline.Files.Choosing;

/// <summary>The words for a study: what is to be chosen, for which car, of which parts, within which limits.</summary>
internal static class StudyWords
{
    // As many as a command takes.
    private const int FewestDraws = 10;
    private const int MostDraws = 10_000;

    /// <summary>Name.</summary>
    public static readonly Key<string> Name = Key.Required("study", "What the study is called.", Kind.Text(), "Fern, four up, autumn");

    /// <summary>The car.</summary>
    public static readonly Key<string> Car = Key.Required(
        "car", "The car file or variant, relative to this file.", Kind.Text(), "fern-saloon.yaml");

    /// <summary>The lists of parts.</summary>
    public static readonly Key<IReadOnlyList<string>> Parts = Key.Optional(
        "parts",
        "Lists of parts, relative to this file: .yaml, and .csv for sheets of springs. Needed where a place has no free range.",
        Kind.List(Kind.Text()),
        "[village-autumn.yaml]");

    /// <summary>The open places.</summary>
    public static readonly Key<IReadOnlyList<ChooseFilter>> Open = Key.Optional(
        "open",
        "The places whose part may change, and what may go there; springs, dampers and bars of whatever fits when left out.",
        new Shape(
            "open places",
            "Each place whose part may change, with what may go there: any, at most a price of one piece, names of parts with commas between, or a "
                + "free range: 16 to 24 N/mm in steps of 2 %, and of dampers 60 to 140 % in steps of 5 % of the present ones.",
            [.. PartPlaces.All.Select(PlaceKey)]).As(Filters),
        "{front-spring: at most 120, rear-damper: any}");

    /// <summary>The places that stay.</summary>
    public static readonly Key<IReadOnlyList<PartPlace>> Keep = Key.Optional(
        "keep",
        "Places that stay as they are, of those that are open when nothing is said.",
        Kind.List(Kind.Choice([.. PartPlaces.All.Select(place => (place.Name(), place))])),
        "[front bar, rear bar]");

    /// <summary>What is driven over.</summary>
    public static readonly Key<IReadOnlyList<ChooseUseLine>> Use = Key.Optional(
        "use",
        $"What is driven over, and how; when left out: {string.Join("; ", ChooseStudy.UsualUse)}.",
        Kind.List(StudyUseWords.Shape),
        "[{road: village-hump, speeds: [25 km/h, 40 km/h]}, {class: C, speeds: [80 km/h]}]");

    /// <summary>The loads.</summary>
    public static readonly Key<IReadOnlyList<string>> Loads = Key.Optional(
        "loads",
        "Loads that count, by their names in the car file; every load of it when left out. The others are looked at all the same.",
        Kind.List(Kind.Text()),
        "[driver, four up with luggage]");

    /// <summary>The wishes.</summary>
    public static readonly Key<IReadOnlyList<string>> Wishes = Key.Optional(
        "wishes",
        "Numbers that are wished small, compared with the car as it is; settling is always the first. When left out: settling, "
            + "hit, ride, money and parts changed, as far as they can be told.",
        Kind.List(Kind.Choice([.. ChooseWishes.Words.Select(word => (word, word))])),
        "[settling, hit, money]");

    /// <summary>The limits.</summary>
    public static readonly Key<IReadOnlyList<string>> Limits = Key.Optional(
        "limits",
        $"Other limits than usual, of {string.Join(", ", ChooseLimitReader.Names)}: what may grow by how much, or how much must be left, and in what "
            + "share of the drawn cars.",
        Kind.List(Kind.Phrase(
            $"a limit, such as {ChooseLimitReader.Example}",
            ChooseLimitReader.Pattern,
            text => (text.Trim(), ChooseLimitReader.Refusal(text.Trim())))),
        "[\"hit at most 5 % more, in 19 of 20 cars\", \"bump travel left at least 40 mm front, 30 mm rear\", roll at most as now]");

    /// <summary>The budget.</summary>
    public static readonly Key<Money> Budget = Key.Optional(
        "budget",
        "What it may cost, in the currency of the lists; no limit when left out.",
        Kind.Phrase("an amount of money such as 600 EUR", @"^\s*[0-9]+(\.[0-9]+)?( \S{1,8})?\s*$", ChooseBudget.Read),
        "600 EUR");

    /// <summary>The draws.</summary>
    public static readonly Key<int> Draws = Key.Optional(
        "draws",
        "In how many cars drawn within the stated doubts the best are driven; 200 when left out.",
        Kind.Count(FewestDraws, MostDraws),
        "200");

    /// <summary>The seed.</summary>
    public static readonly Key<int> Seed = Key.Optional(
        "seed", "Another seed, other draws; 1 when left out.", Kind.Count(0, int.MaxValue), "1");

    /// <summary>Note.</summary>
    public static readonly Key<string> Note = Key.Optional("note", "What is asked, and why.", Kind.Lines(), "She nods on after humps, four up.");

    /// <summary>The whole file.</summary>
    public static readonly Shape<ChooseSheet> Shape = new Shape(
        "study",
        "A choice of parts that is asked again and again: every line has a default but its name, the car and the lists.",
        Name, Note, Car, Parts, Open, Keep, Use, Loads, Wishes, Limits, Budget, Draws, Seed)
        .As(Make);

    /// <summary>Whether a document is a study.</summary>
    public static bool IsStudy(Node root) => root.At(Name.Name) is not null;

    /// <summary>The key of a place, as keys are written.</summary>
    public static string KeyOf(PartPlace place) => place.Name().Replace(' ', '-');

    /// <summary>What a sound document says, in the words of the options.</summary>
    public static IEnumerable<ChooseLine> Lines(Node root) =>
    [
        .. Of("car", root.At(Car.Name)), .. Each("parts", root.At(Parts.Name)),
        .. Opened(root.At(Open.Name)).Select(one => LineOf(
            "open", one.Words, one.Words.Text.Trim() == "any" ? one.Place.Name() : $"{one.Place.Name()}: {one.Words.Text.Trim()}")),
        .. Each("keep", root.At(Keep.Name)),
        .. (root.At(Use.Name)?.Items ?? []).Select(use => LineOf("use", First(use), StudyUseWords.LineOf(use).ToString())),
        .. Each("load", root.At(Loads.Name)), .. Each("wish", root.At(Wishes.Name)), .. Each("with", root.At(Limits.Name)),
        .. Of("budget", root.At(Budget.Name)), .. Of("draws", root.At(Draws.Name)), .. Of("seed", root.At(Seed.Name)),
    ];

    private static Key PlaceKey(PartPlace place) => Key.Optional(
        KeyOf(place),
        $"What may go to the {place.Name()}.",
        Kind.Phrase("any, at most a price, names of parts, or a range", @"\S", words => ChooseFilter.Read(place, words)),
        place.Sort() == PartSort.Damper ? "Finch F1, Wren W3" : place.Sort() == PartSort.Spring ? ChooseFilter.Example : "any");

    private static IReadOnlyList<ChooseFilter>? Filters(Fields f)
    {
        if (f.Node.Entries.Count > 0)
        {
            return [.. Opened(f.Node).Select(one => ChooseFilter.Read(one.Place, one.Words.Text).Value)];
        }

        f.Refuse("names no place.", $"Name one, such as {KeyOf(PartPlace.FrontSpring)}: any, or leave it out.");
        return null;
    }

    private static IEnumerable<(PartPlace Place, Node Words)> Opened(Node? open) =>
        from place in PartPlaces.All
        let words = open?.At(KeyOf(place))
        where words is not null
        select (place, words);

    private static ChooseSheet? Make(Fields f)
    {
        if (Opened(f.Node.At(Open.Name)).FirstOrDefault(one => (f.Optional(Keep) ?? []).Contains(one.Place)) is { Words: not null } both)
        {
            f.Refuse(Keep, $"names the {both.Place.Name()}, which is open too.", "Leave out one of the two.");
            return null;
        }

        return new ChooseSheet
        {
            Name = f.Required(Name),
            Note = f.Optional(Note) ?? "",
            File = "",
            // Of a sound document alone, which this may not be.
            Lines = [],
        };
    }

    private static IEnumerable<ChooseLine> Of(string choice, Node? node) => node is null ? [] : [LineOf(choice, node, node.Text.Trim())];

    private static IEnumerable<ChooseLine> Each(string choice, Node? list) => (list?.Items ?? []).SelectMany(item => Of(choice, item));

    // A group has its place where its first key's value stands.
    private static Node First(Node use) => use.Entries is [var first, ..] ? first.Value : use;

    private static ChooseLine LineOf(string choice, Node node, string words) =>
        new(choice, words, node.Place.Line, node.Place.Column, node.Place.Length);
}
