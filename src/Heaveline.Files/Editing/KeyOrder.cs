using System.Globalization;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Editing;

/// <summary>Where keys and items are, and where new ones belong.</summary>
internal static class KeyOrder
{
    // The key that names an item of a list: who or what a load is.
    private const string NameOfItem = "what";

    /// <summary>
    /// Where a new key goes among the keys of a group: behind the last one that the documentation names before it; at the end when it is not known.
    /// </summary>
    public static int Place(Node group, string key, Kind? kind)
    {
        var order = kind?.Keys?.Keys.Select(known => known.Name).ToList() ?? [];
        var own = order.IndexOf(key);
        if (own < 0)
        {
            return group.Entries.Count;
        }

        var before = group.Entries
            .Select((entry, i) => (Rank: order.IndexOf(entry.Key), i)).Where(entry => entry.Rank >= 0 && entry.Rank < own).ToList();
        return before.Count == 0 ? 0 : before.MaxBy(entry => entry.Rank).i + 1;
    }

    /// <summary>Index of the entry or item that a part of a path names; -1 when it is not there.</summary>
    public static int Find(Node node, string part)
    {
        if (node.Kind == NodeKind.Mapping)
        {
            return node.Entries.ToList().FindIndex(entry => entry.Key == part);
        }

        if (node.Kind != NodeKind.Sequence)
        {
            throw new EditStopException(
                EditProblem.NoSuchPlace,
                $"{node.Subject} is a single value; \"{part}\" cannot stand under it.",
                "Replace the value by a group first.");
        }

        if (int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var number))
        {
            return number >= 1 && number <= node.Items.Count ? number - 1 : -1;
        }

        var named = node.Items.Select((item, i) => (item.At(NameOfItem)?.Text, i)).Where(item => item.Text == part).ToList();
        return named.Count switch
        {
            0 => -1,
            1 => named[0].i,
            _ => throw new EditStopException(
                EditProblem.NoSuchPlace,
                $"{node.Subject} has {named.Count} items called \"{part}\".",
                "Name the item by its number, counted from 1."),
        };
    }

    /// <summary>How the value under a part of a path is written.</summary>
    public static Kind? Under(Node node, Kind? kind, string part) => node.Kind == NodeKind.Sequence ? kind?.Item : kind?.Under(part);

    /// <summary>A value inside the groups that the path still names.</summary>
    public static Node Wrapped(IReadOnlyList<string> path, Node value) =>
        path.Reverse().Aggregate(value, (inner, key) => Node.Group(KeyValuePair.Create(key, inner)));

    /// <summary>The value that an edit brings to a place where nothing stands.</summary>
    public static Node Brought(KeyEdit edit) => edit.Kind == KeyEditKind.Append ? Node.List(edit.Value!) : edit.Value!;

    /// <summary>The end of an edit of something that is not there.</summary>
    public static EditStopException Missing(Node node, string part) => node.Kind == NodeKind.Sequence
        ? new(
            EditProblem.NothingThere,
            $"{node.Subject} has no item \"{part}\".",
            $"It has {node.Items.Count}, counted from 1; a new one is added at the end.")
        : new(EditProblem.NothingThere, $"{node.Subject} has no {part}.", "There is nothing to take out.");
}
