using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A short text in the plotting area.</summary>
public sealed record Note
{
    /// <summary>Place along x, in the unit of the x axis.</summary>
    public required double X { get; init => field = Drawable.Finite(value); }

    /// <summary>Height, in the unit of the y axis.</summary>
    public required double Y { get; init => field = Drawable.Finite(value); }

    /// <summary>The text, one line.</summary>
    public required string Text { get; init => field = Checked.NotBlank(value, "Give the text of the note."); }

    /// <summary>Which point of the text stands on its place.</summary>
    public Anchor Anchor { get; init; } = Anchor.Left;
}
