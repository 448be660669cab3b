namespace Heaveline.Files.Roads;

/// <summary>Where a line of a measured profile stands in its text: its cells are cut out anew when one must be shown.</summary>
/// <param name="Number">Line, from 1.</param>
/// <param name="Start">Its first character in the text.</param>
/// <param name="Length">Its characters, line break not counted.</param>
internal readonly record struct MeasuredLine(int Number, int Start, int Length)
{
    /// <summary>The line itself.</summary>
    internal ReadOnlySpan<char> In(SourceText source) => source.Text.AsSpan(Start, Length);

    /// <summary>A cell of it, from 0.</summary>
    internal Cell Cell(SourceText source, int place) => Roads.Cell.Of(In(source).ToString(), Number)[place];
}
