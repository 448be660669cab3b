namespace Heaveline.Figures;

/// <summary>How a span is shaded.</summary>
public enum BandShade
{
    /// <summary>A light grey ground.</summary>
    LightGrey,

    /// <summary>A grey one step darker.</summary>
    Grey,

    /// <summary>Thin slanting lines.</summary>
    Hatched,
}
