using Heaveline.Files.Garages;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Garages;

/// <summary>
/// What a reader looks for in a garage: words that must all be found in what a thing is called, what it is, its note or its file's name.
/// Capital and small letters are the same.
/// </summary>
/// <param name="words">The words with blanks between them; none finds everything.</param>
/// <param name="numbers">The cars that keep the numbers asked for; null where none are.</param>
internal sealed class GarageSearch(string words, NumbersFound? numbers = null)
{
    private readonly string[] parts = (numbers?.Words ?? words).Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    /// <summary>Whether nothing is looked for.</summary>
    public bool IsEmpty => parts.Length == 0 && numbers is null;

    /// <summary>What is wrong with a number as it is asked for; empty for nothing.</summary>
    public string Problem => numbers?.Problem ?? "";

    /// <summary>What a kind is called.</summary>
    public static string KindWords(GarageKind kind) => GarageKindWords.Of(kind);

    /// <summary>Whether something is found.</summary>
    /// <param name="entry">Its line.</param>
    /// <param name="of">The car that a variant is of; null for others.</param>
    public bool Finds(GarageEntry entry, GarageEntry? of = null)
    {
        string[] texts = [entry.Title, KindWords(entry.Kind), entry.Note, entry.Name, of?.Title ?? ""];
        // While a number is not whole yet everything that its words find stays.
        return (Problem.Length > 0 || numbers?.Files.ContainsKey(entry.Name) != false)
            && parts.All(part => texts.Any(text => text.Contains(part, StringComparison.OrdinalIgnoreCase)));
    }

    /// <summary>
    /// Why it is found: the numbers asked for, and its note where a word was found in it; empty where what is shown says it.
    /// </summary>
    /// <param name="entry">Its line.</param>
    public string NoteOf(GarageEntry entry)
    {
        var note = parts.Any(part => entry.Note.Contains(part, StringComparison.OrdinalIgnoreCase)) ? entry.Note : "";
        return string.Join(". ", new[] { numbers?.Files.GetValueOrDefault(entry.Name) ?? "", note }.Where(said => said.Length > 0));
    }

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
        if (IsEmpty || Problem.Length > 0)
        {
            return Problem;
        }

        var all = listing.Entries.Count(entry => entry.Kind != GarageKind.Choices);
        var found = families.SelectMany(family => family.Variants.Where(variant => Finds(variant, family.Car)).Append(family.Car))
            .Where(entry => entry.Kind == GarageKind.Variant || Finds(entry))
            .Concat(listing.Entries.Where(
                entry => entry.Kind is not (GarageKind.Car or GarageKind.Variant or GarageKind.Choices) && Finds(entry)))
            .DistinctBy(entry => (entry.Kind, entry.Name)).ToList();
        return found.Count == 0
            ? "Nothing is found. Names, kinds (car, variant, road, drive, cable ties, list of parts), notes and file names are looked through"
                + (numbers is null ? "; a number of a standing car is asked for as “ratio at most 1”, with commas between several." : ".")
            : $"{found.Count} of {all} found: " + string.Join(", ", found.GroupBy(entry => entry.Kind).OrderBy(kind => kind.Key)
                .Select(kind => $"{kind.Count()} {Several(KindWords(kind.Key), kind.Count())}")) + "."
                + (numbers is { Remark.Length: > 0 } kept ? $" {kept.Remark}" : "");
    }

    private static string Several(string words, int count) => count == 1 ? words : GarageKindWords.Several(words);
}
