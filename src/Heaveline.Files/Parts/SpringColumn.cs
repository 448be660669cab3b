namespace Heaveline.Files.Parts;

/// <summary>One column of a sheet of springs, by its heading: <c>rate [N/mm]</c>, or <c>rate</c> alone where its cells carry their unit.</summary>
/// <param name="Key">The key that it is in a list of parts.</param>
/// <param name="Unit">The unit, or the currency, of cells that have none; empty without one.</param>
internal sealed record SpringColumn(string Key, string Unit)
{
    /// <summary>A cell as a list of parts would have it: its own unit, or that of the heading before its doubt.</summary>
    /// <param name="cell">The cell.</param>
    public string Whole(string cell)
    {
        if (Unit.Length == 0)
        {
            return cell;
        }

        var mark = Forms.QuantityForm.DoubtMarks
            .Select(m => cell.IndexOf(m, StringComparison.Ordinal)).Where(at => at > 0).DefaultIfEmpty(cell.Length).Min();
        var value = cell[..mark].Trim();
        return value.Length > 0 && value.All(c => char.IsAsciiDigit(c) || c is '.' or '-' or '+') ? $"{value} {Unit} {cell[mark..]}".TrimEnd() : cell;
    }
}
