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
                Key(result),
                result.Name,
                result.Symbol.Length > 0 ? result.Symbol : "–",
                "G4",
                [result.Stated, result.Central90.Low, result.Quantile(0.5), result.Central90.High, result.Stated != 0.0 ? 200.0 * spread / Math.Abs(result.Stated) : null]);
        }

        return table;
    }

    /// <summary>The key of a number's row.</summary>
    /// <param name="result">The number.</param>
    public static string Key(DoubtResult result)
    {
        ArgumentNullException.ThrowIfNull(result);
        return result.Name.Replace(' ', '-').Replace("/", "-over-", StringComparison.Ordinal);
    }
}
