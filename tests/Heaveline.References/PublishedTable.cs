using System.Globalization;

namespace Heaveline.References;

/// <summary>A table as published, comma-separated with one header line. An empty cell was not printed or not seen.</summary>
internal sealed class PublishedTable
{
    private readonly string[] _header;

    private PublishedTable(string[] header, IReadOnlyList<string[]> rows)
    {
        _header = header;
        Rows = rows;
    }

    /// <summary>The rows as text.</summary>
    public IReadOnlyList<string[]> Rows { get; }

    /// <summary>A table kept beside the tests, by folder and file.</summary>
    public static PublishedTable Of(string folder, string file) => Read(Path.Combine(AppContext.BaseDirectory, folder, file));

    /// <summary>A table at a path.</summary>
    public static PublishedTable Read(string path)
    {
        var lines = File.ReadAllLines(path).Where(line => line.Length > 0).Select(line => line.Split(',')).ToList();
        return new(lines[0], lines[1..]);
    }

    /// <summary>The text of a cell.</summary>
    public string Text(string[] row, string column)
    {
        var at = Array.IndexOf(_header, column);
        return at >= 0 ? row[at] : throw new ArgumentException($"no column {column}");
    }

    /// <summary>The number in a cell; none when it is empty.</summary>
    public double? Number(string[] row, string column) =>
        Text(row, column) is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : null;
}
