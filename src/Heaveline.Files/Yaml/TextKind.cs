using System.Text.Json.Nodes;
using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>Some text that is not blank.</summary>
internal sealed class TextKind : Kind<string>
{
    /// <inheritdoc/>
    public override string Words => "some text";

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, out string value)
    {
        value = node.Text.Trim();
        if (!reader.Is(node, NodeKind.Scalar, Words))
        {
            return false;
        }

        if (value.Length > 0)
        {
            return true;
        }

        reader.Refuse(node.Place, $"{node.Subject} is blank; some text is wanted.", "Write some text, or leave the key out.");
        return false;
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) => field with { Kind = FieldKind.Text };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) => new() { ["type"] = new JsonArray("string", "number", "boolean") };
}
