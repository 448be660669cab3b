using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Editing;

/// <summary>One change of a file's text, as a person would make it.</summary>
public sealed record KeyEdit
{
    private KeyEdit(KeyEditKind kind, IReadOnlyList<string> path, Node? value)
    {
        Kind = kind;
        Path = path;
        Value = value;
    }

    /// <summary>What is done.</summary>
    public KeyEditKind Kind { get; }

    /// <summary>
    /// The keys that lead to the value, from the outside in ("front", "spring", "rate"). An item of a list is its number, counted from 1 as the
    /// messages count, or what stands under its key <c>what</c> ("loads", "driver", "1", "mass" or "loads", "driver", "driver", "mass").
    /// </summary>
    public IReadOnlyList<string> Path { get; }

    /// <summary>The new value; null when something is removed.</summary>
    public Node? Value { get; }

    /// <summary>Writes a text, number or word. It is put in quotes when it needs them.</summary>
    public static KeyEdit Put(IReadOnlyList<string> path, string text) => Put(path, Node.Scalar(text));

    /// <summary>Writes a value of any kind. Groups that the path names and that are not there are begun.</summary>
    public static KeyEdit Put(IReadOnlyList<string> path, Node value) => new(KeyEditKind.Put, Some(path), Storable(value));

    /// <summary>Adds an item at the end of a list.</summary>
    public static KeyEdit Append(IReadOnlyList<string> path, Node item) => new(KeyEditKind.Append, Some(path), Storable(item));

    /// <summary>Takes out a key or an item. A comment at the end of its lines goes with it; one on a line of its own above it stays.</summary>
    public static KeyEdit Remove(IReadOnlyList<string> path) => new(KeyEditKind.Remove, Some(path), null);

    private static IReadOnlyList<string> Some(IReadOnlyList<string> path) => path.Count > 0 && path.All(part => IsStorable(part))
        ? [.. path]
        : throw new RefusedValueException(
            "path of the edit", $"\"{string.Join(" ", path)}\"", "one key or more of sound text", "Name the keys that lead to the value.");

    private static Node Storable(Node value)
    {
        if (value.Kind == NodeKind.Refused || !IsStorable(value.Text) || !value.Entries.All(entry => IsStorable(entry.Key)))
        {
            throw new RefusedValueException(
                "value of the edit",
                "not sound text",
                "text without half surrogate pairs, and no refused value",
                "Give the text as it should stand in the file.");
        }

        foreach (var child in value.Items.Concat(value.Entries.Select(entry => entry.Value)))
        {
            Storable(child);
        }

        return value;
    }

    private static bool IsStorable(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogate(text[i]) && !(char.IsSurrogatePair(text, i++)))
            {
                return false;
            }
        }

        return true;
    }
}
