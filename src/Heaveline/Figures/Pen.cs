using Heaveline.Quantities;

namespace Heaveline.Figures;

/// <summary>What a line is drawn with.</summary>
public sealed record Pen
{
    /// <summary>A plain pen of one ink.</summary>
    /// <param name="ink">The ink.</param>
    /// <param name="dash">How the line is broken up.</param>
    public static Pen Of(Ink ink, Dash dash = Dash.Solid) => new() { Ink = ink, Dash = dash };

    /// <summary>The ink.</summary>
    public Ink Ink { get; init; } = Ink.First;

    /// <summary>How the line is broken up.</summary>
    public Dash Dash { get; init; } = Dash.Solid;

    /// <summary>Width on paper, typographic points (1/72 in), 0.1 to 6. Default 1.1.</summary>
    public double Width { get; init => field = Checked.Within(value, 0.1, 6.0, "Give the width of the line on paper in points."); } = 1.1;
}
