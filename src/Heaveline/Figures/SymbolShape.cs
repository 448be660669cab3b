namespace Heaveline.Figures;

/// <summary>A symbol of fixed size on paper at a place of the scene, with a label beside it: a centre of gravity, a motion centre.</summary>
public sealed record SymbolShape : Shape
{
    /// <summary>Its place.</summary>
    public required ScenePoint At { get; init; }

    /// <summary>The symbol.</summary>
    public MarkSymbol Symbol { get; init; } = MarkSymbol.Dot;

    /// <summary>The ink.</summary>
    public Ink Ink { get; init; } = Ink.Third;

    /// <summary>The label. Blank for none.</summary>
    public string Label { get; init => field = value ?? ""; } = "";

    /// <summary>Which point of the label stands beside the symbol.</summary>
    public Anchor Anchor { get; init; } = Anchor.Left;
}
