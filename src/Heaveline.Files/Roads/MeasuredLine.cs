namespace Heaveline.Files.Roads;

/// <summary>Where a line of a measured profile stands in its text: its cells are cut out anew when one must be shown.</summary>
/// <param name="Number">Line, from 1.</param>
/// <param name="Start">Its first character in the text.</param>
/// <param name="Length">Its characters, line break not counted.</param>
internal readonly record struct MeasuredLine(int Number, int Start, int Length)
{
    /// <summary>The line that begins at a place, and where the next one begins.</summary>
    internal static (MeasuredLine Line, int Next) From(SourceText source, int number, int start)
    {
        var length = source.Text.AsSpan(start).IndexOf('\n');
        var end = length < 0 ? source.Text.Length : start + length;
        return (new MeasuredLine(number, start, source.Text.AsSpan(start, end - start).TrimEnd('\r').Length), end + 1);
    }

    /// <summary>The line itself.</summary>
    internal ReadOnlySpan<char> In(SourceText source) => source.Text.AsSpan(Start, Length);

    /// <summary>A cell of it, from 0.</summary>
    internal Cell Cell(SourceText source, int place) => Roads.Cell.Of(In(source).ToString(), Number)[place];
}
