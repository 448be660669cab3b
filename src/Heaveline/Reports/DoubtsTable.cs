using System.Globalization;
using Heaveline.Cars;
using Heaveline.Figures;
using Heaveline.Insight;
using Heaveline.Models;

namespace Heaveline.Reports;

/// <summary>The numbers of a standing car with their doubts, a column a load state, by slopes.</summary>
internal static class DoubtsTable
{
    private const double Degrees = 180.0 / Math.PI;

    public static IEnumerable<Block> Of(Car car, IReadOnlyList<RideModel> models)
    {
        FirstOrder[] studies = [.. models.Select(m => FirstOrder.Of(car, m.Load, StaticOutput.All))];
        if (studies.All(s => s.Doubts.Sources.Count == 0))
        {
            yield return Paragraph.Of("The car file states no doubts, so none can be given here: write them behind the values (24.5 N/mm ± 5 %).");
            yield break;
        }

        yield return new Tabulated
        {
            Caption = $"{car.Name}: how sure these numbers are (± two standard deviations, from the doubts in the car file)",
            Table = new TablePanel
            {
                Columns =
                [
                    new TableColumn { Heading = "quantity", Alignment = ColumnAlignment.Left },
                    new TableColumn { Heading = "unit", Alignment = ColumnAlignment.Left },
                    .. models.Select(m => new TableColumn { Heading = m.Load.Name }),
                ],
                Rows =
                [
                    .. StaticOutput.All
                        .Select((output, j) => (output, Results: studies.Select(s => s.Results[j]).ToList()))
                        .Where(row => row.Results.Any(r => double.IsFinite(r.Stated)))
                        .Select(row => TableRow.Of([Name(row.output), Unit(row.output.Symbol), .. row.Results.Select(r => Cell(r, row.output.Symbol == "rad" ? Degrees : 1.0))])),
                ],
            },
        };
    }

    /// <summary>A value and its doubt to the same decimals, the doubt with two digits.</summary>
    internal static string Cell(double value, double doubt)
    {
        if (!double.IsFinite(value))
        {
            return "–";
        }

        if (!(doubt > 0.0) || !double.IsFinite(doubt))
        {
            return FactText.Number(value, "G4");
        }

        var decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(doubt)), 0, 6);
        var format = "F" + decimals.ToString(CultureInfo.InvariantCulture);
        return $"{FactText.Number(value, format)} ± {FactText.Number(doubt, format)}";
    }

    private static string Cell(FirstOrderResult result, double factor) => Cell(factor * result.Stated, 2.0 * factor * result.StandardDeviation);

    // The tables beside this one count it nose up.
    private static string Name(StaticOutput output) => output == StaticOutput.TrimPitch ? "pitch at trim, nose down" : output.Name;

    private static string Unit(string symbol) => symbol switch { "" => "–", "rad" => "°", _ => symbol };
}
