using System.Text.Json.Nodes;
using Heaveline.Figures;
using Heaveline.Quantities;

namespace Heaveline.Answers;

/// <summary>
/// What a study says: the same wherever it is said. A command prints it, a page and a report set parts of it in their own order, a download writes it
/// whole.
/// </summary>
public abstract record Answer
{
    /// <summary>What was asked of what, above all else.</summary>
    public virtual IReadOnlyList<Sentence> Head => [];

    /// <summary>The numbers, as many as people read.</summary>
    public virtual IReadOnlyList<FactTable> Tables => [];

    /// <summary>Of these the ten or so that matter most: what is printed unless all are asked for.</summary>
    public virtual IReadOnlyList<FactTable> ShortTables => Tables;

    /// <summary>All numbers.</summary>
    public virtual IReadOnlyList<FactTable> WholeTables => Tables;

    /// <summary>Where the numbers must be doubted, one sentence each.</summary>
    public virtual IReadOnlyList<string> Cautions => [];

    /// <summary>What the numbers say.</summary>
    public virtual IReadOnlyList<Sentence> Sentences => [];

    /// <summary>Those of the cautions without which the tables are misread: they stand above them.</summary>
    internal virtual IReadOnlyList<string> Opening => [];

    /// <summary>What must stand below numbers that people act on.</summary>
    public virtual IReadOnlyList<string> Closing => [];

    /// <summary>Sources of the methods behind the numbers.</summary>
    public virtual IReadOnlyList<Source> Sources => [];

    /// <summary>Names of the figures, the one that stands for all of it first.</summary>
    public virtual IReadOnlyList<string> FigureIds => [];

    /// <summary>Why the answer is less than was asked for; null where it is whole.</summary>
    public virtual string? Failure => null;

    /// <summary>What machines are told before the tables.</summary>
    public virtual JsonObject Facts => [];

    /// <summary>A figure, made when it is asked for.</summary>
    /// <param name="id">One of <see cref="FigureIds"/>.</param>
    /// <exception cref="KeyNotFoundException">There is no figure of that name.</exception>
    public virtual Figure Figure(string id) => throw new KeyNotFoundException($"There is no figure '{id}' of this answer.");

    /// <summary>A file of the answer, and those that lie beside it under the same name with another ending.</summary>
    /// <param name="option">Which file, by the option that asks for it.</param>
    /// <param name="name">Its name without folder and ending, by which it may speak of those beside it.</param>
    public virtual IReadOnlyList<(string Ending, byte[] Bytes)> Written(string option, string name) =>
        throw new KeyNotFoundException($"There is no file '{option}' of this answer.");

    /// <summary>The numbers as CSV, in UTF-8.</summary>
    public virtual byte[] Csv() => TablesCsv.Of(WholeTables);

    /// <summary>All of it for machines.</summary>
    /// <param name="version">Version of the program.</param>
    /// <param name="question">Word of the question.</param>
    public string Json(string version, string question) => TablesJson.Of(version, question, WholeTables, Facts);

    /// <summary>The answer as lines for a terminal, in metric units: of the numbers those that matter most.</summary>
    public IEnumerable<string> Lines => LinesIn(ReaderUnits.Metric);

    /// <summary>The answer as lines for a terminal, with every number that people read, in the units of a reader.</summary>
    /// <param name="units">The reader's units.</param>
    public virtual IEnumerable<string> WholeLinesIn(ReaderUnits units) => LinesWith(Tables, units);

    /// <summary>The answer as lines for a terminal, in the units of a reader: of the numbers those that matter most.</summary>
    /// <param name="units">The reader's units.</param>
    public virtual IEnumerable<string> LinesIn(ReaderUnits units) => LinesWith(ShortTables, units);

    /// <summary>Tables as lines, a blank one above each.</summary>
    /// <param name="tables">The tables.</param>
    /// <param name="units">The reader's units.</param>
    private protected static IEnumerable<string> TableLines(IReadOnlyList<FactTable> tables, ReaderUnits units) =>
        tables.Where(table => table.Rows.Count > 0).SelectMany(table => new[] { "", FactText.Of(table.In(units)).TrimEnd('\r', '\n') });

    /// <summary>Whether the sentences come before the numbers: where they tell what happened.</summary>
    protected virtual bool TellsFirst => false;

    private IEnumerable<string> LinesWith(IReadOnlyList<FactTable> tables, ReaderUnits units)
    {
        string[] told = [.. Sentences.Select(s => units.Text(s.Text))];
        var (shown, all) = (Count(tables), Count(Tables));
        return
        [
            .. Head.Select(s => units.Text(s.Text)),
            .. TellsFirst ? told : [],
            .. Opening.Select(units.Text),
            .. TableLines(tables, units),
            "",
            .. shown < all ? [$"{shown} of {all} rows, those that matter most; all with --all."] : Array.Empty<string>(),
            .. Cautions.Except(Opening).Select(units.Text),
            .. TellsFirst ? [] : told,
            .. Closing.Select(units.Text),
        ];

        static int Count(IReadOnlyList<FactTable> tables) => tables.Sum(t => t.Rows.Count);
    }
}
