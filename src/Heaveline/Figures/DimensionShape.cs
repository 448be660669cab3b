using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A dimension line between two points: arrows at both ends, the measure beside it, thin lines from the points to it.</summary>
public sealed record DimensionShape : Shape
{
    /// <summary>One measured point.</summary>
    public required ScenePoint From { get; init; }

    /// <summary>The other measured point.</summary>
    public required ScenePoint To { get; init; }

    /// <summary>What is written at the line ("wheelbase 2.70 m").</summary>
    public required string Text { get; init => field = Checked.NotBlank(value, "Give the measure."); }

    /// <summary>
    /// How far the line stands off the points, m, along the normal to the left of the way from <see cref="From"/> to
    /// <see cref="To"/>; negative to the right.
    /// </summary>
    public double Offset { get; init => field = Drawable.Finite(value); }
}
