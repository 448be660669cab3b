using System.Collections.Immutable;
using System.Globalization;
using Heaveline.Drives;

namespace Heaveline.Files.Drives;

/// <summary>One text of a log as columns of numbers.</summary>
internal sealed class LogTable
{
    private const double MostBad = 0.1;
    private const int Stride = 1 << 14;

    private LogTable(string file, LogLayout layout, OverruledColumns overruled, LogColumn[] columns, ImmutableArray<StoryLine> story) =>
        (File, Layout, Overruled, Columns, Story) = (file, layout, overruled, columns, story);

    /// <summary>The file, as the user named it.</summary>
    public string File { get; }

    /// <summary>How it is laid out.</summary>
    public LogLayout Layout { get; }

    /// <summary>The columns that the user names.</summary>
    public OverruledColumns Overruled { get; }

    /// <summary>Those columns that mean something; all that hold numbers, where there is no header.</summary>
    public LogColumn[] Columns { get; }

    /// <summary>What was decided.</summary>
    public ImmutableArray<StoryLine> Story { get; }

    /// <summary>Reads a text; null where it is refused.</summary>
    public static LogTable? Read(
        LogSource source, OverruledColumns overruled, IReadOnlyList<Overruling> overrulings, CancellationToken stop, out LogRefusal? refusal)
    {
        const string advice = "Give the text (.csv) that a logger wrote: a line of names, then a row of numbers for each instant.";
        if (LogText.Of(source.Bytes) is not { } text)
        {
            refusal = new LogRefusal(source.Name, "this is no text.", advice);
            return null;
        }

        if (LogLayout.Of(text, overrulings, out var whyNot) is not { } layout)
        {
            refusal = new LogRefusal(source.Name, whyNot, advice);
            return null;
        }

        if (overruled.Missing([.. Enumerable.Range(0, layout.Cells).Select(k => NameOf(layout, k))]) is { } missing)
        {
            refusal = new LogRefusal(source.Name, missing, "Count columns from 1, or name one as the header does.");
            return null;
        }

        var columns = Wanted(source.Name, layout, overruled);
        var (rows, bad, repeated) = Fill(text, layout, columns, stop);
        if (bad > MostBad * (rows + bad))
        {
            refusal = new LogRefusal(
                source.Name,
                Text($"{bad} of its {rows + bad} rows have another number of columns than {layout.Cells}."),
                "Look at the file: parts of several logs may have been joined.");
            return null;
        }

        if (columns.FirstOrDefault(c => c.Bad > MostBad * rows && !IsOfPosition(c)) is { } broken)
        {
            refusal = new LogRefusal(
                source.Name, Text($"{broken.Bad} of the {rows} cells of column '{broken.Name}' are no numbers."), "Look at that column.");
            return null;
        }

        refusal = null;
        return new LogTable(source.Name, layout, overruled, columns, [.. Told(source.Name, text, layout, columns, rows, bad, repeated)]);
    }

    /// <summary>What is said of a log, the same on every machine.</summary>
    internal static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    // Without it a log is read all the same.
    private static bool IsOfPosition(LogColumn column) =>
        column.Meaning.Kind is ColumnKind.Latitude or ColumnKind.Longitude or ColumnKind.PositionAccuracy;

    private static string NameOf(LogLayout layout, int k) =>
        layout.Names is not { } names ? Text($"column {k + 1}") : k < names.Count ? names[k] : "";

    private static LogColumn[] Wanted(string file, LogLayout layout, OverruledColumns overruled)
    {
        var wanted = new List<LogColumn>();
        var ofFile = ColumnMeaning.OfFile(file);
        for (var k = 0; k < layout.Cells; k++)
        {
            var name = NameOf(layout, k);
            if (layout.Names is null)
            {
                wanted.Add(new LogColumn(k, name, overruled.Meaning(k, name, new ColumnMeaning(null, "", "", ""))));
                continue;
            }

            var meaning = ColumnMeaning.Of(name);
            if (meaning is { Kind: null, Axis.Length: > 0, Group: "" } && ofFile is not null)
            {
                meaning = meaning with { Kind = ofFile };
            }

            meaning = overruled.Meaning(k, name, meaning);
            if (meaning.Kind is ColumnKind.Time or ColumnKind.Speed
                    or ColumnKind.Latitude or ColumnKind.Longitude or ColumnKind.PositionAccuracy
                || (meaning.Kind is not null && meaning.Axis.Length > 0))
            {
                wanted.Add(new LogColumn(k, name, meaning));
            }
        }

        // An accuracy beside no place is of no use.
        if (!wanted.Exists(c => c.Meaning.Kind == ColumnKind.Latitude) || !wanted.Exists(c => c.Meaning.Kind == ColumnKind.Longitude))
        {
            wanted.RemoveAll(IsOfPosition);
        }

        foreach (var column in wanted.Where(c => layout.Names is null || c.Meaning.Kind == ColumnKind.Time).ToList())
        {
            var cells = layout.FirstRows.Select(r => r[column.Index]).Where(c => c.Length > 0).Select(System.Text.Encoding.UTF8.GetBytes).ToList();
            column.IsText = cells.Count > 0 && cells.All(c => TimeText.TryRead(c, out _, out _));
            if (layout.Names is null && column.IsText)
            {
                wanted[wanted.IndexOf(column)] =
                    new LogColumn(column.Index, column.Name, column.Meaning with { Kind = ColumnKind.Time }) { IsText = true };
            }
        }

        return [.. wanted];
    }

