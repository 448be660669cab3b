namespace Heaveline.Figures;

/// <summary>How a line is broken up.</summary>
public enum Dash
{
    /// <summary>Unbroken.</summary>
    Solid,

    /// <summary>Dashes.</summary>
    Dashed,

    /// <summary>Dots.</summary>
    Dotted,

    /// <summary>Dash and dot in turn.</summary>
    DashDot,
}
