using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;

namespace Heaveline.Files.Yaml;

/// <summary>A list of values of one kind.</summary>
internal sealed class ListKind<T>(Kind<T> item, int atLeast) : Kind<IReadOnlyList<T>>
    where T : notnull
{
    /// <inheritdoc/>
    internal override Shape? Group => item.Group;

    /// <inheritdoc/>
    public override string Words => $"a list, each item {item.Words}";

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

        if (node.Items.Count < atLeast)
        {
            return reader.Fail(node.Place, $"{node.Subject} has {node.Items.Count} {(node.Items.Count == 1 ? "item" : "items")}; it must have {atLeast} or more.", "Add the missing items.", out value);
        }

        value = items;
        return items.Count == node.Items.Count;
    }

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) =>
        new() { ["type"] = "array", ["items"] = item.Schema(definitions), ["minItems"] = atLeast };

    /// <summary>The example, or a list of the item's own sample.</summary>
    internal override object? Sample(string example) =>
        example.Length > 0 ? base.Sample(example)
        : item.Sample("") is T one ? Enumerable.Repeat(one, Math.Max(1, atLeast)).ToList()
        : null;
}
