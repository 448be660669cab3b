using Heaveline.Answers;
using Heaveline.Parts;

namespace Heaveline.Studies;

/// <summary>Free ranges in words.</summary>
internal static class ChooseFreeWords
{
    /// <summary>What the ranges were, and how they were gone through; null without any.</summary>
    public static Sentence? Ranges(ChooseFindings findings)
    {
        var ranges = findings.Asked.Filters.Where(filter => filter.Range is not null).ToArray();
        return ranges.Length == 0 ? null : new("ranges",
            "Free ranges: " + string.Join("; ", ranges.Select(filter => $"{filter.Place.Name()} {filter.Range!.Words(filter.Place)}"))
            + (ranges.Any(filter => !filter.Range!.Between.IsEmpty)
                ? ", and the middle of the gaps to either side of those of the first shortlist"
                : "")
            + ". Rates are those of one spring at the spring itself, dampers the present curve with all forces times one number. Nobody was "
            + "asked for a price of such parts: no setup has one.");
    }

    /// <summary>Parts of ranges that stand in no setup near the best, neighbours of a range in one phrase.</summary>
    /// <param name="findings">What was found.</param>
    /// <param name="near">Places with the options that stand in such setups.</param>
    public static IEnumerable<string> Never(ChooseFindings findings, HashSet<(int Place, int Option)> near)
    {
        var parts = findings.Parts;
        for (var place = 0; place < parts.Places.Length; place++)
        {
            if (findings.Asked.RangeAt(parts.Places[place]) is null)
            {
                continue;
            }

            var run = new List<double>();
            var own = place;
            var values = Enumerable.Range(1, parts.Space.Places[own].Options.Length - 1)
                .Select(option => (
                    Value: ChooseFree.ValueOf(findings.Asked.Car, parts.Places[own], parts.OptionOf(own, option))!.Value,
                    IsNear: near.Contains((own, option))))
                .OrderBy(one => one.Value);
            foreach (var (value, isNear) in values.Append((double.NaN, true)))
            {
                if (!isNear)
                {
                    run.Add(value);
                    continue;
                }

                if (run.Count > 0)
                {
                    var (least, most) = (ChooseRange.Words(parts.Places[own], run[0]), ChooseRange.Words(parts.Places[own], run[^1]));
                    yield return $"{(run.Count == 1 ? least : $"{least} to {most}")} as {parts.Space.Places[own].Name}";
                    run.Clear();
                }
            }
        }
    }
}
