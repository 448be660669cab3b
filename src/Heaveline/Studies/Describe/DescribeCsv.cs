using System.Globalization;
using System.Text;
using Heaveline.Answers;

namespace Heaveline.Studies;

/// <summary>The numbers of a standing car as CSV: a row a number, each load state with its doubt beside it [RFC 4180].</summary>
internal static class DescribeCsv
{
    /// <summary>The text, in UTF-8. Doubts that were not worked out are left empty.</summary>
    public static byte[] Of(DescribeAnswer answer)
    {
        var text = new StringBuilder();
        string[] loads = [.. answer.Models.SelectMany(m => new[] { m.Load.Name, $"{m.Load.Name}, {DescribeAnswer.PlusMinus}" })];
        Line(["part", "key", "what", "unit", .. loads], []);
        foreach (var (title, rows) in answer.Rows)
        {
            foreach (var row in rows)
            {
                Line(
                    [title, row.Measure.Key, row.Measure.Label, row.Measure.Unit.Symbol],
                    row.Cells.SelectMany(c => new[] { Number(c?.Value), Number(answer.Slopes.Count > 0 ? c?.HalfWidth : null) }));
            }
        }

        return Encoding.UTF8.GetBytes(text.ToString());

        void Line(IEnumerable<string> texts, IEnumerable<string> numbers) =>
            text.AppendJoin(',', texts.Select(CsvCell.Of).Concat(numbers)).Append("\r\n");

        static string Number(double? value) => value?.ToString("R", CultureInfo.InvariantCulture) ?? "";
    }
}
