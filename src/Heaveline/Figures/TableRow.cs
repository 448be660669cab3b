using System.Collections.Immutable;

namespace Heaveline.Figures;

/// <summary>One row of a table.</summary>
public sealed record TableRow
{
    /// <summary>A row of cells.</summary>
    /// <param name="cells">The texts from left to right.</param>
    public static TableRow Of(params ReadOnlySpan<string> cells) => new() { Cells = [.. cells] };

    /// <summary>The texts from left to right, one per column.</summary>
    public required ImmutableArray<string> Cells { get; init => field = Drawable.Some(value, "Give one cell per column."); }

    /// <summary>Printed in bold: the row the reader should look at.</summary>
    public bool Emphasised { get; init; }

    /// <summary>A thin line above the row, to set off a group.</summary>
    public bool RuledAbove { get; init; }

    /// <summary>Unit of its numbers, as one of its cells names it; blank where the columns have units, or it has no numbers.</summary>
    public string Unit { get; init => field = value ?? ""; } = "";
}
