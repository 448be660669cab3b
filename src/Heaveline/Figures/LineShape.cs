using System.Collections.Immutable;

namespace Heaveline.Figures;

/// <summary>A line through points, or, when closed, a polygon that may be filled.</summary>
public sealed record LineShape : Shape
{
    /// <summary>A straight line.</summary>
    /// <param name="from">One end.</param>
    /// <param name="to">The other end.</param>
    /// <param name="pen">What it is drawn with; null for the third ink.</param>
    public static LineShape Between(ScenePoint from, ScenePoint to, Pen? pen = null) =>
        new() { Points = [from, to], Pen = pen ?? Pen.Of(Ink.Third) };

    /// <summary>The points in order, at least one.</summary>
    public required ImmutableArray<ScenePoint> Points { get; init => field = Drawable.Some(value, "Give the points of the line."); }

    /// <summary>True to join the last point to the first.</summary>
    public bool Closed { get; init; }

    /// <summary>The inside, when closed.</summary>
    public Fill Fill { get; init; } = Fill.None;

    /// <summary>What the line is drawn with; null for no outline.</summary>
    public Pen? Pen { get; init; } = Pen.Of(Ink.Third);
}
