using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>A list of values of one kind.</summary>
internal sealed class ListKind<T>(Kind<T> item, int atLeast) : Kind<IReadOnlyList<T>>
    where T : notnull
{
    /// <inheritdoc/>
    internal override Shape? Group => item.Group;

    /// <inheritdoc/>
    internal override Kind? Item => item;

    /// <inheritdoc/>
    public override string Words => $"a list, each item {item.Words}";

    /// <inheritdoc/>
    internal override string? UsualWords => item.UsualWords;

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, [MaybeNullWhen(false)] out IReadOnlyList<T> value)
    {
        value = null;
        if (!reader.Is(node, NodeKind.Sequence, Words))
        {
            return false;
        }

        var items = new List<T>(node.Items.Count);
        foreach (var element in node.Items)
        {
            if (item.TryRead(element, reader, out var one))
            {
                items.Add(one);
            }
        }

        reader.GatherColumns(node);
        if (node.Items.Count < atLeast)
        {
            return reader.Fail(
                node.Place,
                $"{node.Subject} has {node.Items.Count} {(node.Items.Count == 1 ? "item" : "items")}; it must have {atLeast} or more.",
                "Add the missing items.",
                out value);
        }

        value = items;
        return items.Count == node.Items.Count;
    }

    /// <summary>A list of pairs is a table; any other list has items.</summary>
    internal override FormField Describe(FormField field) =>
        item.DescribeItem(field) is { Kind: FieldKind.Table } row
            ? field with { Kind = FieldKind.Table, Columns = row.Columns }
            : field with { Kind = FieldKind.List, Item = item.DescribeItem(field) };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) =>
        new() { ["type"] = "array", ["items"] = item.Schema(definitions), ["minItems"] = atLeast };

    /// <summary>The example, or a list of the item's own sample.</summary>
    internal override object? Sample(string example) =>
        example.Length > 0 ? base.Sample(example)
        : item.Sample("") is T one ? Enumerable.Repeat(one, Math.Max(1, atLeast)).ToList()
        : null;
}
