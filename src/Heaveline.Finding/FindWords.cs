using System.Text.RegularExpressions;
using Heaveline.Measures;

namespace Heaveline.Finding;

/// <summary>
/// What is looked for as it is typed into one box: words, and with commas between them numbers that a standing car keeps ("saloon, ratio at most 1,
/// front frequency at most 1.3 Hz"). Words before a number are looked for too.
/// </summary>
public static partial class FindWords
{
    // No number's name has more words.
    private const int LongestName = 12;

    // A comma stands in these, and parts nothing.
    private static readonly (string Name, string Key)[] WithComma =
    [
        .. from measure in GarageIndex.Numbers
           from name in MeasureBoundText.NamesOf(measure)
           where name.Contains(',', StringComparison.Ordinal) && MeasureBoundText.Named(name, GarageIndex.Numbers).Count == 1
           select (name, measure.Key),
    ];

    /// <summary>Reads it; what is wrong with a number, a sentence each, where one is; blank for nothing.</summary>
    /// <param name="typed">What is typed.</param>
    public static (FindQuery Query, string Problem) Read(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var (words, bounds, problems) = (new List<string>(), new List<MeasureBound>(), new List<string>());
        foreach (var (name, key) in WithComma)
        {
            typed = typed.Replace(name, key, StringComparison.OrdinalIgnoreCase);
        }

        foreach (var part in Separator().Split(typed).Select(part => part.Trim()).Where(part => part.Length > 0))
        {
            if (Bound().Match(part) is not { Success: true } match)
            {
                words.AddRange(Words(part));
                continue;
            }

            var before = Words(match.Groups["before"].Value);
            var length = Math.Max(1, Enumerable.Range(1, Math.Min(LongestName, before.Length)).LastOrDefault(n => IsName(before[^n..])));
            var named = string.Join(' ', before.TakeLast(length));
            var (bound, problem) = MeasureBoundText.Read($"{named} {part[match.Groups["at"].Index..]}", GarageIndex.Numbers);
            words.AddRange(before.SkipLast(length));
            if (bound is null)
            {
                problems.Add(problem);
            }
            else
            {
                bounds.Add(bound);
            }
        }

        return (new FindQuery { Words = words, Bounds = bounds }, string.Join(' ', problems));
    }

    private static bool IsName(string[] words) => MeasureBoundText.Named(string.Join(' ', words), GarageIndex.Numbers).Count > 0;

    private static string[] Words(string part) => part.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);

    // A comma between two digits belongs to its number.
    [GeneratedRegex("(?<![0-9]),|,(?![0-9])|;", RegexOptions.CultureInvariant)]
    private static partial Regex Separator();

    [GeneratedRegex(@"^(?<before>.*?)(?<![^\s])(?<at>at\s+(?:least|most)(?![^\s]).*)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Bound();
}
