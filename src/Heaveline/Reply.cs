using Heaveline.Answers;

namespace Heaveline;

/// <summary>What a question is answered with: the same numbers, sentences and cautions as at the terminal, on the pages and in a report.</summary>
public class Reply
{
    private readonly Answer answer;
    private readonly string question;

    internal Reply(string question, Answer answer)
    {
        (this.question, this.answer) = (question, answer);
        Numbers = [.. answer.WholeTables.SelectMany(Flat)];
    }

    /// <summary>Every number, table by table, row by row. What does not exist is left out.</summary>
    public IReadOnlyList<Number> Numbers { get; }

    /// <summary>What the numbers say, each sentence with its id: a name for machines, never changed. The words may change.</summary>
    public IReadOnlyList<(string Id, string Text)> Sentences => [.. answer.Sentences.Select(s => (s.Id, s.Text))];

    /// <summary>Where the numbers must be doubted, and what must stand below numbers that people act on.</summary>
    public IReadOnlyList<string> Cautions => [.. answer.Cautions, .. answer.Closing];

    /// <summary>Where the methods come from, and how that is known.</summary>
    public IReadOnlyList<string> Sources => [.. answer.Sources.Select(s => $"{s.For}: {s.Citation} ({s.Known})")];

    /// <summary>Why there is less than was asked for, in a sentence; null where all of it is there.</summary>
    public string? Failure => answer.Failure;

    /// <summary>All of it as lines, as the command of the same name prints it.</summary>
    public IReadOnlyList<string> Lines => [.. answer.Lines];

    /// <summary>The first number of a key.</summary>
    /// <param name="key">Its name for machines.</param>
    /// <exception cref="KeyNotFoundException">There is none; the message names those that there are.</exception>
    public Number this[string key] => this[key, null];

    /// <summary>The number of a key in one column.</summary>
    /// <param name="key">Its name for machines.</param>
    /// <param name="column">Heading of the column; null: the first that has one.</param>
    /// <exception cref="KeyNotFoundException">There is none; the message names those that there are.</exception>
    public Number this[string key, string? column] =>
        Numbers.FirstOrDefault(n => n.Key == key && (column is null || n.Column == column))
        ?? throw new KeyNotFoundException(
            $"There is no number '{key}'{(column is null ? "" : $" under '{column}'")}. There are: "
            + $"{string.Join(", ", Numbers.Where(n => column is null || n.Column == column).Select(n => n.Key).Distinct())}.");

    /// <summary>All of it for machines, as the command of the same name writes it with <c>--json</c>.</summary>
    public string Json() => answer.Json(typeof(Reply).Assembly.GetName().Version!.ToString(3), question);

    private static IEnumerable<Number> Flat(FactTable table) =>
        table.Rows.SelectMany(row => row.Values.Zip(table.Columns).SelectMany(cell => cell.First is { } value
            ? new[] { new Number(table.Title, cell.Second, row.Key, row.Label.Trim(), value, row.Unit, row.Format) }
            : []));
}
