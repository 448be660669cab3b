using Heaveline.Files.Yaml;
using YamlDotNet.Core;

namespace Heaveline.Files.Editing;

/// <summary>Finds the one part of a text that an edit replaces.</summary>
/// <param name="lines">The text.</param>
/// <param name="edit">The edit.</param>
/// <param name="values">How new values are written.</param>
internal sealed class TextEditing(Lines lines, KeyEdit edit, ValueText values)
{
    private string Text => lines.Text;

    /// <summary>What to replace.</summary>
    /// <param name="root">Where every value stands.</param>
    /// <param name="kind">How the document is written; null when unknown.</param>
    /// <exception cref="EditStopException">The edit has no place in the document, or cannot be made there for sure.</exception>
    public Splice Splice(Written root, Kind? kind)
    {
        var written = root;
        for (var depth = 0; depth < edit.Path.Count; depth++)
        {
            var part = edit.Path[depth];
            var at = KeyOrder.Find(written.Node, part);
            if (at < 0)
            {
                return edit.Kind == KeyEditKind.Remove || written.Node.Kind == NodeKind.Sequence
                    ? throw KeyOrder.Missing(written.Node, part)
                    : Added(written, part, KeyOrder.Wrapped([.. edit.Path.Skip(depth + 1)], KeyOrder.Brought(edit)), kind);
            }

            if (edit.Kind == KeyEditKind.Remove && depth == edit.Path.Count - 1)
            {
                return new Removal(lines).Of(written, at);
            }

            var isEntry = written.Node.Kind == NodeKind.Mapping;
            var child = isEntry ? written.Entries[at].Value : written.Items[at];
            kind = KeyOrder.Under(written.Node, kind, part);
            if (depth == edit.Path.Count - 1 && edit.Kind == KeyEditKind.Append && child.Node.Kind == NodeKind.Sequence)
            {
                return Appended(child);
            }

            if (depth == edit.Path.Count - 1 || (child.Node.IsEmpty && edit.Kind != KeyEditKind.Remove))
            {
                return Replaced(written, at, child, KeyOrder.Wrapped([.. edit.Path.Skip(depth + 1)], KeyOrder.Brought(edit)), kind);
            }

            written = child;
        }

        throw new InvalidOperationException("An edit has a path.");
    }

    private Splice Added(Written group, string key, Node value, Kind? kind)
    {
        var place = KeyOrder.Place(group.Node, key, kind);
        if (group.IsFlow)
        {
            var entry = values.OnOneLine(Node.Group(KeyValuePair.Create(key, value)))[1..^1];
            return group.Entries.Count == 0 ? Insert(group.Start + 1, entry)
                : place > 0 ? Insert(group.Entries[place - 1].Value.End, $", {entry}")
                : Insert(group.Entries[0].KeyStart, $"{entry}, ");
        }

        var column = lines.Column(group.Entries[0].KeyStart);
        var written = values.Entry(key, value, column);
        return place > 0
            ? Insert(lines.EndOfLine(group.Entries[place - 1].Value.End), NewLine(column) + written)
            : Insert(group.Entries[0].KeyStart, written + NewLine(column));
    }

    private Splice Appended(Written list)
    {
        if (list.IsFlow)
        {
            var item = values.OnOneLine(edit.Value!);
            return list.Items.Count == 0 ? Insert(list.Start + 1, item) : Insert(list.Items[^1].End, $", {item}");
        }

        var column = lines.Column(list.Start);
        return Insert(lines.EndOfLine(list.End), NewLine(column) + values.Item(edit.Value!, column));
    }

    private Splice Replaced(Written parent, int at, Written old, Node value, Kind? kind)
    {
        if (old.IsBlockText)
        {
            throw new EditStopException(
                EditProblem.BlockText,
                $"{old.Node.Subject} is a text over several lines after {Text[old.Start]}.",
                "Edit the text in the file itself, or take the key out and write it anew.");
        }

        // One word of a choice, a number or a text: as the old one was written; true and false must stand without quotes.
        if (value.Kind == NodeKind.Scalar && old.Node.Kind == NodeKind.Scalar && !value.IsEmpty && !old.Node.IsEmpty)
        {
            var style = kind is YesNoKind ? ScalarStyle.Plain : ScalarText.StyleAfter(old.Node.Text, old.Style, parent.IsFlow);
            return Over(old.Start, old.End, ScalarText.Of(value.Text, parent.IsFlow, style, values.AlwaysQuoted));
        }

        if (parent.IsFlow || old.IsFlow || parent.Node.Kind == NodeKind.Sequence)
        {
            return InPlace(parent, old, value);
        }

        var (keyStart, keyEnd, _) = parent.Entries[at];
        var colon = lines.AfterColon(keyEnd);
        var written = values.AfterKey(value, lines.Column(keyStart), colon - keyStart + 1);
        if (old.Node.Kind == NodeKind.Scalar)
        {
            // A comment behind the old value stays on the key's line.
            var end = lines.EndOfLine(old.End);
            return written.StartsWith(' ') ? Over(colon, old.End, written) : Over(colon, end, Text[old.End..end].TrimEnd() + written);
        }

        var line = lines.EndOfLine(colon);
        return Over(colon, lines.EndOfLine(old.End), written.StartsWith(' ') ? written + Text[colon..line].TrimEnd() : Text[colon..line] + written);
    }

    // Where the old value begins on the line of its dash or its bracket, the new one begins too.
    private Splice InPlace(Written parent, Written old, Node value)
    {
        var isFlow = parent.IsFlow || old.IsFlow;
        var written = isFlow ? values.OnOneLine(value) : values.Item(value, lines.Column(parent.Start))[2..];
        if (old is { Node.Kind: NodeKind.Scalar, Style: ScalarStyle.Plain } && old.Start == old.End)
        {
            written = " " + written;
        }

        var end = isFlow || old.Node.Kind == NodeKind.Scalar ? old.End : lines.EndOfLine(old.End);
        return Over(old.Start, end, written);
    }

    private string NewLine(int column) => lines.Break + new string(' ', column);

    private Splice Insert(int at, string text) => new(at, "", text);

    private Splice Over(int start, int end, string text) => new(start, Text[start..end], text);
}
