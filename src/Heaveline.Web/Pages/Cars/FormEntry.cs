using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;

namespace Heaveline.Web.Pages.Cars;

/// <summary>A value of the form: what is known of its key, where it stands, and what is said about it.</summary>
public sealed record FormEntry
{
    /// <summary>What is known of the key.</summary>
    public required FormField Field { get; init; }

    /// <summary>The keys that lead to the value, names and item numbers filled in.</summary>
    public required IReadOnlyList<string> Path { get; init; }

    /// <summary>The value.</summary>
    public required Node Node { get; init; }

    /// <summary>The values of a group, a list or a set of names that are there.</summary>
    public IReadOnlyList<FormEntry> Entries { get; init; } = [];

    /// <summary>Keys of a group that may still be added.</summary>
    public IReadOnlyList<FormField> Absent { get; init; } = [];

    /// <summary>What is refused of this very value, or looks like a slip in it.</summary>
    public IReadOnlyList<Remark> Remarks { get; init; } = [];

    /// <summary>Whether the variant that is shown changes it.</summary>
    public bool IsChanged { get; init; }

    /// <summary>The value of the file that the variant changes; null when it has none or nothing is changed.</summary>
    public Node? Before { get; init; }

    /// <summary>Where the value is from when nobody has measured it on this car, in words; null when it is its own.</summary>
    public string? From { get; init; }

    /// <summary>Whether the value is of another kind than the key wants, so that only the text can be put right.</summary>
    public bool IsMisshapen => Node.Kind != (Field.Kind switch
    {
        FieldKind.Group or FieldKind.Names => NodeKind.Mapping,
        FieldKind.List or FieldKind.Table => NodeKind.Sequence,
        _ => NodeKind.Scalar,
    });

    /// <summary>The name shown: the key in words, the name that the user chose, or an item's number with what it is.</summary>
    public string Label =>
        Field.Name != FormField.Any ? Field.Label : Node.At("what") is { Text.Length: > 0 } what ? $"{Path[^1]}: {what.Text}" : Path[^1];

    /// <summary>The name with those of the groups around it, for those who hear one field at a time.</summary>
    public string FullLabel => string.Join(' ', Path.Select(part => part.Replace('-', ' ')));

    /// <summary>The element's id on the page.</summary>
    public string Id => IdOf(Path);

    /// <summary>Path as one word of the address.</summary>
    public string Key => string.Join('/', Path);

    /// <summary>This value and all below it.</summary>
    public IEnumerable<FormEntry> All => Entries.SelectMany(entry => entry.All).Prepend(this);

    /// <summary>How many values from here on are refused.</summary>
    public int Refusals => All.Sum(entry => entry.Remarks.Count(remark => remark.IsRefusal));

    /// <summary>How many values from here on look like a slip.</summary>
    public int Slips => All.Sum(entry => entry.Remarks.Count(remark => !remark.IsRefusal));

    /// <summary>How many values from here on the variant changes.</summary>
    public int Changes => All.Count(entry => entry.IsChanged && entry.Entries.Count == 0);

    /// <summary>How many values from here on were not measured on this car.</summary>
    public int Unmeasured => All.Count(entry => entry.From is not null);

    /// <summary>What a closed group holds, in one line.</summary>
    public string Gist
    {
        get
        {
            var parts = Entries.Select(entry => entry.Field.Kind switch
            {
                FieldKind.Table => $"{entry.Label}, {entry.Node.Items.Count} rows",
                FieldKind.Group or FieldKind.List or FieldKind.Names => entry.Label,
                FieldKind.Text => "",
                _ => $"{entry.Label} {entry.Node.Text}",
            }).Where(part => part.Length > 0).ToList();
            return string.Join(", ", parts.Take(MostInGist)) + (parts.Count > MostInGist ? " …" : "");
        }
    }

    private const int MostInGist = 4;

    /// <summary>The id of a path: letters, digits and lines, each other character by its number.</summary>
    public static string IdOf(IReadOnlyList<string> path) =>
        "f-" + string.Join(
            "--", path.Select(part => string.Concat(part.Select(c => char.IsAsciiLetterOrDigit(c) || c == '-' ? c.ToString() : $"_{(int)c}"))));
}
