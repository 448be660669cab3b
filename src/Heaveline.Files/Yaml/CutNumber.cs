namespace Heaveline.Files.Yaml;

/// <summary>A number with a decimal comma in braces or brackets, where a comma ends a value: 0,64 m is read as 0 and 64 m.</summary>
internal static class CutNumber
{
    /// <summary>The number as it was written, when the digits of a value end at a comma with a digit right behind; null when not.</summary>
    public static string? Of(Node node, Reader reader)
    {
        if (node.Kind != NodeKind.Scalar || !node.IsPlain || node.Text.Length == 0 || !node.Text.TrimStart('+', '-', '−').All(char.IsAsciiDigit)
            || (node.Place.File is { } file && file != reader.Source.File))
        {
            return null;
        }

        var line = reader.Source.Line(node.Place.Line);
        var comma = node.Place.Column - 1 + node.Text.Length;
        var end = comma + 1;
        while (end < line.Length && char.IsAsciiDigit(line[end]))
        {
            end++;
        }

        return comma < line.Length && line[comma] == ',' && end > comma + 1 ? node.Text + line[comma..end] : null;
    }

    /// <summary>Refuses it.</summary>
    public static void Refuse(Node node, string number, Reader reader) => reader.Refuse(
        node.Place,
        $"{node.Subject}: {number} is cut at its comma; in braces and brackets a comma ends a value.",
        $"Write {number.Replace(',', '.')}, with a decimal point; between two values put a blank after the comma.");
}
