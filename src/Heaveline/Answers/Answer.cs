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

    /// <summary>All numbers.</summary>
    public virtual IReadOnlyList<FactTable> WholeTables => Tables;

    /// <summary>Where the numbers must be doubted, one sentence each.</summary>
    public virtual IReadOnlyList<string> Cautions => [];

    /// <summary>What the numbers say.</summary>
    public virtual IReadOnlyList<Sentence> Sentences => [];

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

    /// <summary>The numbers as CSV, in UTF-8.</summary>
    public virtual byte[] Csv() => TablesCsv.Of(WholeTables);

    /// <summary>All of it for machines.</summary>
    /// <param name="version">Version of the program.</param>
    /// <param name="question">Word of the question.</param>
    public string Json(string version, string question) => TablesJson.Of(version, question, WholeTables, Facts);

    /// <summary>All of it as lines for a terminal, in metric units.</summary>
    public IEnumerable<string> Lines => LinesIn(ReaderUnits.Metric);

    /// <summary>All of it as lines for a terminal, in the units of a reader.</summary>
    /// <param name="units">The reader's units.</param>
    public virtual IEnumerable<string> LinesIn(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return
        [
            .. Head.Select(s => units.Text(s.Text)),
            .. TableLines(units),
            "",
            .. Cautions.Select(units.Text),
            .. Sentences.Select(s => units.Text(s.Text)),
            .. Closing.Select(units.Text),
        ];
    }

    /// <summary>The tables as lines, a blank one above each.</summary>
    /// <param name="units">The reader's units.</param>
    private protected IEnumerable<string> TableLines(ReaderUnits units) =>
        Tables.SelectMany(table => new[] { "", FactText.Of(table.In(units)).TrimEnd('\r', '\n') });
}
