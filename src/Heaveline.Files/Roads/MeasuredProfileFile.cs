using System.Globalization;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;
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

    // A measured road has thousands of lines, and one slip may stand in all of them.
    private const int MostShown = 20;

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

        RefuseHeights(file, columns, refusals);
        var warnings = new List<Warning>();
        CheckGaps(file, columns, refusals, warnings);
        return new Reading<Road>
        {
            Value = refusals.Count > 0 ? null : Build(name ?? NameOf(file), columns),
            Refusals = [.. refusals.OrderBy(r => r.Line).ThenBy(r => r.Column)],
            Warnings = warnings,
            Sources = [source],
            MostShown = MostShown,
        };
    }

    private static string NameOf(string file) => Path.GetFileNameWithoutExtension(file) is { Length: > 0 } name ? name : file;

    private static Road Build(string name, MeasuredColumn[] columns)
    {
        var (left, right) = Tracks(columns);
        return Road.FromMeasured(name, columns[0].Values, left.Values, right?.Values);
    }

    private static (MeasuredColumn Left, MeasuredColumn? Right) Tracks(MeasuredColumn[] columns) =>
        (columns.First(c => c.Name is "left" or "height"), columns.FirstOrDefault(c => c.Name == "right"));

    // A hill is taken off before heights are judged. Where points were refused, from those that are left.
    private static void RefuseHeights(string file, MeasuredColumn[] columns, List<Refusal> refusals)
    {
        if (columns.Length == 0)
        {
            return;
        }

        var (left, right) = Tracks(columns);
        int[] whole = [.. Enumerable.Range(0, left.Values.Count).Where(i => columns.All(c => double.IsFinite(c.Values[i])))];
        List<double> Of(MeasuredColumn column) => [.. whole.Select(i => column.Values[i])];
        var grade = MeasuredGrade.Of(Of(columns[0]), Of(left), right is null ? null : Of(right));
        foreach (var column in columns.Skip(1))
        {
            var first = double.NaN;
            for (var i = 0; i < column.Values.Count; i++)
            {
                var along = grade.IsHill ? columns[0].Values[i] - columns[0].Values[whole[0]] : 0.0;
                var height = grade.Without(column.Values[i], along);
                first = double.IsNaN(first) ? height : first;
                if (Math.Abs(height - first) > HighestMetres)
                {
                    var cell = column.Cells[i];
                    var less = grade.IsHill ? FormattableString.Invariant($", less the road's slope of {In.Percent.Of(grade.Slope):0.##} %") : "";
                    refusals.Add(cell.Refuse(
                        file,
                        $"{column.Name} is {cell.Text} {column.Unit}, {column.Write(height - first)} from the first one{less}; "
                        + $"it must be within {column.Write(HighestMetres)} of it.",
                        "Check the unit in the header and the value, or cut the road into shorter ones."));
                }
            }
        }
    }

    private static void CheckGaps(string file, MeasuredColumn[] columns, List<Refusal> refusals, List<Warning> warnings)
    {
        // Distances that were refused have no order to judge by.
        if (refusals.Count > 0 || columns.Length == 0)
        {
            return;
        }

        var distances = columns[0].Values;
        foreach (var gap in RoadGap.Among(distances))
        {
            var cell = columns[0].Cells[distances.BinarySearch(gap.To)];
            var message = $"{gap.Words}.";
            if (gap.IsTooWide)
            {
                refusals.Add(cell.Refuse(file, message, RoadGap.Advice));
            }
            else
            {
                warnings.Add(new Warning(
                    file, cell.Line, cell.Column, Math.Max(1, cell.Text.Length), $"{gap.Words}: the road is driven evenly across.", RoadGap.Advice));
            }
        }
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
            columns[i].Cells.Add(cells[i]);
            columns[i].Values.Add(Value(file, cells[i], columns[i], isDistance: i == 0, refusals));
        }
    }

    // NaN where the cell is refused.
    private static double Value(string file, Cell cell, MeasuredColumn column, bool isDistance, List<Refusal> refusals)
    {
        if (cell.Text.Length == 0)
        {
            refusals.Add(cell.Refuse(
                file,
                $"{column.Name} is empty; it must be a number.",
                "Fill the gap by measuring again, or cut the road before it: a guess would be driven over as road."));
            return double.NaN;
        }

        if (!double.TryParse(cell.Text, NumberStyles.Float, CultureInfo.InvariantCulture, out var written) || !double.IsFinite(written))
        {
            refusals.Add(cell.Refuse(
                file,
                $"{column.Name} is {cell.Text}; it must be a finite number.",
                "Write a plain number with a decimal point; the unit stands in the header."));
            return double.NaN;
        }

        // A refused distance counts too: the next one is compared with its neighbour, so that one slip is refused once.
        var value = written * column.Metres;
        if (isDistance && column.Values.FindLastIndex(double.IsFinite) is var before and >= 0 && value <= column.Values[before])
        {
            var what = value == column.Values[before] ? "repeats the distance before it" : "goes backwards";
            refusals.Add(cell.Refuse(
                file,
                $"distance {cell.Text} {column.Unit} {what}; it must be above {column.Write(column.Values[before])}.",
                "Sort the points by distance and keep one of each."));
        }

        return value;
    }
}
