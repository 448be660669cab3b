using System.Text.Json.Nodes;
using Heaveline.Files.Forms;
using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>An amount in a cell of a table, with what such cells usually are.</summary>
internal sealed class UsualKind<TDimension>(Kind<Amount<TDimension>> amount, UsualRange usual) : Kind<Amount<TDimension>>
    where TDimension : struct, IDimension
{
    /// <inheritdoc/>
    public override string Words => amount.Words;

    /// <inheritdoc/>
    internal override string UsualWords => usual.Words;

    /// <inheritdoc/>
    internal override IReadOnlyList<string> Probes => amount.Probes;

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, out Amount<TDimension> value)
    {
        if (!amount.TryRead(node, reader, out value))
        {
            return false;
        }

        // A doubt has no place in a table and is refused there.
        usual.Check(node, value.Si, 0.0, reader);
        return true;
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) =>
        amount.Describe(field) with { Meaning = $"{field.Meaning} Usually {usual.Words}." };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions)
    {
        var schema = amount.Schema(definitions);
        schema["description"] = $"{schema["description"]} Usually {usual.Words}.";
        return schema;
    }
}
