using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using Heaveline.Files.Forms;
using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>A phrase with a parser of its own.</summary>
internal sealed class PhraseKind<T>(string words, string pattern, Func<string, (T Value, QuantityRefusal? Refusal)> parse) : Kind<T>
    where T : notnull
{
    /// <inheritdoc/>
    public override string Words => words;

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, [MaybeNullWhen(false)] out T value)
    {
        value = default;
        if (!reader.Is(node, NodeKind.Scalar, Words))
        {
            return false;
        }

        (value, var refusal) = parse(node.Text);
        return refusal is null
            || reader.Fail(node.PlaceOf(refusal.Start, refusal.Length), $"{node.Subject}: {refusal.Message}", refusal.Advice, out value);
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) => field with { Kind = FieldKind.Phrase, Pattern = pattern };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) =>
        new() { ["type"] = new JsonArray("string", "number"), ["pattern"] = pattern };
}
