using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>What a figure shows, as data: stacked panels between a title and a caption. Nothing here draws; Heaveline.Press does.</summary>
public sealed record Figure
{
    /// <summary>The title above the panels.</summary>
    public required string Title { get; init => field = Checked.NotBlank(value, "Say in a few words what the figure shows."); }

    /// <summary>What a reader who cannot see the figure is told: what is plotted and what it shows. Goes into the file, not on the page.</summary>
    public required string AltText { get; init => field = Checked.NotBlank(value, "Say in a sentence or two what one would see."); }

    /// <summary>The text under the figure, wrapped to its width. Blank for none.</summary>
    public string Caption { get; init => field = value ?? ""; } = "";

    /// <summary>Which way the signs point ("pitch is nose-down positive, ISO 8855"), in small italics under the caption. Blank for none.</summary>
    public string SignNote { get; init => field = value ?? ""; } = "";

    /// <summary>Printed width.</summary>
    public FigureSize Size { get; init; } = FigureSize.Column;

    /// <summary>The x axis of every chart panel that names none of its own. Null when each names its own.</summary>
    public Axis? SharedX { get; init; }

    /// <summary>Spans of the shared x axis shaded through every panel on it; their labels stand once, over the topmost of those panels.</summary>
    public ImmutableArray<Band> SharedBands { get; init => field = Drawable.Any(value); } = [];

    /// <summary>The panels from top to bottom, at least one.</summary>
    public required ImmutableArray<Panel> Panels { get; init => field = Drawable.Some(value, "Give at least one panel."); }

    // More columns than this do not fit a column's width in print.
    private const int MostColumns = 6;

    /// <summary>The same figure for one column of a page: wide tables are turned on their side.</summary>
    public Figure InColumn() => this with
    {
        Size = FigureSize.Column,
        Panels = [.. Panels.Select(p => p is TablePanel { Columns.Length: > MostColumns } table ? table.Turned() : p)],
    };

    /// <summary>The same figure in the units of a reader.</summary>
    /// <param name="units">The reader's units.</param>
    public Figure In(ReaderUnits units)
    {
        ArgumentNullException.ThrowIfNull(units);
        return FigureInUnits.Of(this, units);
    }

    /// <summary>The x axis a chart panel stands on: its own, or the shared one.</summary>
    /// <param name="panel">One of the figure's chart panels.</param>
    /// <exception cref="RefusedValueException">Neither the panel nor the figure has an x axis.</exception>
    public Axis XAxisOf(ChartPanel panel)
    {
        ArgumentNullException.ThrowIfNull(panel);
        return panel.X ?? SharedX ?? throw new RefusedValueException(
            $"x axis of panel '{panel.Y.Label}'", "missing", "given", "Give the panel an x axis, or the figure a shared one.");
    }
}
