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

    // So many refusals are no slips: it is another file. Each refusal holds its words, and a file has millions of lines.
    private const int MostRefusals = 300;
    private const double LongestMetres = 1e6;

    // So many lines are a table, whatever is wrong in it.
    private const int Many = 4096;

    private const int LinesBetweenLooks = 1 << 14;

    /// <summary>Reads text.</summary>
    /// <param name="source">The text under its file's name, which without its extension names the road.</param>
    /// <param name="name">Another name for the road; null: the file's.</param>
    /// <param name="stop">Stops the reading.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Reading<Road> Read(SourceText source, string? name = null, CancellationToken stop = default)
    {
        var file = source.File;
        var refusals = new List<Refusal>();
        MeasuredProfileHeader? header = null;
        MeasuredColumn[] columns = [];
        var points = new MeasuredPoints();
        var (number, count) = (0, 0);
        for (var start = 0; start <= source.Text.Length && refusals.Count < MostRefusals;)
        {
            if (++number % LinesBetweenLooks == 0)
            {
                stop.ThrowIfCancellationRequested();
            }

            var (at, next) = MeasuredLine.From(source, number, start);
            start = next;
            var line = at.In(source);
            if (line.IsWhiteSpace() || line.TrimStart().StartsWith("#"))
            {
                continue;
            }

            if (header is null)
            {
                header = MeasuredProfileHeader.Read(file, at, line, refusals);
                if (header is null)
                {
                    // Without its columns no point can be told right from wrong.
                    break;
                }

                columns = [.. header.Names.Select((name, i) => new MeasuredColumn(name, header.Units[i], header.Metres[i]))];
                continue;
            }

            count++;
            if (ReadPoint(source, at, columns, refusals))
            {
                points.Add(at);
            }

            if (count == Many)
            {
                // Room for all at once: a list that grows holds everything twice meanwhile.
                var most = count + source.Text.AsSpan(start).Count('\n') + 1;
                points.Expect(most);
                Array.ForEach(columns, column => column.Values.EnsureCapacity(most));
            }
        }

        var isGivenUp = refusals.Count >= MostRefusals;
        if (header is null && refusals.Count == 0)
        {
            refusals.Add(new Refusal(file, 1, 1, 1, "the file has no header; its first line must name the columns.", MeasuredProfileHeader.Example));
        }
        else if (header is not null && count < FewestPoints && !isGivenUp)
        {
            refusals.Add(new Refusal(
                file,
                Math.Max(1, number),
                1,
                1,
                string.Create(
                    CultureInfo.InvariantCulture, $"the road has {count} {(count == 1 ? "point" : "points")}; it must have at least {FewestPoints}."),
                "Measure more points, or write a single obstacle by its shape."));
        }

        if (!isGivenUp)
        {
            RefuseHeights(source, columns, points, refusals);
        }

        var warnings = new List<Warning>();
        CheckDistances(source, columns, points, refusals, warnings);
        return new Reading<Road>
        {
            Value = refusals.Count > 0 ? null : Build(name ?? NameOf(file), columns, stop),
            Refusals = [.. GivenUp(refusals), .. refusals.OrderBy(r => r.Line).ThenBy(r => r.Column)],
            Warnings = warnings,
            Sources = [source],
            MostShown = MostShown,
        };
    }

    // Told first: of so many only some are shown.
    private static IEnumerable<Refusal> GivenUp(List<Refusal> refusals)
    {
        if (refusals.Count >= MostRefusals)
        {
            var last = refusals.MaxBy(r => (r.Line, r.Column))!;
            yield return last with
            {
                Message = string.Create(
                    CultureInfo.InvariantCulture, $"reading stopped here, after {refusals.Count} refusals; it must be a table of numbers."),
                Advice = "Mend the others first: what follows was not looked at.",
            };
        }
    }

    private static string NameOf(string file) => Path.GetFileNameWithoutExtension(file) is { Length: > 0 } name ? name : file;

    private static Road Build(string name, MeasuredColumn[] columns, CancellationToken stop)
    {
        var (left, right) = Tracks(columns);
        return Road.FromMeasured(name, columns[0].Values, left.Values, right?.Values, stop);
    }

    private static (MeasuredColumn Left, MeasuredColumn? Right) Tracks(MeasuredColumn[] columns) =>
        (columns.First(c => c.Name is "left" or "height"), columns.FirstOrDefault(c => c.Name == "right"));

    // A hill is taken off before heights are judged. Where points were refused, from those that are left.
    private static void RefuseHeights(SourceText source, MeasuredColumn[] columns, MeasuredPoints points, List<Refusal> refusals)
    {
        if (columns.Length == 0)
        {
            return;
        }

        var (left, right) = Tracks(columns);
        var whole = Whole(columns);
        List<double> Of(MeasuredColumn column) => whole is null ? column.Values : [.. whole.Select(i => column.Values[i])];
        var grade = MeasuredGrade.Of(Of(columns[0]), Of(left), right is null ? null : Of(right));
        for (var c = 1; c < columns.Length; c++)
        {
            var column = columns[c];
            var first = double.NaN;
            for (var i = 0; i < column.Values.Count && refusals.Count < MostRefusals; i++)
            {
                var along = grade.IsHill ? columns[0].Values[i] - columns[0].Values[whole is null ? 0 : whole[0]] : 0.0;
                var height = grade.Without(column.Values[i], along);
                first = double.IsNaN(first) ? height : first;
                if (Math.Abs(height - first) > HighestMetres)
                {
                    var cell = points.At(source, i).Cell(source, c);
                    var less = grade.IsHill ? FormattableString.Invariant($", less the road's slope of {In.Percent.Of(grade.Slope):0.##} %") : "";
                    refusals.Add(cell.Refuse(
                        source.File,
                        $"{column.Name} is {cell.Shown} {column.Unit}, {column.Write(height - first)} from the first one{less}; "
                        + $"it must be within {column.Write(HighestMetres)} of it.",
                        "Check the unit in the header and the value, or cut the road into shorter ones."));
                }
            }
        }
    }

    // Which points have a value in every column; null where all have.
    private static List<int>? Whole(MeasuredColumn[] columns)
    {
        var count = columns[0].Values.Count;
        if (columns.All(c => !c.Values.Exists(value => !double.IsFinite(value))))
        {
            return null;
        }

        return [.. Enumerable.Range(0, count).Where(i => columns.All(c => double.IsFinite(c.Values[i])))];
    }

    private static void CheckDistances(
        SourceText source, MeasuredColumn[] columns, MeasuredPoints points, List<Refusal> refusals, List<Warning> warnings)
    {
        // Distances that were refused have no order to judge by.
        if (refusals.Count > 0 || columns.Length == 0)
        {
            return;
        }

        var distances = columns[0].Values;
        if (distances[^1] - distances[0] > LongestMetres)
        {
            var last = points.At(source, points.Count - 1).Cell(source, 0);
            refusals.Add(last.Refuse(
                source.File,
                $"distance {last.Shown} {columns[0].Unit} is {columns[0].Write(distances[^1] - distances[0])} from the first one; "
                + $"it must be within {columns[0].Write(LongestMetres)} of it.",
                "Check the unit in the header, or cut the road into shorter ones."));
            return;
        }

        foreach (var gap in RoadGap.Among(distances))
        {
            var cell = points.At(source, distances.BinarySearch(gap.To)).Cell(source, 0);
            var message = $"{gap.Words}.";
            if (gap.IsTooWide && refusals.Count < MostRefusals)
            {
                refusals.Add(cell.Refuse(source.File, message, RoadGap.Advice));
            }
            else if (!gap.IsTooWide)
            {
                warnings.Add(new Warning(
                    source.File, cell.Line, cell.Column, Math.Max(1, cell.Text.Length), $"{gap.Words}: the road is driven evenly across.",
                    RoadGap.Advice));
            }
        }
    }

    // Whether the line has a value for every column, sound or not.
    private static bool ReadPoint(SourceText source, MeasuredLine at, MeasuredColumn[] columns, List<Refusal> refusals)
    {
        var line = at.In(source);
        var cells = line.Count(',') + 1;
        if (cells != columns.Length)
        {
            refusals.Add(new Refusal(
                source.File,
                at.Number,
                1,
                Math.Max(1, line.Length),
                string.Create(CultureInfo.InvariantCulture, $"the line has {cells} cells; it must have {columns.Length}, one for each column."),
                "Separate cells with commas and write decimals with a point."));
            return false;
        }

        for (var i = 0; i < columns.Length; i++)
        {
            var comma = line.IndexOf(',');
            var written = (comma < 0 ? line : line[..comma]).Trim();
            columns[i].Values.Add(
                double.TryParse(written, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
                    ? Value(source, at, columns[i], number, i, refusals)
                    : Refused(source, at, columns[i], i, refusals));
            line = line[(comma + 1)..];
        }

        return true;
    }

    private static double Refused(SourceText source, MeasuredLine at, MeasuredColumn column, int place, List<Refusal> refusals)
    {
        var cell = at.Cell(source, place);
        refusals.Add(cell.Text.Length == 0
            ? cell.Refuse(
                source.File,
                $"{column.Name} is empty; it must be a number.",
                "Fill the gap by measuring again, or cut the road before it: a guess would be driven over as road.")
            : cell.Refuse(
                source.File,
                $"{column.Name} is {cell.Shown}; it must be a finite number.",
                "Write a plain number with a decimal point; the unit stands in the header."));
        return double.NaN;
    }

    // A refused distance counts too: the next one is compared with its neighbour, so that one slip is refused once.
    private static double Value(SourceText source, MeasuredLine at, MeasuredColumn column, double written, int place, List<Refusal> refusals)
    {
        var value = written * column.Metres;
        if (place == 0 && column.Values.FindLastIndex(double.IsFinite) is var before and >= 0 && value <= column.Values[before])
        {
            var cell = at.Cell(source, place);
            var what = value == column.Values[before] ? "repeats the distance before it" : "goes backwards";
            refusals.Add(cell.Refuse(
                source.File,
                $"distance {cell.Shown} {column.Unit} {what}; it must be above {column.Write(column.Values[before])}.",
                "Sort the points by distance and keep one of each."));
        }

        return value;
    }
}
