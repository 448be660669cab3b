using System.Text.RegularExpressions;
using Heaveline.Quantities;
using Heaveline.Studies;

namespace Heaveline.Web.Pages.Worksheets;

/// <summary>One choice of a worksheet while its readings are typed: rows of boxes, each column in its unit, or a tick.</summary>
public sealed partial class WorksheetLine
{
    private const int Rows = 3;
    private static readonly string[] Imperial = ["in", "lb", "lbf", "lbf/in"];
    private readonly List<string[]> cells = [];

    /// <summary>A line.</summary>
    /// <param name="choice">What is read.</param>
    /// <param name="units">The units that the reader reads in.</param>
    /// <param name="isFirst">Whether no other line before it may be repeated.</param>
    public WorksheetLine(Choice choice, ReaderUnits units, bool isFirst)
    {
        Choice = choice;
        Units = [.. choice.Columns.Select(c => (units.IsImperial ? c.Units.FirstOrDefault(Imperial.Contains) : null) ?? c.Units[0])];
        for (var row = 0; row < (!choice.IsRepeated ? 1 : choice.IsNeeded ? Rows : isFirst ? 1 : 0); row++)
        {
            Add();
        }
    }

    /// <summary>What is read.</summary>
    public Choice Choice { get; }

    /// <summary>The choice in words.</summary>
    public string Label => Choice.Name.Replace('-', ' ');

    /// <summary>The unit of each column's bare numbers.</summary>
    public string[] Units { get; }

    /// <summary>What is typed, row by row.</summary>
    public IReadOnlyList<string[]> Cells => cells;

    /// <summary>Whether a tick is set.</summary>
    public bool IsTicked { get; set; }

    /// <summary>Rows that have some of their readings and not all: they are not counted.</summary>
    public int Halves => cells.Count(row => row.Any(IsTyped) && !row.All(IsTyped));

    /// <summary>A row more.</summary>
    public void Add() => cells.Add([.. Choice.Columns.Select(_ => "")]);

    /// <summary>Takes a row out.</summary>
    public void TakeOut(int row) => cells.RemoveAt(row);

    /// <summary>A reading as it is read: a bare number in its column's unit.</summary>
    public string Whole(int row, int column) => Whole(cells[row][column], Units[column]);

    /// <summary>The words for the study, a whole row each.</summary>
    public IEnumerable<(string Name, string? Words)> Words => Choice.Kind == ChoiceKind.Tick
        ? [(Choice.Name, IsTicked ? Choice.Yes : null)]
        : WholeRows.Select(row => (Choice.Name, (string?)string.Join(", ", cells[row].Select((_, column) => Whole(row, column)))));

    /// <summary>The row that the study reads at a place among its own; −1 for none.</summary>
    internal int RowOf(int read) => WholeRows.Skip(read).Append(-1).First();

    /// <summary>A reading that cannot stand in a row, in words; null where it can.</summary>
    public string? Refusal(int row, int column) => Thousands().IsMatch(cells[row][column])
        ? $"{cells[row][column].Trim()} may be thousands or a decimal number: write it without a comma." : null;

    private IEnumerable<int> WholeRows => Enumerable.Range(0, cells.Count).Where(row => cells[row].All(IsTyped));

    // A doubt in the number's own unit, or in per cent, stands behind a bare number.
    private static string Whole(string typed, string unit) => QuantityText.Whole(typed, unit);

    private static bool IsTyped(string cell) => cell.Trim().Length > 0;

    [GeneratedRegex("[0-9],[0-9]{3}(?![0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex Thousands();
}
