namespace Heaveline.Files.Forms;

/// <summary>A key of a file as a form needs it, from the same description that reads the file.</summary>
public sealed record FormField
{
    /// <summary>The part of a path that stands for a name of the user's choice or for an item of a list.</summary>
    public const string Any = "*";

    /// <summary>The keys that lead to the value, its own last; <see cref="Any"/> where the user names it or where it is one item of a list.</summary>
    public required IReadOnlyList<string> Path { get; init; }

    /// <summary>The key as written in the file.</summary>
    public string Name => Path[^1];

    /// <summary>The key in words ("centre of gravity height").</summary>
    public string Label => Name.Replace('-', ' ');

    /// <summary>The meaning in one sentence, as the page of the file format has it.</summary>
    public required string Meaning { get; init; }

    /// <summary>How the value is entered.</summary>
    public required FieldKind Kind { get; init; }

    /// <summary>What is wanted, with its article ("a spring rate with its unit").</summary>
    public required string Wanted { get; init; }

    /// <summary>A sound value as written in the file; may be empty.</summary>
    public string Example { get; init; } = "";

    /// <summary>Whether the key may not be left out where its group stands.</summary>
    public bool IsRequired { get; init; }

    /// <summary>The keys of the same group of which exactly one must be given, this one among them; empty when it stands for itself.</summary>
    public IReadOnlyList<string> OneOf { get; init; } = [];

    /// <summary>
    /// The limit in words ("above 0 N/mm", "between 0.5 and 10 m"), as a refusal would say it; null when none is known for the value by itself.
    /// </summary>
    public string? Limit { get; init; }

    /// <summary>The lower limit, SI units; null when there is none.</summary>
    public double? Least { get; init; }

    /// <summary>The upper limit, SI units; null when there is none.</summary>
    public double? Most { get; init; }

    /// <summary>Whether the lower limit itself is refused.</summary>
    public bool IsOpenBelow { get; init; }

    /// <summary>The least that it usually is, SI units; null where nothing is said.</summary>
    public double? UsualLow { get; init; }

    /// <summary>The most that it usually is, SI units; null where nothing is said.</summary>
    public double? UsualHigh { get; init; }

    /// <summary>Dimension, units and their conversion, for quantities and numbers; null for others.</summary>
    public QuantityForm? Quantity { get; init; }

    /// <summary>The words to choose from; empty when the kind is no word.</summary>
    public IReadOnlyList<string> Words { get; init; } = [];

    /// <summary>A regular expression (ECMA 262) that a phrase fits, looser than the reader; null for others.</summary>
    public string? Pattern { get; init; }

    /// <summary>The columns of a table, in order; empty for others.</summary>
    public IReadOnlyList<FormField> Columns { get; init; } = [];

    /// <summary>The keys of a group; empty for others.</summary>
    public IReadOnlyList<FormField> Fields { get; init; } = [];

    /// <summary>What each item of a list is, or the value under each name; null for others.</summary>
    public FormField? Item { get; init; }

    /// <summary>This field and all fields below it, in the order of the documentation.</summary>
    public IEnumerable<FormField> All => Fields.Concat(Item is null ? [] : [Item]).SelectMany(inner => inner.All).Prepend(this);

    /// <summary>The field of a value in a file, its names and item numbers filled in; null when no key is read there.</summary>
    /// <param name="path">Keys from this field on, this one left out.</param>
    public FormField? At(params ReadOnlySpan<string> path)
    {
        var field = this;
        foreach (var part in path)
        {
            var name = part;
            field = field?.Item ?? field?.Fields.FirstOrDefault(inner => inner.Name == name);
        }

        return field;
    }
}
