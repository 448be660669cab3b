using System.Collections.Concurrent;

namespace Heaveline.Files.Yaml;

/// <summary>
/// The limits of a group's single values. They stand in the checks of the records, and nowhere else; so the group is read with sound examples
/// and one value that nothing can have, and what it is refused for is the limit.
/// </summary>
internal static class GroupLimits
{
    // Asking takes a few readings; both axles are of one shape.
    private static readonly ConcurrentDictionary<(Shape, Key), ValueLimit?> Known = [];

    /// <summary>The limit of a key's value; null when none is told.</summary>
    /// <param name="shape">The group.</param>
    /// <param name="kind">What reads it.</param>
    /// <param name="key">The key.</param>
    public static ValueLimit? Of(Shape shape, Kind kind, Key key) => Known.GetOrAdd((shape, key), _ =>
        Enumerable.Range(0, shape.OneOf.Select(set => set.Count).DefaultIfEmpty(1).Max())
            .SelectMany(alternative => key.Kind.Probes.Select(probe => LimitOf(shape, kind, key, probe, alternative)))
            .FirstOrDefault(limit => limit is not null));

    // alternative: which of several keys is given where one of them must be.
    private static ValueLimit? LimitOf(Shape shape, Kind kind, Key key, string probe, int alternative)
    {
        var beside = shape.Keys.Where(other => other.IsRequired)
            .Concat(shape.OneOf.Where(set => !set.Contains(key)).Select(set => set[Math.Min(alternative, set.Count - 1)]))
            .Where(other => other != key).Distinct();

        // Each value on a line of its own number, so that the refusal can be told from those of its neighbours.
        var at = new Place(1, 1, 1);
        var line = at.Line;
        var entries = beside
            .Select(other => (other.Name, Value: Example(other), Place: new Place(++line, 1, 1))).Where(entry => entry.Value is not null).ToList();
        var group = new Node(NodeKind.Mapping, "", new Place(++line, 1, 1))
        {
            Entries =
            [
                new Entry(key.Name, at, new Node(NodeKind.Scalar, key.Name, at) { Text = probe, IsPlain = true }),
                .. entries.Select(entry => new Entry(entry.Name, entry.Place, Moved(entry.Value!, entry.Place))),
            ],
        };

        var reader = new Reader(new SourceText("", ""));
        _ = kind.TryReadAny(group, reader, out _);
        return reader.Limits.FirstOrDefault(refused => refused.Place.Line == at.Line).Limit;
    }

    private static Node? Example(Key key) =>
        key.Example.Length > 0 ? YamlReading.Value(new SourceText("", key.Example)).Value
        : key.Kind.Keys is { } keys ? Example(keys)
        : null;

    private static Node Example(Shape shape) => Node.Group(
        shape.Keys.Where(key => key.IsRequired).Concat(shape.OneOf.Select(set => set[0])).Distinct()
            .Select(key => (key.Name, Value: Example(key))).Where(entry => entry.Value is not null)
            .Select(entry => KeyValuePair.Create(entry.Name, entry.Value!)));

    private static Node Moved(Node node, Place place) => new(node.Kind, node.Path, place)
    {
        Text = node.Text,
        IsPlain = true,
        Entries = [.. node.Entries.Select(entry => new Entry(entry.Key, place, Moved(entry.Value, place)))],
        Items = [.. node.Items.Select(item => Moved(item, place))],
    };
}
