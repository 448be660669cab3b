using System.Text.Json.Nodes;

namespace Heaveline.Files.Yaml;

/// <summary>A group of keys as a file may hold it: which keys, which of them must be there, which exclude each other.</summary>
public sealed class Shape
{
    /// <summary>Describes a group.</summary>
    /// <param name="name">The name in words, unique in a file ("spring").</param>
    /// <param name="meaning">The meaning in one line.</param>
    /// <param name="keys">Its keys, in the order of the documentation.</param>
    public Shape(string name, string meaning, params Key[] keys)
    {
        Name = name;
        Meaning = meaning;
        Keys = keys;
        if (keys.Select(key => key.Name).Distinct(StringComparer.Ordinal).Count() != keys.Length)
        {
            throw new ArgumentException($"The shape {name} lists a key twice.", nameof(keys));
        }
    }

    /// <summary>The name in words.</summary>
    public string Name { get; }

    /// <summary>The meaning in one line.</summary>
    public string Meaning { get; }

    /// <summary>Its keys.</summary>
    public IReadOnlyList<Key> Keys { get; }

    /// <summary>Sets of optional keys of which exactly one must be given.</summary>
    public IReadOnlyList<IReadOnlyList<Key>> OneOf { get; init; } = [];

    /// <summary>The shape with one more set of keys of which exactly one must be given.</summary>
    public Shape WithOneOf(params Key[] keys) => new(Name, Meaning, [.. Keys]) { OneOf = [.. OneOf, keys] };

    /// <summary>A kind of value: this group, made into a record. The record's own refusals go to the keys that they name.</summary>
    /// <param name="make">
    /// Makes the record from sound values; null after a refusal of its own. It must have no other effect: it may be tried with example values.
    /// </param>
    public Shape<T> As<T>(Func<Fields, T?> make)
        where T : class => new(this, make);

    /// <summary>The JSON Schema of the group itself.</summary>
    internal JsonObject Schema(SchemaDefinitions definitions)
    {
        var properties = new JsonObject();
        foreach (var key in Keys)
        {
            var value = key.Kind.Schema(definitions);
            var note = value["description"]?.GetValue<string>();
            value["description"] = note is null ? key.Says : $"{key.Says} {note}";

            // A group's example is YAML on one line, which an editor would put in quotes.
            if (key.Example.Length > 0 && key.Kind.Group is null)
            {
                value["examples"] = new JsonArray(key.Example);
            }

            properties[key.Name] = value;
        }

        var schema = new JsonObject
        {
            ["description"] = Meaning,
            ["type"] = "object",
            ["properties"] = properties,
            ["required"] = Names(Keys.Where(key => key.IsRequired)),
            ["additionalProperties"] = false,
        };
        if (OneOf.Count > 0)
        {
            schema["allOf"] = new JsonArray([.. OneOf.Select(set => (JsonNode)new JsonObject { ["oneOf"] = Alternatives(set) })]);
        }

        return schema;
    }

    private static JsonArray Alternatives(IReadOnlyList<Key> set) =>
        new([.. set.Select(key => (JsonNode)new JsonObject { ["required"] = Names([key]) })]);

    private static JsonArray Names(IEnumerable<Key> keys) => new([.. keys.Select(key => (JsonNode)key.Name)]);
}
