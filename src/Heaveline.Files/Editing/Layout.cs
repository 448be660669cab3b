using Heaveline.Files.Yaml;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace Heaveline.Files.Editing;

/// <summary>Finds the characters of every value of a document that has been read without a refusal.</summary>
internal sealed class Layout
{
    private readonly PlacedParser parser;
    private readonly Lines lines;

    private Layout(Lines lines)
    {
        this.lines = lines;
        parser = new PlacedParser(lines.Text);
    }

    /// <summary>The document's values with their characters.</summary>
    /// <param name="lines">The text.</param>
    /// <param name="root">What it was read as.</param>
    public static Written Of(Lines lines, Node root)
    {
        var layout = new Layout(lines);
        layout.parser.Consume<StreamStart>();
        layout.parser.Consume<DocumentStart>();
        return layout.Value(root, 0, -1);
    }

    // after: where an empty value stands; outer: the column of the group or list around it, -1 for none.
    private Written Value(Node node, int after, int outer) => node.Kind switch
    {
        NodeKind.Scalar => Scalar(node, after, outer),
        NodeKind.Mapping => Mapping(node),
        _ => Sequence(node),
    };

    private Written Scalar(Node node, int after, int outer)
    {
        var scalar = parser.Consume<Scalar>();
        if (scalar.Style == ScalarStyle.Plain && scalar.Value.Length == 0)
        {
            return new Written(node, false, scalar.Style, after, after);
        }

        var start = lines.Offset(scalar.Start);
        var end = scalar.Style is ScalarStyle.Literal or ScalarStyle.Folded ? EndOfBlockText(start, outer) : lines.Offset(scalar.End);
        return new Written(node, false, scalar.Style, start, lines.TrimEnd(start, end));
    }

    // The lines below the mark that are blank or stand further in than the key.
    private int EndOfBlockText(int start, int outer)
    {
        var end = lines.EndOfLine(start);
        for (var number = lines.NumberAt(start) + 1; number <= lines.Count; number++)
        {
            var line = lines.Line(number);
            var blanks = line.Length - line.TrimStart(' ').Length;
            if (blanks < line.Length && blanks <= outer)
            {
                break;
            }

            end = blanks < line.Length ? lines.StartOfLine(number) + line.Length : end;
        }

        return end;
    }

    private Written Mapping(Node node)
    {
        var start = parser.Consume<MappingStart>();
        var isFlow = start.Style == MappingStyle.Flow;
        var entries = new List<(int, int, Written)>(node.Entries.Count);
        foreach (var entry in node.Entries)
        {
            var key = parser.Consume<Scalar>();
            var (from, to) = (lines.Offset(key.Start), lines.Offset(key.End));
            entries.Add((from, to, Value(entry.Value, lines.AfterColon(to), lines.Column(from))));
        }

        var end = parser.Consume<MappingEnd>();
        return isFlow
            ? new Written(node, true, default, lines.Offset(start.Start), Close(end)) { Entries = entries }
            : new Written(node, false, default, entries[0].Item1, entries[^1].Item3.End) { Entries = entries };
    }

    private Written Sequence(Node node)
    {
        var start = parser.Consume<SequenceStart>();
        var from = lines.Offset(start.Start);
        var isFlow = start.Style == SequenceStyle.Flow;
        var items = new List<Written>(node.Items.Count);
        foreach (var item in node.Items)
        {
            if (item.IsEmpty && item.Text.Length == 0)
            {
                throw new EditStopException(
                    EditProblem.NotSound, $"{node.Subject} has an item without a value.", "Write the item or take its dash away.");
            }

            items.Add(Value(item, from, lines.Column(from)));
        }

        var end = parser.Consume<SequenceEnd>();
        return new Written(node, isFlow, default, from, isFlow ? Close(end) : items[^1].End) { Items = items };
    }

    // The parser of YamlDotNet 18.1 ends brackets at their closing sign, before it.
    private int Close(ParsingEvent end) => lines.Offset(end.Start) + 1;
}
