using System.Globalization;
using Heaveline.Files.Yaml;
using Heaveline.Roads;

namespace Heaveline.Files.Roads;

/// <summary>
/// A measured road as comma-separated text: a header with a unit for each column (<c>distance [m], left [mm], right [mm]</c>, or
/// <c>distance [m], height [mm]</c>), then one point a line. Blank lines and lines that begin with # are skipped.
/// Everything that is wrong with it is refused at once.
/// </summary>
public static class MeasuredProfileFile
{
    private const int FewestPoints = 4;
    private const double HighestMetres = 10.0;

    /// <summary>Reads text.</summary>
    /// <param name="source">The text under its file's name, which without its extension names the road.</param>
    /// <param name="name">Another name for the road; null: the file's.</param>
    public static Reading<Road> Read(SourceText source, string? name = null)
    {
        var file = source.File;
        var refusals = new List<Refusal>();
        MeasuredProfileHeader? header = null;
        MeasuredColumn[] columns = [];
        var number = 0;
        var points = 0;
        foreach (var raw in source.Text.Split('\n'))
        {
            number++;
            var line = raw.TrimEnd('\r');
            if (string.IsNullOrWhiteSpace(line) || line.TrimStart().StartsWith('#'))
            {
                continue;
            }

            var cells = Cell.Of(line, number);
            if (header is null)
            {
                header = MeasuredProfileHeader.Read(file, cells, line, refusals);
                if (header is null)
                {
                    // Without its columns no point can be told right from wrong.
                    break;
                }

                columns = [.. header.Names.Select((name, i) => new MeasuredColumn(name, header.Units[i], header.Metres[i]))];
                continue;
            }

            points++;
            ReadPoint(file, line, cells, columns, refusals);
        }

        if (header is null && refusals.Count == 0)
        {
            refusals.Add(new Refusal(file, 1, 1, 1, "the file has no header; its first line must name the columns.", MeasuredProfileHeader.Example));
        }
        else if (header is not null && points < FewestPoints)
        {
            refusals.Add(new Refusal(
                file,
                Math.Max(1, number),
                1,
                1,
                string.Create(CultureInfo.InvariantCulture, $"the road has {points} points; it must have at least {FewestPoints}."),
                "Measure more points, or write a single obstacle by its shape."));
        }

        return new Reading<Road>
        {
            Value = refusals.Count > 0 ? null : Build(name ?? NameOf(file), columns), Refusals = refusals, Sources = [source],
        };
    }

    private static string NameOf(string file) => Path.GetFileNameWithoutExtension(file) is { Length: > 0 } name ? name : file;

    private static Road Build(string name, MeasuredColumn[] columns)
    {
        var left = columns.First(c => c.Name is "left" or "height");
        var right = columns.FirstOrDefault(c => c.Name == "right");
        return Road.FromMeasured(name, columns[0].Values, left.Values, right?.Values);
    }

    private static void ReadPoint(string file, string line, List<Cell> cells, MeasuredColumn[] columns, List<Refusal> refusals)
    {
        if (cells.Count != columns.Length)
        {
            refusals.Add(new Refusal(
                file,
                cells[0].Line,
                1,
                Math.Max(1, line.Length),
                string.Create(CultureInfo.InvariantCulture, $"the line has {cells.Count} cells; it must have {columns.Length}, one for each column."),
                "Separate cells with commas and write decimals with a point."));
            return;
        }

        for (var i = 0; i < columns.Length; i++)
        {
            ReadValue(file, cells[i], columns[i], isDistance: i == 0, refusals);
        }
    }

    private static void ReadValue(string file, Cell cell, MeasuredColumn column, bool isDistance, List<Refusal> refusals)
    {
        if (cell.Text.Length == 0)
        {
            refusals.Add(cell.Refuse(
                file,
                $"{column.Name} is empty; it must be a number.",
                "Fill the gap by measuring again, or cut the road before it: a guess would be driven over as road."));
            return;
        }

        if (!double.TryParse(cell.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var written) || !double.IsFinite(written))
        {
            refusals.Add(cell.Refuse(
                file,
                $"{column.Name} is {cell.Text}; it must be a finite number.",
                "Write a plain number with a decimal point; the unit stands in the header."));
            return;
        }

        var value = written * column.Metres;
        if (isDistance && column.Values.Count > 0 && value <= column.Values[^1])
        {
            var what = value == column.Values[^1] ? "repeats the distance before it" : "goes backwards";
            refusals.Add(cell.Refuse(
                file,
                $"distance {cell.Text} {column.Unit} {what}; it must be above {column.Write(column.Values[^1])}.",
                "Sort the points by distance and keep one of each."));
        }

        if (!isDistance && column.Values.Count > 0 && !(Math.Abs(value - column.Values[0]) <= HighestMetres))
        {
            refusals.Add(cell.Refuse(
                file,
                $"{column.Name} is {cell.Text} {column.Unit}, {column.Write(value - column.Values[0])} from the first one; "
                + $"it must be within {column.Write(HighestMetres)} of it.",
                "Check the unit in the header and the value, or cut the road into shorter ones."));
            return;
        }

        // A refused distance is kept too: the next one is compared with its neighbour, so that one slip is refused once.
        column.Values.Add(value);
    }
}
