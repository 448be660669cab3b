using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>How sure numbers are, by drawn cars.</summary>
public static class DrawnTable
{
    /// <summary>The table, a row a number: as stated, the middle 90 %, two standard deviations.</summary>
    /// <param name="results">The numbers, in readers' units.</param>
    public static FactTable Of(IReadOnlyList<DoubtResult> results)
    {
        ArgumentNullException.ThrowIfNull(results);
        var table = new FactTable("Doubt", ["as stated", "5 % below", "median", "95 % below", "± (2 s), %"]);
        foreach (var result in results)
        {
            var spread = result.StandardDeviation;
            table.Add(
                result.Measure.Key,
                result.Measure.Name,
                result.Symbol,
                "G4",
                [result.Stated, result.Central90.Low, result.Quantile(0.5), result.Central90.High, result.Stated != 0.0 ? 200.0 * spread / Math.Abs(result.Stated) : null]);
        }

        return table;
    }

    /// <summary>Which end is really the softer, and what to measure better next.</summary>
    /// <param name="studies">The study at rest, then one of passes if there is one.</param>
    /// <param name="results">Their numbers one after the other, in readers' units.</param>
    public static IEnumerable<string> Sentences(IReadOnlyList<DoubtStudy> studies, IReadOnlyList<DoubtResult> results)
    {
        ArgumentNullException.ThrowIfNull(studies);
        ArgumentNullException.ThrowIfNull(results);
        return All(studies, results);
    }

    private static IEnumerable<string> All(IReadOnlyList<DoubtStudy> studies, IReadOnlyList<DoubtResult> results)
    {
        if (!studies[0].Doubts.AreStated)
        {
            yield return "The car file states no doubts: write them behind the values (24.5 N/mm ± 5 %).";
            yield break;
        }

        var ratio = results.First(r => r.Measure == AxleCatalogue.FrequencyRatio);
        yield return DoubtSentences.SofterEnd(ratio);
        var ofPasses = results.Count - (studies.Count > 1 ? studies[1].Results.Count : 0);
        foreach (var next in results.Where((r, k) => r == ratio || k >= ofPasses).Select(DoubtSentences.MeasureNext).OfType<string>().Distinct())
        {
            yield return next;
        }

        foreach (var study in studies.Where(s => s.Refused + s.Unfinished > 0))
        {
            yield return FormattableString.Invariant($"{study.Refused} draws could not stand as a car and {study.Unfinished} passes left the model's range: they are left out.");
        }
    }
}
