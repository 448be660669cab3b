namespace Heaveline.Files.Roads;

/// <summary>Where the points of a measured profile stand in its text: four bytes for each, for there are millions.</summary>
internal sealed class MeasuredPoints
{
    private readonly List<int> starts = [];

    // Points that stand on lines one after the other, by the first of them: no more than there are blank lines, comments and refusals.
    private readonly List<int> firsts = [];
    private readonly List<int> numbers = [];

    /// <summary>How many there are.</summary>
    internal int Count => starts.Count;

    /// <summary>Makes room.</summary>
    /// <param name="most">As many as there can be.</param>
    internal void Expect(int most) => starts.EnsureCapacity(most);

    /// <summary>The next point's line.</summary>
    internal void Add(MeasuredLine line)
    {
        if (firsts.Count == 0 || line.Number != numbers[^1] + (starts.Count - firsts[^1]))
        {
            firsts.Add(starts.Count);
            numbers.Add(line.Number);
        }

        starts.Add(line.Start);
    }

    /// <summary>The line of a point.</summary>
    internal MeasuredLine At(SourceText source, int point)
    {
        var found = firsts.BinarySearch(point);
        var run = found >= 0 ? found : ~found - 1;
        return MeasuredLine.From(source, numbers[run] + (point - firsts[run]), starts[point]).Line;
    }
}
