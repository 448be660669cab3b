using System.Collections.Immutable;
using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>Curves over an x and a y axis. Everything is placed in the units of the axes.</summary>
public sealed record ChartPanel : Panel
{
    /// <summary>The panel's own x axis; null to stand on the figure's shared one.</summary>
    public Axis? X { get; init; }

    /// <summary>The y axis.</summary>
    public required Axis Y { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); }

    /// <summary>Height of the plotting area on paper, mm, 8 to 200. Null: chosen by the width of the figure and the number of panels.</summary>
    public double? Height
    {
        get;
        init =>
            field = value is { } given ? Checked.Within(given, 8.0, 200.0, "Give the height of the plotting area in millimetres of paper.") : null;
    }

    /// <summary>The curves, drawn in this order.</summary>
    public ImmutableArray<Trace> Traces { get; init => field = Drawable.Any(value); } = [];

    /// <summary>Shaded intervals around curves, drawn under all curves.</summary>
    public ImmutableArray<Ribbon> Ribbons { get; init => field = Drawable.Any(value); } = [];

    /// <summary>Shaded spans of this panel alone; spans of all panels belong to <see cref="Figure.SharedBands"/>.</summary>
    public ImmutableArray<Band> Bands { get; init => field = Drawable.Any(value); } = [];

    /// <summary>Lines across the panel at a value that matters.</summary>
    public ImmutableArray<Limit> Limits { get; init => field = Drawable.Any(value); } = [];

    /// <summary>Points with a symbol.</summary>
    public ImmutableArray<Mark> Marks { get; init => field = Drawable.Any(value); } = [];

    /// <summary>Short texts placed in the plotting area.</summary>
    public ImmutableArray<Note> Notes { get; init => field = Drawable.Any(value); } = [];
}
