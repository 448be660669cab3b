using Heaveline.Files.Yaml;

namespace Heaveline.Files.Editing;

/// <summary>An edit of a document's values, without its text: what the edited text must be read as.</summary>
internal static class TreeEditing
{
    /// <summary>The document with the edit in it.</summary>
    /// <param name="root">The document.</param>
    /// <param name="edit">The edit.</param>
    /// <param name="kind">How the document is written, for the order of its keys; null when unknown.</param>
    /// <exception cref="EditStopException">The edit has no place in the document.</exception>
    public static Node Apply(Node root, KeyEdit edit, Kind? kind) => Apply(root, edit, kind, 0);

    private static Node Apply(Node node, KeyEdit edit, Kind? kind, int depth)
    {
        if (depth == edit.Path.Count)
        {
            return edit.Kind != KeyEditKind.Append || node.IsEmpty ? KeyOrder.Brought(edit)
                : node.Kind == NodeKind.Sequence ? WithItems(node, [.. node.Items, edit.Value!])
                : throw new EditStopException(EditProblem.NotAList, $"{node.Subject} is no list.", "Write the list whole.");
        }

        var part = edit.Path[depth];
        var isLast = depth == edit.Path.Count - 1;
        if (node.IsEmpty && edit.Kind != KeyEditKind.Remove)
        {
            return KeyOrder.Wrapped([.. edit.Path.Skip(depth)], KeyOrder.Brought(edit));
        }

        var at = KeyOrder.Find(node, part);
        if (at < 0)
        {
            return edit.Kind == KeyEditKind.Remove || node.Kind == NodeKind.Sequence
                ? throw KeyOrder.Missing(node, part)
                : WithNew(node, part, KeyOrder.Wrapped([.. edit.Path.Skip(depth + 1)], KeyOrder.Brought(edit)), kind);
        }

        if (isLast && edit.Kind == KeyEditKind.Remove)
        {
            return node.Kind == NodeKind.Mapping
                ? WithEntries(node, node.Entries.Where((_, i) => i != at))
                : WithItems(node, node.Items.Where((_, i) => i != at));
        }

        var under = KeyOrder.Under(node, kind, part);
        return node.Kind == NodeKind.Mapping
            ? WithEntries(
                node, node.Entries.Select((entry, i) => i == at ? entry with { Value = Apply(entry.Value, edit, under, depth + 1) } : entry))
            : WithItems(node, node.Items.Select((item, i) => i == at ? Apply(item, edit, under, depth + 1) : item));
    }

    private static Node WithNew(Node group, string key, Node value, Kind? kind)
    {
        var entries = group.Entries.ToList();
        entries.Insert(KeyOrder.Place(group, key, kind), new Entry(key, Place.Start, value));
        return WithEntries(group, entries);
    }

    private static Node WithEntries(Node node, IEnumerable<Entry> entries) => new(NodeKind.Mapping, node.Path, node.Place) { Entries = [.. entries] };

    private static Node WithItems(Node node, IEnumerable<Node> items) => new(NodeKind.Sequence, node.Path, node.Place) { Items = [.. items] };
}
