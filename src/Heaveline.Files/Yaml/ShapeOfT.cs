using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>A group of keys that becomes a record.</summary>
/// <typeparam name="T">The record.</typeparam>
public sealed class Shape<T> : Kind<T>
    where T : class
{
    private readonly Func<Fields, T?> make;

    internal Shape(Shape shape, Func<Fields, T?> make)
    {
        Layout = shape;
        this.make = make;
    }

    /// <summary>The keys.</summary>
    public Shape Layout { get; }

    /// <inheritdoc/>
    internal override Shape? Group => Layout;

    /// <inheritdoc/>
    internal override Shape? Keys => Layout;

    /// <inheritdoc/>
    internal override Kind? Under(string key) => Layout.Keys.FirstOrDefault(known => known.Name == key)?.Kind;

    /// <inheritdoc/>
    public override string Words => $"a group of keys ({string.Join(", ", Layout.Keys.Select(key => key.Name))})";

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, [MaybeNullWhen(false)] out T value)
    {
        value = null;
        if (!reader.Is(node, NodeKind.Mapping, Words))
        {
            return false;
        }

        var before = reader.Count;
        var values = GroupReading.Values(node, Layout, reader);

        // A value refused while the tree was built is silent here, and missing.
        var isSound = reader.Count == before && values.Count == node.Entries.Count;
        value = new RecordTrial<T>(node, Layout, reader, make).Make(values, isSound);
        return value is not null && reader.Count == before;
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) =>
        field with { Kind = FieldKind.Group, Fields = FormGroup.Fields(Layout, this, field.Path) };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) => definitions.Reference(Layout);

    /// <summary>The example, or a sound record from the examples of its keys; null when one is missing.</summary>
    internal override object? Sample(string example)
    {
        if (example.Length > 0)
        {
            return base.Sample(example);
        }

        var wanted = Layout.Keys.Where(key => key.IsRequired).Concat(Layout.OneOf.Select(set => set[0])).Distinct();
        var values = new Dictionary<Key, object>();
        foreach (var key in wanted)
        {
            if (key.Sample() is not { } sample)
            {
                return null;
            }

            values[key] = sample;
        }

        var reader = new Reader(new SourceText("", ""));
        return new RecordTrial<T>(new Node(NodeKind.Mapping, "", Place.Start), Layout, reader, make).Make(values, isSound: true);
    }
}
