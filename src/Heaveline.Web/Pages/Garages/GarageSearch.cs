using Heaveline.Files.Garages;

namespace Heaveline.Web.Pages.Garages;

/// <summary>
/// What a reader looks for in a garage: words that must all be found in what a thing is called, what it is, its note or its file's name.
/// Capital and small letters are the same.
/// </summary>
/// <param name="words">The words with blanks between them; none finds everything.</param>
internal sealed class GarageSearch(string words)
{
    private readonly string[] parts = words.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Whether nothing is looked for.</summary>
    public bool IsEmpty => parts.Length == 0;

    /// <summary>What a kind is called.</summary>
    public static string KindWords(GarageKind kind) => GarageKindWords.Of(kind);

    /// <summary>Whether something is found.</summary>
    /// <param name="entry">Its line.</param>
    /// <param name="of">The car that a variant is of; null for others.</param>
    public bool Finds(GarageEntry entry, GarageEntry? of = null)
    {
        string[] texts = [entry.Title, KindWords(entry.Kind), entry.Note, entry.Name, of?.Title ?? ""];
        return parts.All(part => texts.Any(text => text.Contains(part, StringComparison.OrdinalIgnoreCase)));
    }

    /// <summary>The note of what is found, where a word was found in it: it says why; empty otherwise.</summary>
    /// <param name="entry">Its line.</param>
    public string NoteOf(GarageEntry entry) =>
        parts.Any(part => entry.Note.Contains(part, StringComparison.OrdinalIgnoreCase)) ? entry.Note : "";

    /// <summary>The families in which something is found, each with its car and the variants that are.</summary>
    /// <param name="families">All families.</param>
    public IReadOnlyList<CarFamily> In(IReadOnlyList<CarFamily> families) => IsEmpty
        ? families
        : [.. families.Select(family => family with { Variants = [.. family.Variants.Where(variant => Finds(variant, family.Car))] })
            .Where(family => family.Variants.Count > 0 || Finds(family.Car))];

    /// <summary>The list with what is found alone.</summary>
    /// <param name="listing">The whole list.</param>
    public GarageListing In(GarageListing listing) =>
        IsEmpty ? listing : listing with { Entries = [.. listing.Entries.Where(entry => entry.Kind != GarageKind.Choices && Finds(entry))] };

    /// <summary>How many are found, in words: "3 of 14 found: 1 car, 2 variants."; empty where nothing is looked for.</summary>
    /// <param name="listing">The whole list.</param>
    /// <param name="families">All families.</param>
    public string Count(GarageListing listing, IReadOnlyList<CarFamily> families)
    {
        if (IsEmpty)
        {
            return "";
        }

        var all = listing.Entries.Count(entry => entry.Kind != GarageKind.Choices);
        var found = families.SelectMany(family => family.Variants.Where(variant => Finds(variant, family.Car)).Append(family.Car))
            .Where(entry => entry.Kind == GarageKind.Variant || Finds(entry))
            .Concat(listing.Entries.Where(
                entry => entry.Kind is not (GarageKind.Car or GarageKind.Variant or GarageKind.Choices) && Finds(entry)))
            .DistinctBy(entry => (entry.Kind, entry.Name)).ToList();
        return found.Count == 0
            ? "Nothing is found. Names, kinds (car, variant, road, drive, cable ties, list of parts), notes and file names are looked through."
            : $"{found.Count} of {all} found: " + string.Join(", ", found.GroupBy(entry => entry.Kind).OrderBy(kind => kind.Key)
                .Select(kind => $"{kind.Count()} {Several(KindWords(kind.Key), kind.Count())}")) + ".";
    }

    private static string Several(string words, int count) => count == 1 ? words : GarageKindWords.Several(words);
}
