using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Heaveline.Answers;
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
    public override IEnumerable<string> Lines =>
    [
        FactText.Of(Table).TrimEnd('\r', '\n'),
        "",
        .. Notes.Select(n => n.Text),
        .. CarFile.IsEmpty ? [] : new[] { "", "For the car file:" },
        .. CarFile.Select(line => "  " + line),
    ];
}
