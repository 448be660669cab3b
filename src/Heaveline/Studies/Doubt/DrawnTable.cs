using Heaveline.Answers;
using Heaveline.Doubts;

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
                [
                    result.Stated,
                    result.Central90.Low,
                    result.Quantile(0.5),
                    result.Central90.High,
                    result.Stated != 0.0 ? 200.0 * spread / Math.Abs(result.Stated) : null,
                ]);
        }

        return table;
    }
}
