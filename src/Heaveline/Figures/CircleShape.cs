namespace Heaveline.Figures;

/// <summary>A circle: a wheel, a joint, a motion centre.</summary>
public sealed record CircleShape : Shape
{
    /// <summary>Its centre.</summary>
    public required ScenePoint Centre { get; init; }

    /// <summary>Its radius, m, above 0.</summary>
    public required double Radius { get; init => field = Drawable.Positive(value); }

    /// <summary>The inside.</summary>
    public Fill Fill { get; init; } = Fill.None;

    /// <summary>What the rim is drawn with; null for none.</summary>
    public Pen? Pen { get; init; } = Pen.Of(Ink.Third);
}
