using DiffPlex;

namespace Heaveline.Web.Pages.Cars;

/// <summary>A line of two texts laid beside each other.</summary>
/// <param name="Mark">' ' in both, '−' only in the first, '+' only in the second, '…' for lines left out that are in both.</param>
/// <param name="Text">The line.</param>
public sealed record TextChange(char Mark, string Text)
{
    private const int Around = 2;

    /// <summary>What has to be done to one text to make the other: as few lines as can be, with two lines around each change.</summary>
    /// <param name="first">The text to begin with.</param>
    /// <param name="second">The text to end with.</param>
    /// <returns>Nothing when both have the same lines.</returns>
    public static IReadOnlyList<TextChange> Between(string first, string second)
    {
        var (a, b) = (Lines(first), Lines(second));
        if (a.SequenceEqual(b))
        {
            return [];
        }

        // Common lines at both ends are set aside, so that little is left to search for what is usual: a few lines changed.
        var head = a.Zip(b).TakeWhile(pair => pair.First == pair.Second).Count();
        var most = Math.Min(a.Length, b.Length) - head;
        var tail = Enumerable.Range(1, most).TakeWhile(n => a[^n] == b[^n]).Count();
        return Near([.. Same(a[..head]), .. Middle(a[head..^tail], b[head..^tail]), .. Same(a[^tail..])]);
    }

    private static string[] Lines(string text) => text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');

    private static IEnumerable<TextChange> Middle(string[] a, string[] b)
    {
        // Beyond this the search would take seconds; everything is then taken as changed.
        const int Most = 4_000_000;
        if (a.Length == 0 || b.Length == 0 || (long)a.Length * b.Length > Most)
        {
            return [.. Gone(a), .. Added(b)];
        }

        var lines = new List<TextChange>();
        var at = 0;
        // A blank stands before each line, since the library takes a single empty line for none.
        static string Text(string[] lines) => string.Join('\n', lines.Select(line => ' ' + line));
        var diff = Differ.Instance.CreateLineDiffs(Text(a), Text(b), ignoreWhitespace: false);
        foreach (var block in diff.DiffBlocks)
        {
            lines.AddRange(Same(a[at..block.DeleteStartA]));
            lines.AddRange(Gone(a.AsSpan(block.DeleteStartA, block.DeleteCountA).ToArray()));
            lines.AddRange(Added(b.AsSpan(block.InsertStartB, block.InsertCountB).ToArray()));
            at = block.DeleteStartA + block.DeleteCountA;
        }

        return [.. lines, .. Same(a[at..])];
    }

    private static IEnumerable<TextChange> Same(string[] lines) => lines.Select(line => new TextChange(' ', line));

    private static IEnumerable<TextChange> Gone(string[] lines) => lines.Select(line => new TextChange('−', line));

    private static IEnumerable<TextChange> Added(string[] lines) => lines.Select(line => new TextChange('+', line));

    private static IReadOnlyList<TextChange> Near(List<TextChange> all)
    {
        bool IsNear(int at) => Enumerable.Range(at - Around, (2 * Around) + 1).Any(n => n >= 0 && n < all.Count && all[n].Mark != ' ');
        var shown = new List<TextChange>();
        for (var n = 0; n < all.Count; n++)
        {
            if (IsNear(n))
            {
                shown.Add(all[n]);
            }
            else if (shown.Count == 0 || shown[^1].Mark != '…')
            {
                shown.Add(new TextChange('…', ""));
            }
        }

        return shown;
    }
}
