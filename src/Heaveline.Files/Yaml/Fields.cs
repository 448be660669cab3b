namespace Heaveline.Files.Yaml;

/// <summary>The values of one group, all of them sound, for making a record from.</summary>
public sealed class Fields
{
    private readonly Reader reader;
    private readonly Shape shape;
    private readonly IReadOnlyDictionary<Key, object> values;

    internal Fields(Node node, Shape shape, Reader reader, IReadOnlyDictionary<Key, object> values)
    {
        Node = node;
        this.shape = shape;
        this.reader = reader;
        this.values = values;
    }

    /// <summary>The group in the document.</summary>
    public Node Node { get; }

    /// <summary>Whether a key is given.</summary>
    public bool Has(Key key) => values.ContainsKey(Own(key));

    /// <summary>The value of a key that may not be left out.</summary>
    public T Required<T>(Key<T> key)
        where T : notnull => values.TryGetValue(Own(key), out var value)
            ? (T)value
            : throw new InvalidOperationException($"The key {key.Name} is not given; ask for it as an optional one.");

    /// <summary>The value of a key, or another one when it is not given.</summary>
    public T Optional<T>(Key<T> key, T otherwise)
        where T : notnull => values.TryGetValue(Own(key), out var value) ? (T)value : otherwise;

    /// <summary>The value of a key, or null when it is not given.</summary>
    public T? Optional<T>(Key<T> key)
        where T : class => values.TryGetValue(Own(key), out var value) ? (T)value : null;

    /// <summary>The value of a key (an amount, a choice, a count), or null when it is not given.</summary>
    public T? OptionalValue<T>(Key<T> key)
        where T : struct => values.TryGetValue(Own(key), out var value) ? (T)value : null;

    /// <summary>Refuses the value of a key; the message begins with the key's path in words.</summary>
    public void Refuse(Key key, string message, string advice) => reader.Refuse(PlaceOf(key), $"{SubjectOf(key)} {message}", advice);

    /// <summary>Refuses the value of a key for its limit.</summary>
    internal void Refuse(Key key, ValueLimit limit, string advice) =>
        reader.Refuse(PlaceOf(key), SubjectOf(key), Node.At(key.Name)?.Text ?? "missing", limit, advice);

    /// <summary>Refuses the whole group; the message begins with the group's path in words.</summary>
    public void Refuse(string message, string advice) => reader.Refuse(Node.Place, $"{Node.Subject} {message}", advice);

    /// <summary>Warns about the value of a key; the message begins with the key's path in words.</summary>
    public void Warn(Key key, string message, string advice) => reader.Warn(PlaceOf(key), $"{SubjectOf(key)} {message}", advice);

    /// <summary>Where the value of a key stands; the group when it is not given.</summary>
    public Place PlaceOf(Key key) => (Node.At(Own(key).Name) ?? Node).Place;

    private string SubjectOf(Key key) => Node.At(key.Name)?.Subject ?? $"{Node.Path} {key.Name}".TrimStart();

    // A key that the shape does not list would be missing from the schema and the documentation.
    private Key Own(Key key) =>
        shape.Keys.Contains(key) ? key : throw new InvalidOperationException($"The shape {shape.Name} has no key {key.Name}.");
}
