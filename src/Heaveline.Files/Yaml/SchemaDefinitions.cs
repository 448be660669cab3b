using System.Text.Json.Nodes;

namespace Heaveline.Files.Yaml;

/// <summary>The groups of a schema, each written once under its name.</summary>
internal sealed class SchemaDefinitions
{
    private readonly Dictionary<string, (Shape Shape, JsonObject Schema)> shapes = new(StringComparer.Ordinal);

    /// <summary>A reference to a group, which is added when it is new.</summary>
    public JsonObject Reference(Shape shape)
    {
        var name = shape.Name.Replace(' ', '-');
        if (!shapes.TryGetValue(name, out var known))
        {
            shapes[name] = (shape, []);
            shapes[name] = (shape, shape.Schema(this));
        }
        else if (!ReferenceEquals(known.Shape, shape))
        {
            throw new InvalidOperationException($"Two shapes are called {shape.Name}.");
        }

        return new JsonObject { ["$ref"] = $"#/$defs/{name}" };
    }

    /// <summary>All groups, for the schema's end.</summary>
    public JsonObject Written() => new(shapes.Select(pair => KeyValuePair.Create(pair.Key, (JsonNode?)pair.Value.Schema)));
}
