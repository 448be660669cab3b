using System.Text.Json.Nodes;

namespace Heaveline.Files.Yaml;

/// <summary>The JSON Schema (draft 2020-12) of a file, for editors that complete and check YAML while one types.</summary>
public static class JsonSchema
{
    /// <summary>The schema of a shape. Amounts are strings with a pattern that asks for a number and a unit.</summary>
    public static JsonObject Of(Shape shape)
    {
        var definitions = new SchemaDefinitions();
        var schema = new JsonObject { ["$schema"] = "https://json-schema.org/draft/2020-12/schema", ["title"] = shape.Name };
        foreach (var (name, value) in shape.Schema(definitions).ToList())
        {
            schema[name] = value?.DeepClone();
        }

        if (definitions.Written() is { Count: > 0 } written)
        {
            schema["$defs"] = written;
        }

        return schema;
    }
}
