using Heaveline.Answers;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Studies;

/// <summary>The numbers of a standing car with what its doubts make of each, a column a load state, by slopes.</summary>
internal static class LoadsTable
{
    /// <summary>The tables of a car, with a sentence on the doubts.</summary>
    /// <param name="answer">The car at rest, with its doubts by slopes.</param>
    public static IEnumerable<Block> Of(DescribeAnswer answer)
    {
        foreach (var (title, rows) in answer.Rows)
        {
            var table = new TablePanel
            {
                Columns =
                [
                    new TableColumn { Heading = "quantity", Alignment = ColumnAlignment.Left },
                    new TableColumn { Heading = "unit", Alignment = ColumnAlignment.Left },
                    .. answer.Models.Select(m => new TableColumn { Heading = m.Load.Name }),
                ],
                Rows =
                [
                    .. rows.Select(row =>
                        TableRow.Of([row.Measure.Label, row.Measure.Unit.Symbol, .. row.Cells.Select(cell => Cell(row.Print(cell)))]) with
                        {
                            Unit = row.Measure.Unit.Symbol,
                        }),
                ],
            };
            yield return new Tabulated { Caption = $"{answer.Asked.Car.Name}, {FirstLetter.Lowered(title)}, by load state", Table = table };
        }

        yield return Paragraph.Of(answer.NoSlopes ?? (answer.Slopes.Any(s => s.Doubts.AreStated)
            ? "± is two standard deviations from the doubts in the car file and from what was estimated for it; "
                + "where it is missing the doubt is smaller than the last digit shown, or none is stated."
            : "The car file states no doubts: write them behind the values (24.5 N/mm ± 5 %). What stands behind ± "
                + "comes from what was estimated for it."));
    }

    private static string Cell((string Value, string? Doubt) printed) => printed.Doubt is { } doubt ? $"{printed.Value} ± {doubt}" : printed.Value;
}
