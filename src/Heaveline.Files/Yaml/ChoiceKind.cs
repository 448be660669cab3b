using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Nodes;
using Heaveline.Files.Forms;
using Heaveline.Quantities;

namespace Heaveline.Files.Yaml;

/// <summary>One of some words.</summary>
internal sealed class ChoiceKind<T>((string Word, T Value)[] choices) : Kind<T>
    where T : notnull
{
    private readonly string words = string.Join(", ", choices.Select(choice => choice.Word));

    /// <inheritdoc/>
    public override string Words => $"one of {words}";

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, [MaybeNullWhen(false)] out T value)
    {
        value = default;
        if (!reader.Is(node, NodeKind.Scalar, Words))
        {
            return false;
        }

        foreach (var choice in choices)
        {
            if (choice.Word == node.Text)
            {
                value = choice.Value;
                return true;
            }
        }

        var near = NearestWord.Of(node.Text, choices.Select(choice => choice.Word));
        return reader.Fail(
            node.Place,
            $"{node.Subject} is \"{node.Text}\"; it must be {Words}.",
            near is null ? "Write one of these words." : $"Did you mean {near}?",
            out value);
    }

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) => field with { Kind = FieldKind.Word, Words = [.. choices.Select(choice => choice.Word)] };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) =>
        new() { ["enum"] = new JsonArray([.. choices.Select(choice => (JsonNode)choice.Word)]) };
}
