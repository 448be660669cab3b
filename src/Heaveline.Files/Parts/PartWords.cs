using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Files.Parts;

/// <summary>The words that every part has.</summary>
internal static class PartWords
{
    private const NumberStyles Plain = NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;

    // So much is no price of a car's part in any currency, and whole sums of it stay exact.
    private const decimal Dearest = 1e9m;

    // Less would be printed as nothing.
    private const decimal Cheapest = 0.01m;

    private const int LongestCurrency = 8;

    /// <summary>Name.</summary>
    public static readonly Key<string> Name = Key.Required(
        "part", "What the seller calls it; each name once in a list.", Kind.Text(), "Larch L-207", property: "Name");

    /// <summary>Price of one.</summary>
    public static readonly Key<Money> Price = Key.Optional(
        "price",
        "Price of one, a plain number in the currency of the list; 0 for what is there already. Two are counted where two are fitted.",
        Kind.Phrase("a price, a plain number such as 84 or 84.50", @"^\s*[0-9]+(\.[0-9]+)?\s*$", ReadPrice),
        "84");

    /// <summary>Where to get it.</summary>
    public static readonly Key<string> Stock = Key.Optional("stock", "Where and how soon it can be had.", Kind.Text(), "4 days");

    /// <summary>Maker.</summary>
    public static readonly Key<string> Maker = Key.Optional("maker", "Who makes it.", Kind.Text(), "Larch");

    /// <summary>Which axle.</summary>
    public static readonly Key<AxleEnd> Fits = Key.Optional(
        "fits",
        "The one axle that it fits; either, or both, when left out.",
        Kind.Choice(("front", AxleEnd.Front), ("rear", AxleEnd.Rear)),
        "front",
        property: "Only");

    /// <summary>How many.</summary>
    public static readonly Key<int> Pieces = Key.Optional(
        "pieces", "How many are bought for one axle, or for the car's link; when left out two, and one bar and one link.", Kind.Count(1, 16), "2");

    /// <summary>How long it takes to fit.</summary>
    public static readonly Key<Amount<Time>> Labour = Key.Optional(
        "labour",
        "How long it takes to fit at one place, all its pieces; counted as money where the list gives the price of an hour.",
        Kind.Amount<Time>("h"),
        "1.5 h")
        .Usually("0 h", "20 h");

    /// <summary>All of them, for a part that has two ends to go to.</summary>
    public static Key[] All { get; } = [Name, Price, Stock, Maker, Fits, Pieces, Labour];

    /// <summary>The part with what all parts have.</summary>
    /// <param name="part">What it is, under any name.</param>
    /// <param name="f">The group.</param>
    public static T With<T>(T part, Fields f)
        where T : Part => part with
        {
            Name = f.Required(Name),
            Price = f.OptionalValue(Price),
            Stock = f.Optional(Stock),
            Maker = f.Optional(Maker),
            Only = part is LinkPart ? null : f.OptionalValue(Fits),
            Pieces = f.OptionalValue(Pieces),
            Labour = f.OptionalValue(Labour),
            Written = Written(f.Node),
        };

    /// <summary>How the numbers of a part are written.</summary>
    /// <param name="part">The part in its list.</param>
    public static WrittenNumbers Written(Node part) => new([.. Scalars(part)]);

    private static IEnumerable<(string Key, string Words)> Scalars(Node group) => group.Entries
        .SelectMany(entry => entry.Value.Kind == NodeKind.Scalar ? [(entry.Key, entry.Value.Text)] : Scalars(entry.Value))
        .Concat(group.Items.SelectMany(Scalars));

    /// <summary>Reads a price.</summary>
    public static (Money Value, QuantityRefusal? Refusal) ReadPrice(string text)
    {
        var price = 0m;
        var must = !text.Trim().All(c => char.IsAsciiDigit(c) || c == '.') || !double.TryParse(text, Plain, CultureInfo.InvariantCulture, out _)
            ? "a plain number"
            : !decimal.TryParse(text, Plain, CultureInfo.InvariantCulture, out price) || price > Dearest
                ? string.Create(CultureInfo.InvariantCulture, $"at most {Dearest:0}")
            : price is > 0m and < Cheapest ? string.Create(CultureInfo.InvariantCulture, $"0, or at least {Cheapest}, the least that is printed")
            : null;
        return must is null
            ? (new Money(price, ""), null)
            : (default, new QuantityRefusal(
                0,
                Math.Max(1, text.Length),
                $"\"{(text.Length > 40 ? text[..40] + "…" : text)}\" is no price; it must be {must}.",
                "Write a plain number with a decimal point, 0 or above; the currency stands once, at the list."));
    }

    /// <summary>Reads a currency.</summary>
    public static (string Value, QuantityRefusal? Refusal) ReadCurrency(string text) =>
        text.Trim() is { Length: > 0 and <= LongestCurrency } currency && !currency.Any(c => char.IsWhiteSpace(c) || ControlCharacter.Is(c))
            ? (currency, null)
            : ("", new QuantityRefusal(
                0,
                Math.Max(1, text.Length),
                $"\"{ControlCharacter.Spelled(text.Length > 40 ? text[..40] + "…" : text)}\" is no currency; it must be at most "
                    + FormattableString.Invariant($"{LongestCurrency} letters or signs."),
                "Write it as short as EUR or €."));
}
