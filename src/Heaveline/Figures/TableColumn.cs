namespace Heaveline.Figures;

/// <summary>The head of one column of a table.</summary>
public sealed record TableColumn
{
    /// <summary>The heading. Blank for none.</summary>
    public required string Heading { get; init => field = value ?? ""; }

    /// <summary>The unit under the heading. Blank for none.</summary>
    public string Unit { get; init => field = value ?? ""; } = "";

    /// <summary>How its cells stand: numbers to the right, words to the left.</summary>
    public ColumnAlignment Alignment { get; init; } = ColumnAlignment.Right;
}
