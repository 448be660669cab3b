using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>How sure numbers are, by drawn cars.</summary>
public static class DrawnTable
{
    /// <summary>The table, a row a number: as stated, the middle 90 %, two standard deviations in the number's own unit.</summary>
    /// <param name="results">The numbers, in readers' units.</param>
    public static FactTable Of(IReadOnlyList<DoubtResult> results)
    {
        ArgumentNullException.ThrowIfNull(results);
        var table = new FactTable("Doubt", ["as stated", "5 % below", "median", "95 % below", "± (2σ)"]);
        foreach (var result in results)
        {
            var doubt = 2.0 * result.StandardDeviation;
            table.Add(
                result.Measure.Key,
                result.Measure.Name,
                result.Symbol,
                FormattableString.Invariant($"F{Digits(result.Measure, doubt)}"),
                [result.Stated, result.Central90.Low, result.Quantile(0.5), result.Central90.High, doubt]);
        }

        return table;
    }

    // As many as the number has elsewhere, and enough for two figures of its doubt.
    private static int Digits(Measure measure, double doubt) =>
        doubt > 0.0
            ? Math.Clamp(Math.Max(measure.Digits, 1 - (int)Math.Floor(Math.Log10(doubt))), measure.Digits, measure.Digits + 4)
            : measure.Digits;
}
