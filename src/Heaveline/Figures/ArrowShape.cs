namespace Heaveline.Figures;

/// <summary>An arrow: a force, a motion, a direction. Its head has a fixed size on paper.</summary>
public sealed record ArrowShape : Shape
{
    /// <summary>The tail.</summary>
    public required ScenePoint From { get; init; }

    /// <summary>The tip.</summary>
    public required ScenePoint To { get; init; }

    /// <summary>What it is drawn with.</summary>
    public Pen Pen { get; init => field = value ?? throw new ArgumentNullException(nameof(value)); } = Pen.Of(Ink.Third);

    /// <summary>The label at the tip. Blank for none.</summary>
    public string Label { get; init => field = value ?? ""; } = "";
}
