namespace Heaveline.Files.Yaml;

/// <summary>Some keys of one document put over those of another. Every value keeps its own place.</summary>
internal static class Overlay
{
    /// <summary>The lower document with the upper one's values in it.</summary>
    /// <param name="lower">The whole document.</param>
    /// <param name="upper">Changes: groups are entered, values and lists replaced, a key with ~ is taken out.</param>
    /// <param name="kind">
    /// How the document is written: where one of several keys must be given, a new one replaces the old one. Null when unknown.
    /// </param>
    public static Node Of(Node lower, Node upper, Kind? kind)
    {
        if (lower.Kind != NodeKind.Mapping || upper.Kind != NodeKind.Mapping)
        {
            return upper;
        }

        var entries = lower.Entries.ToList();
        foreach (var change in upper.Entries)
        {
            var i = entries.FindIndex(entry => entry.Key == change.Key);
            if (i >= 0 && change.Value.IsEmpty)
            {
                entries.RemoveAt(i);
            }
            else if (i >= 0)
            {
                var value = Of(entries[i].Value, change.Value, kind?.Under(change.Key));
                entries[i] = ReferenceEquals(value, change.Value) ? change : entries[i] with { Value = value };
            }
            else
            {
                var rivals = kind is { Group: { } group } && kind.Under(change.Key) is not null ? Rivals(group, change.Key) : [];
                entries.RemoveAll(entry => rivals.Contains(entry.Key) && upper.At(entry.Key) is null);
                entries.Add(change);
            }
        }

        return new Node(NodeKind.Mapping, lower.Path, lower.Place) { Entries = entries };
    }

    private static HashSet<string> Rivals(Shape group, string key) =>
        [.. group.OneOf.Where(set => set.Any(one => one.Name == key)).SelectMany(set => set).Select(one => one.Name).Where(name => name != key)];
}
