namespace Heaveline.Web.Pages.Cars;

/// <summary>A line of two texts laid beside each other.</summary>
/// <param name="Mark">' ' in both, '−' only in the first, '+' only in the second, '…' for lines left out that are in both.</param>
/// <param name="Text">The line.</param>
public sealed record TextChange(char Mark, string Text)
{
    private const int Around = 2;

    /// <summary>What has to be done to one text to make the other: the longest common subsequence of their lines, with two lines around each change.</summary>
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

        // Common lines at both ends are set aside, so that the table stays small for what is usual: a few lines changed.
        var head = a.Zip(b).TakeWhile(pair => pair.First == pair.Second).Count();
        var most = Math.Min(a.Length, b.Length) - head;
        var tail = Enumerable.Range(1, most).TakeWhile(n => a[^n] == b[^n]).Count();
        var all = new List<TextChange>();
        all.AddRange(a[..head].Select(line => new TextChange(' ', line)));
        all.AddRange(Middle(a[head..^tail], b[head..^tail]));
        all.AddRange(a[(a.Length - tail)..].Select(line => new TextChange(' ', line)));
        return Near(all);
    }

    private static string[] Lines(string text) => text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n');

    private static IEnumerable<TextChange> Middle(string[] a, string[] b)
    {
        // Beyond this the table would be too large; everything is then taken as changed.
        const int Most = 4_000_000;
        if ((long)a.Length * b.Length > Most)
        {
            return [.. a.Select(line => new TextChange('−', line)), .. b.Select(line => new TextChange('+', line))];
        }

        var common = new int[a.Length + 1, b.Length + 1];
        for (var i = a.Length - 1; i >= 0; i--)
        {
            for (var j = b.Length - 1; j >= 0; j--)
            {
                common[i, j] = a[i] == b[j] ? common[i + 1, j + 1] + 1 : Math.Max(common[i + 1, j], common[i, j + 1]);
            }
        }

        var lines = new List<TextChange>();
        for (int i = 0, j = 0; i < a.Length || j < b.Length;)
        {
            if (i < a.Length && j < b.Length && a[i] == b[j])
            {
                lines.Add(new TextChange(' ', a[i++]));
                j++;
            }
            else if (i < a.Length && (j == b.Length || common[i + 1, j] >= common[i, j + 1]))
            {
                lines.Add(new TextChange('−', a[i++]));
            }
            else
            {
                lines.Add(new TextChange('+', b[j++]));
            }
        }

        return lines;
    }

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
