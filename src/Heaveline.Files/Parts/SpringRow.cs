using Heaveline.Files.Roads;
using Heaveline.Files.Yaml;
using Heaveline.Parts;

namespace Heaveline.Files.Parts;

/// <summary>
/// A row of a sheet of springs: read as the same spring in a list is, by the same words, and every cell that is wrong refused at its place.
/// </summary>
internal sealed class SpringRow(SourceText source, IReadOnlyList<Cell> cells, SpringColumn[] columns, List<Refusal> refusals)
{
    // Stand for cells that are empty and were refused for it, so that the others are read all the same.
    private static readonly (string Key, string Instead)[] Needed = [("part", "–"), ("rate", "1 N/mm")];

    private CoilPart? part;

    /// <summary>The spring; there once it was read.</summary>
    public CoilPart Part => part ?? throw new InvalidOperationException("The row was not read.");

    /// <summary>What is unusual in it.</summary>
    public IReadOnlyList<Warning> Warnings { get; private set; } = [];

    /// <summary>The cell of a key; the first one where there is none.</summary>
    public Cell At(SpringColumn[] of, string key) => cells[Math.Max(0, Array.FindIndex(of, column => column.Key == key))];

    /// <summary>The spring; null where a cell was refused.</summary>
    public CoilPart? Read()
    {
        var before = refusals.Count;
        if (Text("part") is null)
        {
            Refuse("part", "is empty; it must be a name.", "Give each spring the name that the seller calls it by.");
        }

        if (Text("rate") is null)
        {
            Refuse("rate", "is empty; it must be a rate.", "Take the row out where nobody knows it.");
        }

        // A list leaves out what a sheet, which has a cell for it, calls both.
        if (Text("fits") is not (null or "front" or "rear" or "both"))
        {
            Refuse("fits", $"is {At(columns, "fits").Shown}; it must be front, rear or both.", "Leave it empty where it fits either.");
        }

        var reader = new Reader(source);
        var read = CoilPartWords.Shape.TryRead(Listed(), reader, out var spring);
        foreach (var refusal in reader.Refusals)
        {
            if (columns.Zip(cells).FirstOrDefault(one => one.Second.Column == refusal.Column).First is { } column)
            {
                Refuse(column.Key, Said(column, refusal.Message), refusal.Advice);
            }
            else
            {
                refusals.Add(refusal);
            }
        }

        if (!read || refusals.Count > before)
        {
            return null;
        }

        Warnings = reader.Warnings;
        return part = spring! with { Price = spring.Price is { } price ? price with { Currency = Currency } : null };
    }

    private string Currency => columns.FirstOrDefault(column => column.Key == PartWords.Price.Name)?.Unit ?? "";

    // The row as the same spring stands in a list, each value at the place of its cell.
    private Node Listed()
    {
        var name = Text("part") ?? "–";
        var entries = columns.Zip(cells).Where(one => one.Second.Text.Length > 0 && (one.First.Key, one.Second.Text) != ("fits", "both"))
            .Where(one => one.First.Key != "fits" || one.Second.Text is "front" or "rear")
            .Select(one => Entry(
                name, one.First.Key, Whole(one.First, one.Second), new Place(one.Second.Line, one.Second.Column, one.Second.Text.Length)))
            .Concat(Needed.Where(one => Text(one.Key) is null).Select(one =>
                Entry(name, one.Key, one.Instead, new Place(cells[0].Line, cells[0].Column, 1))));
        return new Node(NodeKind.Mapping, name, new Place(cells[0].Line, cells[0].Column, Math.Max(1, cells[0].Text.Length)))
        {
            Entries = [.. entries],
        };
    }

    private static Entry Entry(string name, string key, string text, Place place) =>
        new(key, place, new Node(NodeKind.Scalar, $"{name} {key}", place) { Text = text });

    private static string Whole(SpringColumn column, Cell cell) => column.Key == PartWords.Price.Name ? cell.Text : column.Whole(cell.Text);

    // A list speaks of the value with its unit; the sheet has it as it stands in the cell.
    private string Said(SpringColumn column, string message)
    {
        var shown = At(columns, column.Key).Shown;
        var colon = $"{Text("part") ?? "–"} {column.Key}: ";
        var must = message.IndexOf(';', StringComparison.Ordinal);
        if (must < 0 || (message.StartsWith(colon, StringComparison.Ordinal) && column.Key is not "price"))
        {
            return $"is {shown}: {(message.StartsWith(colon, StringComparison.Ordinal) ? message[colon.Length..] : message)}";
        }

        // A limit in the unit of the heading, which the cell leaves out.
        var tail = Whole(column, At(columns, column.Key)) == At(columns, column.Key).Text
            ? message[must..]
            : message[must..].Replace($" {column.Unit}.", ".", StringComparison.Ordinal);
        foreach (var (other, cell) in columns.Zip(cells).Where(one => one.Second.Text.Length > 0))
        {
            tail = tail.Replace($", {Whole(other, cell)}.", $", {cell.Shown}.", StringComparison.Ordinal);
        }

        return $"is {shown}{tail}";
    }

    private string? Text(string key) =>
        Array.FindIndex(columns, column => column.Key == key) is var at and >= 0 && cells[at].Text is { Length: > 0 } text
        ? text
        : null;

    private void Refuse(string key, string message, string advice) =>
        refusals.Add(At(columns, key).Refuse(source.File, $"{key} {message}", advice));
}
