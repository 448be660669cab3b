using System.Text.Json.Nodes;
using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>A list of two values of two kinds.</summary>
internal sealed class PairKind<TFirst, TSecond>(Kind<TFirst> first, Kind<TSecond> second) : Kind<(TFirst First, TSecond Second)>
    where TFirst : notnull
    where TSecond : notnull
{
    /// <inheritdoc/>
    public override string Words => $"a pair, {first.Words} and {second.Words}";

    /// <inheritdoc/>
    internal override string? UsualWords => first.UsualWords is { } one && second.UsualWords is { } two ? $"{one}; {two}" : null;

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, out (TFirst First, TSecond Second) value)
    {
        value = default;
        if (!reader.Is(node, NodeKind.Sequence, Words))
        {
            return false;
        }

        if (node.Items.Count > 2 && node.Items.FirstOrDefault(item => CutNumber.Of(item, reader) is not null) is { } cut)
        {
            CutNumber.Refuse(cut, CutNumber.Of(cut, reader)!, reader);
            return false;
        }

        if (node.Items.Count != 2)
        {
            return reader.Fail(
                node.Place,
                $"{node.Subject} has {node.Items.Count} {(node.Items.Count == 1 ? "value" : "values")}; it must have 2.",
                $"Write {Words}, in square brackets.",
                out value);
        }

        // Both are read, so that both are refused at once.
        var isFirst = first.TryRead(node.Items[0], reader, out var one);
        var isSecond = second.TryRead(node.Items[1], reader, out var two);
        value = (one!, two!);
        return isFirst && isSecond;
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) =>
        field with { Kind = FieldKind.Table, Columns = [first.DescribeItem(field), second.DescribeItem(field)] };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) => new()
    {
        ["type"] = "array",
        ["prefixItems"] = new JsonArray(first.Schema(definitions), second.Schema(definitions)),
        ["minItems"] = 2,
        ["maxItems"] = 2,
    };
}
