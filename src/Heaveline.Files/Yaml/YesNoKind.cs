using System.Text.Json.Nodes;
using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>true or false, and nothing else: yes and on are words to YAML 1.2.</summary>
internal sealed class YesNoKind : Kind<bool>
{
    /// <inheritdoc/>
    public override string Words => "true or false";

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, out bool value)
    {
        value = node.Text == "true";
        if (!reader.Is(node, NodeKind.Scalar, Words))
        {
            return false;
        }

        if (node.IsPlain && (node.Text is "true" or "false"))
        {
            return true;
        }

        var advice = node.Text.ToUpperInvariant() switch
        {
            "YES" or "ON" or "Y" or "TRUE" or "1" => "Write true.",
            "NO" or "OFF" or "N" or "FALSE" or "0" => "Write false.",
            _ => "Write true or false, in small letters and without quotes.",
        };
        return reader.Fail(node.Place, $"{node.Subject} is \"{node.Text}\"; it must be true or false.", advice, out value);
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) => field with { Kind = FieldKind.YesNo, Words = ["true", "false"] };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) => new() { ["type"] = "boolean" };
}
