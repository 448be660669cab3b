using System.Text.RegularExpressions;
using Heaveline.Measures;

namespace Heaveline.Finding;

/// <summary>
/// What is looked for as it is typed into one box: words, and with commas between them numbers that a standing car keeps ("saloon, ratio at most 1,
/// front frequency at most 1.3 Hz"). Words before a number are looked for too.
/// </summary>
public static partial class FindWords
{
    // No key has more words.
    private const int LongestKey = 8;

    /// <summary>Reads it; what is wrong with a number, a sentence each, where one is; blank for nothing.</summary>
    /// <param name="typed">What is typed.</param>
    public static (FindQuery Query, string Problem) Read(string typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        var (words, bounds, problems) = (new List<string>(), new List<MeasureBound>(), new List<string>());
        foreach (var part in typed.Split([',', ';'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (Bound().Match(part) is not { Success: true } match)
            {
                words.AddRange(Words(part));
                continue;
            }

            var before = Words(match.Groups["before"].Value);
            var key = Math.Max(1, Enumerable.Range(1, Math.Min(LongestKey, before.Length)).LastOrDefault(n => IsKey(before[^n..])));
            var named = string.Join('-', before.TakeLast(key)).ToLowerInvariant();
            var (bound, problem) = MeasureBoundText.Read($"{named} {part[match.Groups["at"].Index..]}", GarageIndex.Numbers);
            words.AddRange(before.SkipLast(key));
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

    private static bool IsKey(string[] words) =>
        string.Join('-', words).ToLowerInvariant() is var key && GarageIndex.Numbers.Any(measure => measure.Key == key);

    private static string[] Words(string part) => part.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);

    [GeneratedRegex(@"^(?<before>.*?)(?<![^\s])(?<at>at\s+(?:least|most)(?![^\s]).*)$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex Bound();
}
