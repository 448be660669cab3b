namespace Heaveline.Figures;

/// <summary>Which point of a text stands on its place.</summary>
public enum Anchor
{
    /// <summary>Text to the right of its place, centred on its height.</summary>
    Left,

    /// <summary>Text centred on its place.</summary>
    Centre,

    /// <summary>Text to the left of its place, centred on its height.</summary>
    Right,

    /// <summary>Text centred below its place.</summary>
    Top,

    /// <summary>Text centred above its place.</summary>
    Bottom,

    /// <summary>Text below and to the right of its place.</summary>
    TopLeft,

    /// <summary>Text below and to the left of its place.</summary>
    TopRight,

    /// <summary>Text above and to the right of its place.</summary>
    BottomLeft,

    /// <summary>Text above and to the left of its place.</summary>
    BottomRight,
}
