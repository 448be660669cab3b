using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
using Heaveline.Quantities;
using Heaveline.Worksheets;

namespace Heaveline.Studies;

/// <summary>A garage measurement worked out: values beside their doubts, what the sheet says about itself, lines for a car file.</summary>
public sealed record SheetAnswer : Answer
{
    /// <summary>Which sheet, by its word ("weigh").</summary>
    public required string Sheet { get; init; }

    /// <summary>The values.</summary>
    public required FactTable Table { get; init; }

    /// <summary>What the sheet says about itself.</summary>
    public required ImmutableArray<SheetNote> Notes { get; init; }

    /// <summary>Lines to paste into a car file; empty for none.</summary>
    public ImmutableArray<string> CarFile { get; init; } = [];

    /// <summary>The same values by the keys of a car file that they belong under; empty where the readings give none that may be used.</summary>
    public ImmutableArray<SheetValue> Values { get; init; } = [];

    /// <summary>What it was worked out from, in words ("4 pairs of length and force").</summary>
    public required string From { get; init; }

    /// <inheritdoc/>
    public override IReadOnlyList<FactTable> Tables => [Table];

    /// <inheritdoc/>
    public override IReadOnlyList<Sentence> Sentences => [.. Notes.Select(n => new Sentence(n.Id, n.Text))];

    /// <inheritdoc/>
    public override JsonObject Facts => new()
    {
        ["sheet"] = Sheet,
        ["notes"] = TablesJson.Texts(Notes.Select(n => n.Text)),
        ["car-file"] = TablesJson.Texts(CarFile),
    };

    /// <inheritdoc/>
    /// <remarks>The lines for the car file stay as they are: they are a file's text, not a reader's.</remarks>
    public override IEnumerable<string> LinesIn(ReaderUnits units) =>
    [
        FactText.Of(Table.In(units)).TrimEnd('\r', '\n'),
        "",
        .. Notes.Select(n => units.Text(n.Text)),
        .. CarFile.IsEmpty ? [] : new[] { "", "For the car file:" },
        .. CarFile.Select(line => "  " + line),
    ];
}
