using YamlDotNet.Core;

namespace Heaveline.Files.Yaml;

/// <summary>The parser's complaint in words that help someone who does not know YAML, with the place where the slip is.</summary>
internal static class SyntaxWords
{
    /// <summary>Refuses the text for one complaint of the parser.</summary>
    public static void Refuse(Reader reader, YamlException complaint)
    {
        var source = reader.Source;
        var line = (int)complaint.Start.Line;

        // The parser names the value that a tab follows; the tab itself is on that line or the next.
        foreach (var tabbed in new[] { line, line + 1 })
        {
            var blanks = source.Line(tabbed).AsSpan().IndexOfAnyExcept(' ');
            if (blanks >= 0 && source.Line(tabbed)[blanks] == '\t')
            {
                reader.Refuse(new Place(tabbed, blanks + 1, 1), "this line is indented with a tab.", "Indent with blanks; YAML takes no tabs there.");
                return;
            }
        }

        var (message, advice) = Words(complaint.Message);
        reader.Refuse(Inside(source, complaint.Start), message, advice);
    }

    /// <summary>The parser's place; a place behind the end of the text becomes the end of its last line.</summary>
    public static Place Inside(SourceText source, Mark mark) => mark.Line > source.LineCount
        ? new Place(source.LineCount, Math.Max(1, source.Line(source.LineCount).Length), 1)
        : new Place(Math.Max(1, (int)mark.Line), Math.Max(1, (int)mark.Column), 1);

    private static (string Message, string Advice) Words(string complaint)
    {
        bool Says(string part) => complaint.Contains(part, StringComparison.Ordinal);
        return Says("expected ':'") ? ("a key without a colon stands here.", "Write the key, a colon, a blank and the value.")
            : Says("invalid mapping") ? ("a second colon stands in one value.", "Put the value in quotes if the colon belongs to it.")
            : Says("quoted scalar") ? ("this quote is not closed.", "Write the closing quote.")
            : Says("expected key") ? ("this line does not fit the lines above it.", "Indent keys of one group alike.")
            : Says("cannot start any token") ? ("a value cannot begin with this character.", "Put the value in quotes.")
            : ($"this is not YAML: {complaint.TrimEnd('.')}.", "Check indentation, colons, quotes and brackets here and on the line above.");
    }
}
