using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Files.Parts;

/// <summary>The words for a list of parts.</summary>
internal static class PartsListWords
{
    /// <summary>Name.</summary>
    public static readonly Key<string> Name = Key.Required(
        "parts", "Whose list, of when.", Kind.Text(), "Village motor factors, autumn", property: "Name");

    /// <summary>Currency.</summary>
    public static readonly Key<string> Currency = Key.Optional(
        "currency",
        "Currency of all prices; needed where there is one.",
        Kind.Phrase("a currency of at most 8 letters or signs, such as EUR", @"^\s*\S{1,8}\s*$", PartWords.ReadCurrency),
        "EUR");

    /// <summary>Price of an hour.</summary>
    public static readonly Key<Money> HourlyPrice = Key.Optional(
        "hourly-price",
        "Price of an hour of fitting, a plain number in the currency of the list: with it a part's labour is counted with its price.",
        Kind.Phrase("a price, a plain number such as 84 or 84.50", @"^\s*[0-9]+(\.[0-9]+)?\s*$", PartWords.ReadPrice),
        "60");

    private static readonly Key<string> Note = Key.Optional("note", "Where the numbers come from.", Kind.Lines(), "Rates as the seller gives them.");

    private static readonly Key<IReadOnlyList<CoilPart>> Springs = Key.Optional(
        "springs", "Coil springs.", Kind.List(CoilPartWords.Shape), "[{part: Larch L-207, price: 84, rate: 20.7 N/mm ± 3 %, free-length: 380 mm}]");

    private static readonly Key<IReadOnlyList<DamperPart>> Dampers = Key.Optional(
        "dampers",
        "Dampers.",
        Kind.List(DamperPartWords.Shape),
        "[{part: Finch F1, price: 62, bump: [[0.1 m/s, 115 N]], rebound: [[0.1 m/s, 240 N]], gas-force: 110 N, stroke: 180 mm}]");

    private static readonly Key<IReadOnlyList<BarPart>> Bars = Key.Optional("bars", "Anti-roll bars.", Kind.List(FurtherPartWords.Bar));

    private static readonly Key<IReadOnlyList<StopPart>> Stops = Key.Optional("stops", "Bump stops.", Kind.List(FurtherPartWords.Stop));

    private static readonly Key<IReadOnlyList<TyrePart>> Tyres = Key.Optional("tyres", "Tyres.", Kind.List(FurtherPartWords.Tyre));

    private static readonly Key<IReadOnlyList<LinkPart>> Links = Key.Optional("links", "Interconnections.", Kind.List(FurtherPartWords.Link));

    /// <summary>The keys under which parts stand, in the order of the parts.</summary>
    public static IReadOnlyList<Key> Sorts { get; } = [Springs, Dampers, Bars, Stops, Tyres, Links];

    /// <summary>The whole file.</summary>
    public static readonly Shape<PartsList> Shape = new Shape(
        "list of parts",
        "Parts that can be bought, or that lie in the shed, with their prices.",
        [Name, Currency, HourlyPrice, Note, .. Sorts]).As(Make);

    /// <summary>Whether a document is a list of parts.</summary>
    public static bool IsList(Node root) => root.At(Name.Name) is not null;

    /// <summary>The parts of a document with where each stands, in the order of <see cref="Sorts"/>.</summary>
    public static IEnumerable<Node> Places(Node root) => Sorts.SelectMany(key => root.At(key.Name)?.Items ?? []);

    /// <summary>Refuses parts whose name stands in the list already.</summary>
    public static void RefuseTwice(Node root, Reader reader)
    {
        var seen = new Dictionary<string, Place>(StringComparer.Ordinal);
        foreach (var name in Places(root).Select(part => part.At(PartWords.Name.Name)).OfType<Node>().Where(node => node.Kind == NodeKind.Scalar))
        {
            if (!seen.TryAdd(name.Text, name.Place))
            {
                reader.Refuse(
                    name.Place,
                    FormattableString.Invariant($"{name.Text} stands in the list already, in line {seen[name.Text].Line}; each must stand once."),
                    "Take one out, or tell them apart.");
            }
        }
    }

    private static PartsList? Make(Fields f)
    {
        Part[] parts =
        [
            .. f.Optional(Springs) ?? [], .. f.Optional(Dampers) ?? [], .. f.Optional(Bars) ?? [], .. f.Optional(Stops) ?? [],
            .. f.Optional(Tyres) ?? [], .. f.Optional(Links) ?? [],
        ];
        if (parts.Length == 0)
        {
            f.Refuse("has no part.", "Add springs, dampers, bars, stops, tyres or links.");
            return null;
        }

        var (currency, hour) = (f.Optional(Currency), f.OptionalValue(HourlyPrice));
        if (currency is null && (hour is { IsNone: false } || parts.Any(part => part.Price is { IsNone: false })))
        {
            f.Refuse("gives prices in no currency.", $"Add {Currency.Name}: {Currency.Example}.");
            return null;
        }

        // Of two of one name the second was refused where it stands: see RefuseTwice.
        return parts.Select(part => part.Name).Distinct(StringComparer.Ordinal).Count() < parts.Length ? null : new PartsList
        {
            Name = f.Required(Name),
            Currency = currency ?? "",
            Note = f.Optional(Note) ?? "",
            HourlyPrice = Of(hour),
            Parts = [.. parts.Select(part => part with { Price = Of(part.Price), FittingPrice = Fitting(part) })],
        };

        Money? Of(Money? price) => price is { } known ? known with { Currency = currency ?? "" } : null;

        // To the cent, as it would be billed.
        Money? Fitting(Part part) => part.Labour is { } time && hour is { } each
            ? new Money(decimal.Round((decimal)In.Hours.Of(time.Si) * each.Value, 2), currency ?? "")
            : null;
    }
}
