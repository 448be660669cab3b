namespace Heaveline.Files.Roads;

/// <summary>One cell of a line of comma-separated text, without the blanks around it.</summary>
/// <param name="Text">Its text.</param>
/// <param name="Line">Line, from 1.</param>
/// <param name="Column">Column of its first character, from 1; where it would stand if it is empty.</param>
internal readonly record struct Cell(string Text, int Line, int Column)
{
    private const int MostShown = 60;

    /// <summary>Its text as it is said again, cut where it is longer than any number.</summary>
    internal string Shown => Text.Length > MostShown ? $"{Text[..MostShown]}…" : Text;

    /// <summary>The cells of one line.</summary>
    internal static List<Cell> Of(string line, int number)
    {
        var cells = new List<Cell>();
        for (var start = 0; start <= line.Length;)
        {
            var comma = line.IndexOf(',', start);
            var end = comma < 0 ? line.Length : comma;
            var text = line[start..end];
            var lead = text.Length - text.TrimStart().Length;
            cells.Add(new Cell(text.Trim(), number, start + (lead < text.Length ? lead : 0) + 1));
            start = end + 1;
        }

        return cells;
    }

    /// <summary>A warning that points at this cell.</summary>
    internal Warning Warn(string file, string message, string advice) => new(file, Line, Column, Math.Max(1, Text.Length), message, advice);

    /// <summary>A refusal that points at this cell.</summary>
    internal Refusal Refuse(string file, string message, string advice) => new(file, Line, Column, Math.Max(1, Text.Length), message, advice);
}
