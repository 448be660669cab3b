using Heaveline.Files.Yaml;

namespace Heaveline.Files.Editing;

/// <summary>Finds the part of a text that goes with a key or an item.</summary>
/// <param name="lines">The text.</param>
internal sealed class Removal(Lines lines)
{
    private string Text => lines.Text;

    /// <summary>What to take out.</summary>
    /// <param name="parent">The group or list.</param>
    /// <param name="at">Index of the entry or item.</param>
    public Splice Of(Written parent, int at)
    {
        var count = parent.Items.Count + parent.Entries.Count;
        var what = parent.Node.Kind == NodeKind.Mapping ? parent.Node.Entries[at].Key : $"item {at + 1}";
        if (parent.IsFlow)
        {
            var (start, end) = (Start(parent, at), End(parent, at));
            return count == 1 ? Over(start, end)
                : at == 0 ? Uncommented(start, Start(parent, 1), what)
                : Uncommented(End(parent, at - 1), end, what);
        }

        if (count == 1)
        {
            throw new EditStopException(
                EditProblem.OnlyOne, $"{what} is all that {parent.Node.Subject} has.", $"Take out {parent.Node.Subject} as a whole.");
        }

        var from = Start(parent, at);
        var line = lines.StartOfLine(lines.NumberAt(from));
        if (!Text.AsSpan(line, from - line).IsWhiteSpace())
        {
            // The first key of an item, on the line of its dash: the next one moves up.
            return Uncommented(from, Start(parent, at + 1), what);
        }

        // The line break before it goes too, so that what follows keeps its own.
        var last = lines.EndOfLine(End(parent, at));
        var isFirst = lines.NumberAt(from) == 1;
        var next = lines.NumberAt(last) < lines.Count ? lines.StartOfLine(lines.NumberAt(last) + 1) : Text.Length;
        return isFirst ? Over(0, next) : Over(EndOfLineBefore(line), last);
    }

    private int EndOfLineBefore(int startOfLine)
    {
        var end = startOfLine - 1;
        return end > 0 && Text[end] == '\n' && Text[end - 1] == '\r' ? end - 1 : end;
    }

    private int Start(Written parent, int at)
    {
        if (parent.Node.Kind == NodeKind.Mapping)
        {
            return parent.Entries[at].KeyStart;
        }

        return parent.IsFlow ? parent.Items[at].Start : Dash(parent, at);
    }

    // All dashes of a list stand in one column.
    private int Dash(Written list, int at)
    {
        var column = lines.Column(list.Start);
        for (var number = lines.NumberAt(list.Items[at].Start); number > 0; number--)
        {
            var line = lines.Line(number);
            if (line.Length > column && line[column] == '-' && line.AsSpan(0, column).IndexOfAnyExcept(' ', '-') < 0)
            {
                return lines.StartOfLine(number) + column;
            }
        }

        return list.Start;
    }

    private static int End(Written parent, int at) => parent.Node.Kind == NodeKind.Mapping ? parent.Entries[at].Value.End : parent.Items[at].End;

    private Splice Uncommented(int start, int end, string what) => Text.AsSpan(start, end - start).Contains('#') && HasComment(start, end)
        ? throw new EditStopException(
            EditProblem.CommentInside,
            $"a comment stands among the lines of {what} and its neighbour.",
            "Take it out in the file itself, where you can say which of the two it belongs to.")
        : Over(start, end);

    private bool HasComment(int start, int end)
    {
        for (var i = start; i < end; i++)
        {
            if (Text[i] == '#' && (i == 0 || char.IsWhiteSpace(Text[i - 1])))
            {
                return true;
            }
        }

        return false;
    }

    private Splice Over(int start, int end) => new(start, Text[start..end], "");
}
