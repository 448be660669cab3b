using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Measures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The numbers of a standing car with what its doubts make of each, a column a load state, by slopes.</summary>
internal static class LoadsTable
{
    /// <summary>The tables of a car, with a sentence on the doubts.</summary>
    /// <param name="answer">The car at rest, with its doubts by slopes.</param>
    public static IEnumerable<Block> Of(DescribeAnswer answer)
    {
        var (car, rests) = (answer.Asked.Car, answer.Rests);
        foreach (var (title, measures) in RestCatalogue.Groups)
        {
            var table = new TablePanel
            {
                Columns =
                [
                    new TableColumn { Heading = "quantity", Alignment = ColumnAlignment.Left },
                    new TableColumn { Heading = "unit", Alignment = ColumnAlignment.Left },
                    .. rests.Select(r => new TableColumn { Heading = r.Model.Load.Name }),
                ],
                Rows =
                [
                    .. measures
                        .Select(measure => (Measure: measure, Values: rests.Select((rest, k) => Value(answer, rest, measure, k)).ToList()))
                        .Where(row => !row.Measure.IsNothing(row.Values.Select(v => v.Stated)))
                        .Select(row => TableRow.Of([row.Measure.Label, row.Measure.Unit.Symbol, .. row.Values.Select(v => Cell(row.Measure, v))]) with
                        {
                            Unit = row.Measure.Unit.Symbol,
                        }),
                ],
            };
            yield return new Tabulated { Caption = $"{car.Name}, {FirstLetter.Lowered(title)}, by load state", Table = table };
        }

        yield return Paragraph.Of(answer.NoSlopes ?? (answer.Slopes.Any(s => s.Doubts.AreStated)
            ? "± is two standard deviations from the doubts in the car file and from what was estimated for it; "
                + "where it is missing the doubt is smaller than the last digit shown, or none is stated."
            : "The car file states no doubts: write them behind the values (24.5 N/mm ± 5 %). What stands behind ± "
                + "comes from what was estimated for it."));
    }

    /// <summary>
    /// A value and its doubt to the same decimals, the doubt with two digits; the value as usual where the doubt is below its last digit.
    /// </summary>
    /// <param name="value">As shown.</param>
    /// <param name="doubt">As shown, 0 or above.</param>
    /// <param name="digits">The usual decimals.</param>
    internal static string Cell(double value, double doubt, int digits)
    {
        if (!double.IsFinite(value))
        {
            return "–";
        }

        if (!double.IsFinite(doubt) || doubt < 0.5 * Math.Pow(10.0, -digits))
        {
            return Numeral.Of(value, digits);
        }

        var decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(doubt)), 0, digits + 1);
        return $"{Numeral.Of(value, decimals)} ± {Numeral.Of(doubt, decimals)}";
    }

    private static string Cell(Measure measure, (double Stated, double Deviation) value) =>
        Cell(measure.Unit.Of(value.Stated), 2.0 * measure.Unit.Of(value.Deviation), measure.Digits);

    private static (double Stated, double Deviation) Value(DescribeAnswer answer, CarAtRest rest, Measure<CarAtRest> measure, int load) =>
        answer.Slopes.Count > 0 && answer.SlopesOf(measure, load) is var slopes ? (slopes.Stated, slopes.StandardDeviation) : (measure.Of(rest), 0.0);
}
