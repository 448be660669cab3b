using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>What may go to a place: of the parts of the lists those of some names, or those of a price, or whatever fits.</summary>
/// <param name="Place">The place.</param>
public sealed record ChooseFilter(PartPlace Place)
{
    /// <summary>How a filter may be written.</summary>
    public const string Example = "at most 120";

    private const string Any = "any";
    private const string AtMost = "at most ";

    /// <summary>What one piece may cost, in the currency of the lists; null for no limit.</summary>
    public decimal? Most { get; init; }

    /// <summary>The parts that may go there, by their names; empty for all.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>What may go there though nobody sells it, instead of the parts of the lists; null for these.</summary>
    public ChooseRange? Range { get; init; }

    /// <summary>Whether whatever fits may go there.</summary>
    public bool IsAny => Most is null && Names.IsEmpty && Range is null;

    /// <summary>Reads one.</summary>
    /// <param name="place">The place.</param>
    /// <param name="words">"any", "at most 120", names of parts with commas between, or a range.</param>
    public static (ChooseFilter Value, QuantityRefusal? Refusal) Read(PartPlace place, string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var (filter, text) = (new ChooseFilter(place), words.Trim());
        if (text.StartsWith(AtMost, StringComparison.Ordinal))
        {
            return decimal.TryParse(text[AtMost.Length..], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var most)
                ? (filter with { Most = most }, null)
                : (filter, Refused(words, "has no price of one piece: a plain number in the currency of the lists is wanted."));
        }

        if (ChooseRange.IsMeant(text))
        {
            var (range, wrong) = ChooseRange.Read(place, text);
            return (filter with { Range = range }, wrong is null ? null : Refused(words, wrong));
        }

        string[] names = [.. CommaList.Of(text)];
        return names.Any(name => name.Length == 0) ? (filter, Refused(words, "names no part."))
            : (text == Any ? filter : filter with { Names = [.. names] }, null);
    }

    /// <summary>Whether a part may go there.</summary>
    /// <param name="part">A part that goes to the place; where two lists have one of its name, with its list behind it.</param>
    public bool Takes(Part part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return Range is null && (Names.IsEmpty || Names.Any(name => IsCalled(part, name)))
            && (Most is not { } most || part.Price is { } price && price.Value <= most);
    }

    /// <summary>Whether a part has a name, its list behind it or not.</summary>
    internal static bool IsCalled(Part part, string name) => part.Name == name || part.Name.StartsWith($"{name} of '", StringComparison.Ordinal);

    /// <summary>What may go there, in words.</summary>
    /// <param name="currency">The currency of the lists.</param>
    internal string Words(string currency) => Most is { } most
        ? $"{Place.Name()} at most {new Money(most, currency)} a piece"
        : $"{Place.Name()} {SpeedRanges.And([.. Names])} alone";

    private static QuantityRefusal Refused(string words, string why) => new(
        0, Math.Max(1, words.Length), $"\"{words}\" {why}", $"Write {Any}, {Example}, names of parts with commas between, or a range.");
}
