namespace Heaveline.Files.Yaml;

/// <summary>A value of a YAML document with its place and its path in plain words.</summary>
public sealed class Node
{
    internal Node(NodeKind kind, string path, Place place)
    {
        Kind = kind;
        Path = path;
        Place = place;
    }

    /// <summary>A key without a value, written ~: in a variant, a key that is taken out.</summary>
    public static Node Nothing { get; } = new(NodeKind.Scalar, "", Files.Place.Start) { IsPlain = true };

    /// <summary>What it is.</summary>
    public NodeKind Kind { get; }

    /// <summary>The keys that lead here, in plain words ("front spring rate", "loads item 2 mass"); empty for the whole document.</summary>
    public string Path { get; }

    /// <summary>Where it stands: a scalar's own text; for a group or a list the key that it belongs to, or its first line when it has none.</summary>
    public Place Place { get; }

    /// <summary>A scalar's text; empty for others.</summary>
    public string Text { get; internal init; } = "";

    /// <summary>Whether a scalar is written without quotes on it.</summary>
    public bool IsPlain { get; internal init; }

    /// <summary>Whether a key stands here without a value: nothing, ~ or null.</summary>
    public bool IsEmpty => Kind == NodeKind.Scalar && IsPlain && (Text is "" or "~" or "null" or "Null" or "NULL");

    /// <summary>A group's keys and values, in the order of the text.</summary>
    public IReadOnlyList<Entry> Entries { get; internal set; } = [];

    /// <summary>A list's items.</summary>
    public IReadOnlyList<Node> Items { get; internal set; } = [];

    /// <summary>
    /// Column of the first character of <see cref="Text"/> when the text stands on one line as it is; 0 when it is folded or escaped.
    /// </summary>
    internal int TextColumn { get; init; }

    /// <summary>The path for a message: the path, or "the file" for the whole document.</summary>
    public string Subject => Path.Length == 0 ? "the file" : Path;

    /// <summary>A part of a scalar's text as a place; the whole scalar when its text is folded or escaped.</summary>
    public Place PlaceOf(int start, int length) => TextColumn > 0 ? Place with { Column = TextColumn + start, Length = Math.Max(1, length) } : Place;

    /// <summary>The same value with its places in a named file, and the first words of its path taken off.</summary>
    internal Node In(string file, string without)
    {
        var path = Path.StartsWith(without, StringComparison.Ordinal) ? Path[without.Length..].TrimStart() : Path;
        return new Node(Kind, path, Place with { File = file })
        {
            Text = Text,
            IsPlain = IsPlain,
            TextColumn = TextColumn,
            Entries = [.. Entries.Select(entry => new Entry(entry.Key, entry.KeyPlace with { File = file }, entry.Value.In(file, without)))],
            Items = [.. Items.Select(item => item.In(file, without))],
        };
    }

    /// <summary>A text, number or word that stands in no file yet.</summary>
    public static Node Scalar(string text) => new(NodeKind.Scalar, "", Files.Place.Start) { Text = text };

    /// <summary>A group that stands in no file yet, its keys in this order.</summary>
    public static Node Group(params IEnumerable<KeyValuePair<string, Node>> entries) =>
        new(NodeKind.Mapping, "", Files.Place.Start) { Entries = [.. entries.Select(entry => new Entry(entry.Key, Files.Place.Start, entry.Value))] };

    /// <summary>A list that stands in no file yet.</summary>
    public static Node List(params IEnumerable<Node> items) => new(NodeKind.Sequence, "", Files.Place.Start) { Items = [.. items] };

    /// <summary>Whether another value says the same: the same texts under the same keys. Places and quotes are not looked at.</summary>
    /// <param name="other">The other value.</param>
    /// <param name="inOrder">Whether the keys of groups must stand in the same order too. Items of lists always must.</param>
    public bool IsSameAs(Node other, bool inOrder = false) =>
        Kind == other.Kind && IsEmpty == other.IsEmpty && (IsEmpty || Text == other.Text)
        && Items.Count == other.Items.Count && Items.Zip(other.Items).All(pair => pair.First.IsSameAs(pair.Second, inOrder))
        && Entries.Count == other.Entries.Count
        && (inOrder
            ? Entries.Zip(other.Entries).All(pair => pair.First.Key == pair.Second.Key && pair.First.Value.IsSameAs(pair.Second.Value, inOrder))
            : Entries.All(entry => other.At(entry.Key) is { } value && entry.Value.IsSameAs(value)));

    /// <summary>The value under some keys; null when one of them is missing.</summary>
    public Node? At(params ReadOnlySpan<string> keys)
    {
        var node = this;
        foreach (var key in keys)
        {
            var name = key;
            node = node?.Entries.FirstOrDefault(entry => entry.Key == name)?.Value;
        }

        return node;
    }
}