    private static (int Rows, int Bad, int Repeated) Fill(LogText text, LogLayout layout, LogColumn[] columns, CancellationToken stop)
    {
        var bytes = text.Bytes.AsSpan(layout.RowsAt);
        var (separator, point) = ((byte)layout.Separator, layout.IsDecimalComma ? (byte)',' : (byte)'.');
        var hasQuotes = bytes.Contains((byte)'"');
        var (rows, bad, repeated) = (0, 0, 0);
        var line = bytes.IndexOfAny((byte)'\n', (byte)'\r');
        foreach (var column in columns)
        {
            column.Reserve((int)Math.Min(bytes.Length / Math.Max(0.8 * line, 4.0), 1 << 24));
        }

        var places = new (int From, int To)[layout.Cells + 1];
        while (!bytes.IsEmpty)
        {
            line = bytes.IndexOfAny((byte)'\n', (byte)'\r');
            var row = line < 0 ? bytes : bytes[..line];
            bytes = line < 0 ? default : bytes[(line + 1)..];
            if (row.IsEmpty || row.Trim(" \t"u8).IsEmpty)
            {
                continue;
            }

            if (rows % Stride == 0)
            {
                stop.ThrowIfCancellationRequested();
            }

            if (Cut(row, separator, hasQuotes, places) != layout.Cells)
            {
                bad++;
                continue;
            }

            var filled = 0;
            foreach (var column in columns)
            {
                var (from, to) = places[column.Index];
                column.Add(row[from..to], point);
                filled += double.IsNaN(column.Values[^1]) ? 0 : 1;
            }

            if (filled > 0)
            {
                rows++;
                continue;
            }

            // No number in any column that means something: the header again, or a row of other sensors.
            repeated++;
            foreach (var column in columns)
            {
                column.RemoveLast();
            }
        }

        return (rows, bad, repeated);
    }

    // Where the cells begin and end; how many there are, no more than one too many.
    private static int Cut(ReadOnlySpan<byte> row, byte separator, bool hasQuotes, (int From, int To)[] places)
    {
        var (count, from) = (0, 0);
        while (count < places.Length)
        {
            var next = row[from..].IndexOf(separator);
            if (hasQuotes && row[from..].TrimStart((byte)' ') is [(byte)'"', ..])
            {
                var open = from + row[from..].IndexOf((byte)'"');
                var close = row[(open + 1)..].IndexOf((byte)'"');
                var after = close < 0 ? row.Length : open + close + 2;
                next = row[after..].IndexOf(separator) is var found && found < 0 ? -1 : after + found - from;
            }

            places[count++] = (from, next < 0 ? row.Length : from + next);
            if (next < 0)
            {
                return count;
            }

            from += next + 1;
        }

        return count + 1;
    }

    private static IEnumerable<StoryLine> Told(
        string file, LogText text, LogLayout layout, LogColumn[] columns, int rows, int bad, int repeated)
    {
        yield return new StoryLine(
            "layout",
            Text($"{file}: {text.EncodingName}, {layout.SeparatorName} between {layout.Cells} columns, decimal ")
            + (layout.IsDecimalComma ? "comma" : "point") + Text($", {rows} rows")
            + (layout.Preamble.Count > 0 ? Text($", {layout.Preamble.Count} lines above the header passed over") : "") + ".");
        if (layout.Names is null)
        {
            yield return new StoryLine(
                "header", $"{file}: no line of names; columns are told apart by their numbers alone. Look whether that is right.", true);
        }

        if (bad > 0)
        {
            yield return new StoryLine("rows", Text($"{file}: {bad} rows of another number of columns are left out."), true);
        }

        if (repeated > 0)
        {
            yield return new StoryLine("rows", Text($"{file}: {repeated} rows without a number in a column of use are left out."));
        }

        foreach (var column in columns.Where(c => c.IsBlank && c.Bad == 0 && c.Meaning.Kind is { } && !IsOfPosition(c)))
        {
            yield return new StoryLine("cells", Text($"{file}: column '{column.Name}' holds no number and is left out."), true);
        }

        foreach (var column in columns.Where(c => c.Bad > 0))
        {
            yield return new StoryLine(
                "cells", Text($"{file}: {column.Bad} cells of column '{column.Name}' are no numbers and count as blank."), true);
        }
    }
}
