using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using Heaveline.Files.Forms;
using Heaveline.Files.Yaml;

namespace Heaveline.Files.Cars;

/// <summary>Changed keys as they stand; what they mean is told when they lie over their base.</summary>
internal sealed class ChangesKind : Kind<Node>
{
    /// <inheritdoc/>
    public override string Words => "a group with the changed keys of the car file";

    /// <inheritdoc/>
    internal override Shape? Keys => CarWords.Shape.Layout;

    /// <inheritdoc/>
    internal override Kind? Under(string key) => CarWords.Shape.Under(key);

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, [MaybeNullWhen(false)] out Node value)
    {
        value = node;
        return reader.Is(node, NodeKind.Mapping, Words);
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) => CarWords.Shape.Describe(field);

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) => new()
    {
        ["type"] = "object",
        ["propertyNames"] = new JsonObject { ["enum"] = new JsonArray([.. CarWords.Shape.Layout.Keys.Select(key => (JsonNode)key.Name)]) },
        ["minProperties"] = 1,
    };

    /// <summary>None: a variant without changes is refused before it is tried.</summary>
    internal override object? Sample(string example) => null;
}
