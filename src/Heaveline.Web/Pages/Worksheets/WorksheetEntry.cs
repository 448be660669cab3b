using Heaveline.Studies;
using Heaveline.Web.Serving;

namespace Heaveline.Web.Pages.Worksheets;

/// <summary>A worksheet while its readings are typed: what it comes to, or what is wrong with a reading, at the reading.</summary>
public sealed class WorksheetEntry
{
    private readonly FieldSheet sheet;
    private readonly GarageView garage;
    private IReadOnlyList<Objection> objections = [];

    /// <summary>A worksheet, open.</summary>
    /// <param name="sheet">Which, and which of its values is wanted.</param>
    /// <param name="garage">Where the reader's units are known.</param>
    /// <param name="known">What the car says already, by the choice's name, a text a column.</param>
    internal WorksheetEntry(FieldSheet sheet, GarageView garage, IReadOnlyDictionary<string, string[]> known)
    {
        (this.sheet, this.garage) = (sheet, garage);
        var first = sheet.Door.Choices.FirstOrDefault(choice => choice.IsRepeated);
        Lines = [.. sheet.Door.Choices.Select(choice => new WorksheetLine(choice, garage.Units, choice == first))];
        foreach (var line in Lines.Where(line => known.TryGetValue(line.Choice.Name, out var texts) && texts.Length == line.Units.Length))
        {
            known[line.Choice.Name].CopyTo(line.Cells[0], 0);
        }

        Look();
    }

    /// <summary>What is read.</summary>
    public IReadOnlyList<WorksheetLine> Lines { get; }

    /// <summary>What the readings come to; null while some are missing or refused.</summary>
    public SheetAnswer? Answer { get; private set; }

    /// <summary>The value that is wanted; null where the readings give none.</summary>
    public WorkedOut? Value => Answer?.Values.FirstOrDefault(value => value.Key == sheet.Value) is { } found ? new(found.Text, Answer.From) : null;

    /// <summary>
    /// What the same readings give for other fields: of a weighing the other wheels or the other axle, as the field beside is one, and the lengths
    /// that were measured with it. Empty where the value itself is not there.
    /// </summary>
    public IReadOnlyList<WorkedField> Others => Answer is not { } answer || sheet.Door.Word != "weigh" || Value is null ? [] :
    [
        .. answer.Values.Where(value => value.Key != sheet.Value && value.Key.Contains('-') == sheet.Value.Contains('-'))
            .Select(value => new WorkedField(value.Key.Replace('-', ' '), ["weighing", value.Key], value.Text)),
        .. Measured("wheelbase", 0, "wheelbase", ["wheelbase"]),
        .. Measured("track", 0, "front track", ["front", "track"]),
        .. Measured("track", 1, "rear track", ["rear", "track"]),
    ];

    private IEnumerable<WorkedField> Measured(string choice, int column, string label, string[] path) =>
        Lines.Where(line => line.Choice.Name == choice).Select(line => new WorkedField(label, path, line.Whole(0, column)));

    /// <summary>What is wrong and belongs to no single reading.</summary>
    public IEnumerable<string> Elsewhere => objections.Where(one => !Lines.Any(line => Places(line).Any(at => IsAt(one, line, at.Row, at.Column))))
        .Where(one => !IsMissing(one)).Select(one => garage.Units.Text(one.Sentence)).Distinct();

    /// <summary>What is not read yet, in words; blank for nothing.</summary>
    public string Waiting => string.Join(", ", Lines.Where(line => objections.Any(one => IsMissing(one) && one.Choice == line.Choice.Name)
        || (sheet.Needs(line.Choice.Name) && !line.Words.Any())).Select(line => line.Label));

    /// <summary>Whether the value can be had without a line's readings.</summary>
    public bool IsOptional(WorksheetLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return !line.Choice.IsNeeded && !line.Choice.IsRepeated && !sheet.Needs(line.Choice.Name);
    }

    /// <summary>Works the readings out.</summary>
    public void Look()
    {
        if (Lines.Any(line => Places(line).Any(at => line.Refusal(at.Row, at.Column) is not null)))
        {
            (Answer, objections) = (null, []);
            return;
        }

        (Answer, objections) = sheet.Door.Work(new Given(Lines.SelectMany(line => line.Words)), garage);
    }

    /// <summary>What is wrong with one reading, in words; null for nothing.</summary>
    public string? Refusal(WorksheetLine line, int row, int column) => line.Refusal(row, column)
        ?? objections.Where(one => IsAt(one, line, row, column)).Select(one => garage.Units.Text(one.Sentence)).FirstOrDefault();

    /// <summary>All that is typed, by the place of its box: what a page that is loaded again shows again.</summary>
    public Dictionary<string, string> Typed
    {
        get
        {
            var typed = new Dictionary<string, string>(StringComparer.Ordinal);
            foreach (var line in Lines)
            {
                typed[line.Choice.Name] = line.Choice.Kind == ChoiceKind.Tick ? (line.IsTicked ? Choice.Yes : "")
                    : FormattableString.Invariant($"{line.Cells.Count}");
                foreach (var (row, column) in Places(line))
                {
                    typed[Place(line, row, column)] = line.Cells[row][column];
                }

                foreach (var (unit, column) in line.Units.Select((unit, column) => (unit, column)))
                {
                    typed[$"{line.Choice.Name} unit {column}"] = unit;
                }
            }

            return typed;
        }
    }

    /// <summary>Takes up again what was typed.</summary>
    public void Take(IReadOnlyDictionary<string, string> typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        const int Most = 60;
        foreach (var line in Lines)
        {
            var said = typed.GetValueOrDefault(line.Choice.Name) ?? "";
            line.IsTicked = said == Choice.Yes;
            while (line.Choice.IsRepeated && int.TryParse(said, out var rows) && line.Cells.Count < Math.Min(rows, Most))
            {
                line.Add();
            }

            foreach (var (row, column) in Places(line))
            {
                line.Cells[row][column] = typed.GetValueOrDefault(Place(line, row, column)) ?? line.Cells[row][column];
            }

            for (var column = 0; column < line.Units.Length; column++)
            {
                var unit = typed.GetValueOrDefault($"{line.Choice.Name} unit {column}");
                line.Units[column] = line.Choice.Columns[column].Units.FirstOrDefault(one => one == unit) ?? line.Units[column];
            }
        }

        Look();
    }

    private static string Place(WorksheetLine line, int row, int column) => FormattableString.Invariant($"{line.Choice.Name} {row} {column}");

    private static IEnumerable<(int Row, int Column)> Places(WorksheetLine line) =>
        Enumerable.Range(0, line.Cells.Count).SelectMany(row => Enumerable.Range(0, line.Units.Length).Select(column => (row, column)));

    private static bool IsAt(Objection one, WorksheetLine line, int row, int column) =>
        one.Choice == line.Choice.Name && one.Place is { } place && line.RowOf(place.Row) == row && place.Column == column;

    private bool IsMissing(Objection one) => Lines.Any(line => line.Choice.Name == one.Choice && !line.Words.Any());
}
