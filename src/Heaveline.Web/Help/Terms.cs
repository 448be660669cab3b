using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Heaveline.Measures;
using Heaveline.Studies;

namespace Heaveline.Web.Help;

/// <summary>What the words on the pages mean: the trade's as the glossary has them, numbers as the list of measures has them.</summary>
internal static class Terms
{
    private const string Seat = "seat-";
    private const string Wheel = "wheel-";

    private static readonly ImmutableArray<Measure> Measures = [.. Glossary.Subjects.SelectMany(subject => subject.Measures)];

    // A measure of each seat or wheel stands once in the list, and in a table under the name of its place.
    private static readonly ImmutableArray<(string Tail, Measure Measure)> Placed =
    [
        .. from measure in Measures
           from place in new[] { Seat, Wheel }
           where measure.Key.StartsWith(place, StringComparison.Ordinal)
           let tail = measure.Key[(place.Length - 1)..]
           orderby tail.Length descending
           select (tail, measure),
    ];

    /// <summary>The words of the trade, each with its meaning, as they stand in the glossary.</summary>
    public static ImmutableSortedDictionary<string, string> Trade { get; } = Read().ToImmutableSortedDictionary(StringComparer.OrdinalIgnoreCase);

    /// <summary>What a number of a table is, by its key; null where the list of measures does not have it.</summary>
    /// <param name="key">The row's key.</param>
    public static string? OfNumber(string key)
    {
        ArgumentNullException.ThrowIfNull(key);
        return (Measures.FirstOrDefault(measure => measure.Key == key)
            ?? Placed.FirstOrDefault(one => key.EndsWith(one.Tail, StringComparison.Ordinal)).Measure)?.Says;
    }

    /// <summary>A sentence in pieces: the first time that a word of the trade stands in it, with its meaning; all else without.</summary>
    /// <param name="text">The sentence.</param>
    public static IReadOnlyList<(string Words, string? Says)> Marked(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var pieces = new List<(string, string?)>();
        var (seen, from) = (new HashSet<string>(), 0);
        foreach (var found in Marks.Matches(text).Where(found => seen.Add(Told(found.Value))))
        {
            pieces.Add((text[from..found.Index], null));
            pieces.Add((found.Value, Trade[Told(found.Value)]));
            from = found.Index + found.Length;
        }

        pieces.Add((text[from..], null));
        return [.. pieces.Where(piece => piece.Item1.Length > 0)];
    }

    // Words that mean what they mean to everybody elsewhere stay plain in a sentence: those of the trade have two parts, or capitals.
    private static Regex Marks { get; } = new(
        $"""\b({string.Join('|', Trade.Keys.Where(IsOfTheTrade).OrderByDescending(word => word.Length).Select(Regex.Escape))})s?\b""",
        RegexOptions.CultureInvariant);

    private static bool IsOfTheTrade(string word) =>
        !word.Contains(',', StringComparison.Ordinal) && (word.Contains(' ', StringComparison.Ordinal) || word.Count(char.IsUpper) > 1)
        && word is not ("load state" or "car file" or "bounce or heave");

    private static string Told(string found) => Trade.ContainsKey(found) ? found : found[..^1];

    // The first table of the page, row by row: a word, or several with commas between, and what they mean.
    private static Dictionary<string, string> Read()
    {
        using var page = new StreamReader(
            typeof(Terms).Assembly.GetManifestResourceStream("glossary.md")
            ?? throw new InvalidOperationException("The glossary is not among what was built."));
        var words = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        while (page.ReadLine() is { } line && !line.StartsWith("## ", StringComparison.Ordinal))
        {
            var cells = line.Split('|', StringSplitOptions.TrimEntries);
            if (cells is ["", var word, var meaning, ""] && word != "word" && !word.StartsWith('-'))
            {
                words[word] = meaning;
            }
        }

        return words;
    }
}
