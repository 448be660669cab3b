using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>What must lie over one document to make another of it.</summary>
internal static class VariantChanges
{
    /// <summary>The changed keys, in the order of the changed document; null when there are none.</summary>
    /// <param name="before">The lower document.</param>
    /// <param name="after">What should come of it.</param>
    /// <param name="kind">How the document is written; null when unknown.</param>
    public static Node? Of(Node before, Node after, Kind? kind)
    {
        var changes = new List<KeyValuePair<string, Node>>();
        foreach (var entry in after.Entries)
        {
            var old = before.At(entry.Key);
            var change = old is { Kind: NodeKind.Mapping } && entry.Value.Kind == NodeKind.Mapping ? Of(old, entry.Value, kind?.Under(entry.Key))
                : old is not null && old.IsSameAs(entry.Value) ? null
                : entry.Value;
            if (change is not null)
            {
                changes.Add(new(entry.Key, change));
            }
        }

        foreach (var gone in before.Entries.Where(entry => after.At(entry.Key) is null && !IsReplaced(entry.Key, before, after, kind)))
        {
            changes.Add(new(gone.Key, Node.Nothing));
        }

        return changes.Count == 0 ? null : Node.Group(changes);
    }

    // Where one of several keys must be given, a new one takes the old one's place without a word.
    private static bool IsReplaced(string gone, Node before, Node after, Kind? kind) =>
        kind?.Keys is { } keys
        && keys.OneOf.Any(set => set.Any(key => key.Name == gone) && set.Any(key => before.At(key.Name) is null && after.At(key.Name) is not null));
}
