using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>A text in a scene.</summary>
public sealed record TextShape : Shape
{
    /// <summary>Its place.</summary>
    public required ScenePoint At { get; init; }

    /// <summary>The text, one line.</summary>
    public required string Text { get; init => field = Checked.NotBlank(value, "Give the text."); }

    /// <summary>Which point of the text stands on its place.</summary>
    public Anchor Anchor { get; init; } = Anchor.Centre;

    /// <summary>The ink.</summary>
    public Ink Ink { get; init; } = Ink.Third;
}
