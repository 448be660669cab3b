namespace Heaveline.Quantities;

/// <summary>The known word nearest to a mistyped one, for "did you mean".</summary>
public static class NearestWord
{
    /// <summary>
    /// The nearest word by edits (insert, delete, replace, swap of neighbours: the restricted Damerau–Levenshtein distance), letter case and
    /// the marks between words aside; null when none is within a third of the word's length.
    /// </summary>
    public static string? Of(string word, IEnumerable<string> known)
    {
        var typed = Bare(word);
        var best = default(string);
        var least = 1 + Math.Max(1, typed.Length / 3);
        foreach (var candidate in known)
        {
            var bare = Bare(candidate);
            var distance = Math.Abs(bare.Length - typed.Length) >= least ? least : Distance(typed, bare);
            if (distance < least && distance < Math.Max(typed.Length, bare.Length))
            {
                (best, least) = (candidate, distance);
            }
        }

        return best;
    }

    private static string Bare(string word) =>
        string.Concat(word.Take(64).Where(c => c is not (' ' or '-' or '_')).Select(char.ToLowerInvariant));

    private static int Distance(string a, string b)
    {
        var table = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            for (var j = 0; j <= b.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    table[i, j] = i + j;
                    continue;
                }

                var same = a[i - 1] == b[j - 1] ? 0 : 1;
                var edits = Math.Min(Math.Min(table[i - 1, j], table[i, j - 1]) + 1, table[i - 1, j - 1] + same);
                var swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
                table[i, j] = swapped ? Math.Min(edits, table[i - 2, j - 2] + 1) : edits;
            }
        }

        return table[a.Length, b.Length];
    }
}
