using Heaveline.Files.Yaml;
using YamlDotNet.Core;

namespace Heaveline.Files.Editing;

/// <summary>A text by its characters and by its lines, with the habits of the person who wrote it.</summary>
internal sealed class Lines
{
    private const int UsualStep = 2;
    private readonly List<int> starts = [0];

    /// <summary>A text without byte order mark.</summary>
    public Lines(string text)
    {
        Text = text;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
            {
                starts.Add(i + 1);
            }
        }

        var first = text.AsSpan().IndexOfAny('\r', '\n');
        Break = first < 0 ? "\n" : text[first] == '\n' ? "\n" : first + 1 < text.Length && text[first + 1] == '\n' ? "\r\n" : "\r";
    }

    /// <summary>The text.</summary>
    public string Text { get; }

    /// <summary>How its lines end: as the first one does.</summary>
    public string Break { get; }

    /// <summary>Lines, an empty one after the last break included.</summary>
    public int Count => starts.Count;

    /// <summary>Blanks by which a group stands further in than its key, from the first one in the text.</summary>
    public int Step { get; private set; } = UsualStep;

    /// <summary>Blanks by which a list's dash stands further in than its key, from the first one in the text.</summary>
    public int DashStep { get; private set; } = UsualStep;

    /// <summary>The character at a mark of the parser.</summary>
    public int Offset(Mark mark) => Math.Min(Text.Length, starts[Math.Min((int)mark.Line, starts.Count) - 1] + (int)mark.Column - 1);

    /// <summary>Number of the line that a character stands in, from 1.</summary>
    public int NumberAt(int offset) => starts.BinarySearch(offset) is >= 0 and var at ? at + 1 : ~starts.BinarySearch(offset);

    /// <summary>The first character of a line.</summary>
    public int StartOfLine(int number) => starts[number - 1];

    /// <summary>A line without its break.</summary>
    public string Line(int number) => Text[starts[number - 1]..(number < starts.Count ? starts[number] : Text.Length)].TrimEnd('\r', '\n');

    /// <summary>Characters before an offset on its line.</summary>
    public int Column(int offset) => offset - starts[NumberAt(offset) - 1];

    /// <summary>Behind the last character of the line that an offset stands in, before its break.</summary>
    public int EndOfLine(int offset)
    {
        var at = Text.AsSpan(offset).IndexOfAny('\r', '\n');
        return at < 0 ? Text.Length : offset + at;
    }

    /// <summary>Behind the colon of a key, or the end of the key when none follows on its line.</summary>
    public int AfterColon(int keyEnd)
    {
        var at = keyEnd;
        while (at < Text.Length && Text[at] is ' ' or '\t')
        {
            at++;
        }

        return at < Text.Length && Text[at] == ':' ? at + 1 : keyEnd;
    }

    /// <summary>An end without the white space before it.</summary>
    public int TrimEnd(int start, int end)
    {
        while (end > start && char.IsWhiteSpace(Text[end - 1]))
        {
            end--;
        }

        return end;
    }

    /// <summary>Takes over how far groups and lists are indented in this text.</summary>
    public void Learn(Written root)
    {
        var (isStep, isDash) = (false, false);
        Learn(root, ref isStep, ref isDash);
        DashStep = isDash ? DashStep : isStep ? Step : UsualStep;
    }

    private void Learn(Written written, ref bool isStep, ref bool isDash)
    {
        foreach (var (keyStart, _, value) in written.Entries)
        {
            var further = value.IsFlow || written.IsFlow ? -1 : Column(value.Start) - Column(keyStart);
            if (!isStep && value.Node.Kind == NodeKind.Mapping && further > 0)
            {
                (Step, isStep) = (further, true);
            }
            else if (!isDash && value.Node.Kind == NodeKind.Sequence && further >= 0)
            {
                (DashStep, isDash) = (further, true);
            }

            Learn(value, ref isStep, ref isDash);
        }

        foreach (var item in written.Items)
        {
            Learn(item, ref isStep, ref isDash);
        }
    }
}
