using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>A group with names of the user's choice.</summary>
internal sealed class NamedKind<T>(Kind<T> item) : Kind<IReadOnlyList<KeyValuePair<string, T>>>
    where T : notnull
{
    /// <inheritdoc/>
    internal override Shape? Group => item.Group;

    /// <inheritdoc/>
    internal override Kind? Under(string key) => item;

    /// <inheritdoc/>
    public override string Words => $"a group of names, each with {item.Words}";

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, [MaybeNullWhen(false)] out IReadOnlyList<KeyValuePair<string, T>> value)
    {
        value = null;
        if (!reader.Is(node, NodeKind.Mapping, Words))
        {
            return false;
        }

        var items = new List<KeyValuePair<string, T>>(node.Entries.Count);
        foreach (var entry in node.Entries)
        {
            if (TextKind.LineBreak(entry.Key) is { } line)
            {
                reader.Refuse(
                    entry.KeyPlace, $"{node.Subject} has the name {line} with a line break; it must stand on one line.", "Write it on one line.");
            }
            else if (item.TryRead(entry.Value, reader, out var one))
            {
                items.Add(new(entry.Key, one));
            }
        }

        value = items;
        return items.Count == node.Entries.Count;
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) => field with { Kind = FieldKind.Names, Item = item.DescribeItem(field) };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) =>
        new() { ["type"] = "object", ["additionalProperties"] = item.Schema(definitions) };

    /// <summary>The example, or a group without names.</summary>
    internal override object? Sample(string example) => example.Length > 0 ? base.Sample(example) : Array.Empty<KeyValuePair<string, T>>();
}
