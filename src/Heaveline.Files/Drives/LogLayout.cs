using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Drives;

namespace Heaveline.Files.Drives;

/// <summary>How a log's text is laid out: separator, decimal mark, names of the columns, where the numbers begin.</summary>
internal sealed partial record LogLayout
{
    /// <summary>Most columns of a row.</summary>
    public const int MostCells = 4096;

    private const int Looked = 60;
    private const int MostPreamble = 20;
    private const double Share = 0.8;
    private static readonly (char Sign, string Name)[] Separators = [(';', "semicolon"), ('\t', "tab"), ('|', "bar"), (',', "comma")];

    /// <summary>What stands between cells.</summary>
    public required char Separator { get; init; }

    /// <summary>Its name.</summary>
    public required string SeparatorName { get; init; }

    /// <summary>Whether a comma stands before decimals.</summary>
    public required bool IsDecimalComma { get; init; }

    /// <summary>Names of the columns; null where there is no header.</summary>
    public required IReadOnlyList<string>? Names { get; init; }

    /// <summary>Cells of a row.</summary>
    public required int Cells { get; init; }

    /// <summary>Where the first row of numbers begins, in bytes.</summary>
    public required int RowsAt { get; init; }

    /// <summary>Lines above the header.</summary>
    public required IReadOnlyList<string> Preamble { get; init; }

    /// <summary>The first rows of numbers, in cells.</summary>
    public required IReadOnlyList<IReadOnlyList<string>> FirstRows { get; init; }

    /// <summary>Finds the layout; null where there is none, with the reason.</summary>
    public static LogLayout? Of(LogText text, IReadOnlyList<Overruling> overrulings, out string whyNot)
    {
        var lines = text.FirstLines(Looked, out var tooLong);
        whyNot = tooLong.IsEmpty ? "the file is empty." : Wide(tooLong);
        if (lines.Count == 0)
        {
            return null;
        }

        char? told = SeparatorLine().Match(lines[0].Line) is { Success: true } said ? said.Groups[1].Value[0] : null;
        if (told is not null)
        {
            lines.RemoveAt(0);
        }

        if (overrulings.Word("separator") is { } wanted)
        {
            told = Separators.First(s => s.Name == wanted).Sign;
        }

        whyNot = tooLong.IsEmpty ? "there is nothing below the line that names its separator." : Wide(tooLong);
        if (lines.Count == 0)
        {
            return null;
        }

        whyNot = tooLong.IsEmpty ? "no separator (semicolon, tab, bar or comma) cuts its lines into equally many columns." : Wide(tooLong);
        if (Found(lines, told) is not { } found)
        {
            return null;
        }

        var (separator, name, cells) = found;
        whyNot = Many(cells);
        if (cells > MostCells)
        {
            return null;
        }

        var rows = lines.Select(l => Drives.Cells.Split(l.Line, separator)).ToList();
        var first = rows.FindIndex(r => r.Count == cells && IsRow(r));
        whyNot = tooLong.IsEmpty ? "no row of numbers is found among its first lines." : Wide(tooLong);
        if (first < 0 || first > MostPreamble + 1)
        {
            return null;
        }

        var below = rows.Skip(first).Where(r => r.Count == cells).ToList();
        var isComma = overrulings.Word("decimal") is { } decimals
            ? decimals == "comma"
            : below.Any(r => r.Any(CommaNumber().IsMatch)) && !below.Any(r => r.Any(PointNumber().IsMatch));
        var (names, head) = Header(rows, first, cells);
        return new LogLayout
        {
            Separator = separator,
            SeparatorName = name,
            IsDecimalComma = isComma,
            Names = names,
            Cells = cells,
            RowsAt = lines[first].At,
            Preamble = [.. lines.Take(head).Select(l => l.Line)],
            FirstRows = below,
        };
    }

    private static string Many(int cells) =>
        string.Create(CultureInfo.InvariantCulture, $"its rows have {cells} columns; {MostCells} at the most are read.");

    // A line so long is cut into columns by the sign that stands in it most often.
    private static string Wide(ReadOnlySpan<byte> line)
    {
        var most = 0;
        foreach (var (sign, _) in Separators)
        {
            most = Math.Max(most, line.Count((byte)sign));
        }

        return most + 1 > MostCells
            ? Many(most + 1)
            : string.Create(
                CultureInfo.InvariantCulture, $"a line among its first is longer than {LogText.LongestLine} bytes, as no row of a log is.");
    }

    private static (char Sign, string Name, int Cells)? Found(List<(int At, string Line)> lines, char? told)
    {
        // The first two lines may be a title and a header of their own shape.
        var looked = lines.Count > 4 ? lines.Skip(2).ToList() : lines;
        foreach (var (sign, name) in told is { } only ? [(only, only == '\t' ? "tab" : $"'{only}'")] : Separators)
        {
            var counts = looked.Select(l => Drives.Cells.Split(l.Line, sign).Count).GroupBy(n => n).MaxBy(g => g.Count())!;
            if (counts.Key >= 2 && counts.Count() >= Share * looked.Count)
            {
                return (sign, name, counts.Key);
            }
        }

        return null;
    }

    private static (IReadOnlyList<string>? Names, int Head) Header(List<List<string>> rows, int first, int cells)
    {
        if (first == 0 || !IsHeader(rows[first - 1], cells))
        {
            return (null, first);
        }

        var names = rows[first - 1];
        // A line of names above a line of units.
        if (first > 1 && IsHeader(rows[first - 2], cells) && !IsMeant(names) && IsMeant(rows[first - 2]))
        {
            return ([.. rows[first - 2].Zip(names, (n, u) => $"{n} ({u.Trim('(', ')', '[', ']')})")], first - 2);
        }

        return (names, first - 1);
    }

    private static bool IsHeader(List<string> row, int cells) =>
        Math.Abs(row.Count - cells) <= 1 && row.Any(c => c.Any(char.IsLetter)) && !IsRow(row);

    private static bool IsMeant(List<string> row) => row.Count(c => ColumnMeaning.Of(c) is { Kind: not null } or { Axis.Length: > 0 }) >= 2;

    private static bool IsRow(List<string> row)
    {
        var filled = row.Count(c => c.Length > 0);
        var numbers = row.Count(c => AnyNumber().IsMatch(c) || TimeText.TryRead(System.Text.Encoding.UTF8.GetBytes(c), out _, out _));
        return numbers >= 2 && 2 * numbers >= filled;
    }

    [GeneratedRegex("^\"?sep=(.)\"?\\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex SeparatorLine();

    [GeneratedRegex(@"^[-+]?(\d+([.,]\d*)?|[.,]\d+)([eE][-+]?\d+)?$")]
    private static partial Regex AnyNumber();

    [GeneratedRegex(@"^[-+]?\d*,\d+([eE][-+]?\d+)?$")]
    private static partial Regex CommaNumber();

    [GeneratedRegex(@"^[-+]?\d*\.\d+([eE][-+]?\d+)?$")]
    private static partial Regex PointNumber();
}
