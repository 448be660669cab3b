using System.Buffers;
using System.Text.Json.Nodes;
using Heaveline.Files.Forms;

namespace Heaveline.Files.Yaml;

/// <summary>Some text that is not blank.</summary>
/// <param name="lines">Whether it may have several lines.</param>
internal sealed class TextKind(bool lines) : Kind<string>
{
    // What ends a line in YAML or on a terminal.
    private static readonly SearchValues<char> Breaks = SearchValues.Create("\n\r\v\f\u0085\u2028\u2029");

    /// <inheritdoc/>
    public override string Words => "some text";

    /// <inheritdoc/>
    internal override bool TryRead(Node node, Reader reader, out string value)
    {
        value = node.Text.Trim();
        if (!reader.Is(node, NodeKind.Scalar, Words))
        {
            return false;
        }

        if (!lines && LineBreak(value) is { } line)
        {
            return reader.Fail(
                node.Place, $"{node.Subject} is {line}: it has a line break; it must stand on one line.", "Write it on one line.", out value!);
        }

        if (value.Length > 0)
        {
            return true;
        }

        reader.Refuse(node.Place, $"{node.Subject} is blank; some text is wanted.", "Write some text, or leave the key out.");
        return false;
    }

    /// <summary>A text with its line breaks spelled out, as YAML can have them escaped; null when it has none.</summary>
    internal static string? LineBreak(string text) =>
        text.AsSpan().IndexOfAny(Breaks) < 0 ? null : ControlCharacter.Spelled(text);

    /// <inheritdoc/>
    internal override FormField Describe(FormField field) => field with { Kind = FieldKind.Text };

    /// <inheritdoc/>
    internal override JsonObject Schema(SchemaDefinitions definitions) => new() { ["type"] = new JsonArray("string", "number", "boolean") };
}
