using System.Globalization;
using Heaveline.Answers;
using Heaveline.Doubts;
using Heaveline.Figures;
using Heaveline.Measures;

namespace Heaveline.Studies;

/// <summary>The numbers of a standing car with what its doubts make of each, a column a load state, by slopes.</summary>
internal static class LoadsTable
{
    /// <summary>The tables of a car, with a sentence on the doubts.</summary>
    /// <param name="cars">One car at rest under each load state.</param>
    public static IEnumerable<Block> Of(IReadOnlyList<CarAtRest> cars)
    {
        var car = cars[0].Model.Car;
        var parts = DescribeTable.Rows(cars);
        FirstOrder[] studies = [.. cars.Select(c => FirstOrder.Of(car, c.Model.Load, [.. parts.SelectMany(p => p.Rows).Select(r => r.Output)]))];
        var at = 0;
        foreach (var (title, rows) in parts)
        {
            var table = new TablePanel
            {
                Columns =
                [
                    new TableColumn { Heading = "quantity", Alignment = ColumnAlignment.Left },
                    new TableColumn { Heading = "unit", Alignment = ColumnAlignment.Left },
                    .. cars.Select(c => new TableColumn { Heading = c.Model.Load.Name }),
                ],
                Rows =
                [
                    .. rows
                        .Select((row, j) => (row.Row, Results: studies.Select(s => s.Results[at + j]).ToList()))
                        .Where(row => row.Results.Any(r => double.IsFinite(r.Stated)))
                        .Select(row => TableRow.Of([row.Row.Label, row.Row.Unit, .. row.Results.Select(r => Cell(row.Row.Factor * r.Stated, 2.0 * row.Row.Factor * r.StandardDeviation, row.Row.Format))])),
                ],
            };
            yield return new Tabulated { Caption = $"{car.Name}, {char.ToLowerInvariant(title[0])}{title[1..]}, by load state", Table = table };
            at += rows.Count;
        }

        yield return Paragraph.Of(studies.Any(s => s.Doubts.AreStated)
            ? "± is two standard deviations from the doubts in the car file and from what was estimated for it; where it is missing the doubt is smaller than the last digit shown, or none is stated."
            : "The car file states no doubts: write them behind the values (24.5 N/mm ± 5 %). What stands behind ± comes from what was estimated for it.");
    }

    /// <summary>A value and its doubt to the same decimals, the doubt with two digits; the value as usual where the doubt is below its last digit.</summary>
    /// <param name="value">As shown.</param>
    /// <param name="doubt">As shown, 0 or above.</param>
    /// <param name="format">"F" and the usual decimals.</param>
    internal static string Cell(double value, double doubt, string format)
    {
        if (!double.IsFinite(value))
        {
            return "–";
        }

        var usual = int.Parse(format.AsSpan(1), CultureInfo.InvariantCulture);
        if (!double.IsFinite(doubt) || doubt < 0.5 * Math.Pow(10.0, -usual))
        {
            return FactText.Number(value, format);
        }

        var decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(doubt)), 0, usual + 1);
        var shown = "F" + decimals.ToString(CultureInfo.InvariantCulture);
        return $"{FactText.Number(value, shown)} ± {FactText.Number(doubt, shown)}";
    }
}
