using System.Globalization;
using System.Text.Json.Nodes;
using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>A whole number between limits.</summary>
internal sealed class CountKind(int low, int high) : Kind<int>
{
    /// <inheritdoc/>
    public override string Words => $"a whole number from {low} to {high}";

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, out int value)
    {
        value = 0;
        if (!reader.Is(node, NodeKind.Scalar, Words))
        {
            return false;
        }

        return (int.TryParse(node.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value) && value >= low && value <= high)
            || reader.Fail(node.Place, $"{node.Subject} is {node.Text}; it must be {Words}.", "Write it in digits, without a unit.", out value);
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) => field with { Kind = FieldKind.Count, Limit = Words, Least = low, Most = high };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) => new() { ["type"] = "integer", ["minimum"] = low, ["maximum"] = high };
}
