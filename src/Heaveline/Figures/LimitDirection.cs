namespace Heaveline.Figures;

/// <summary>Which way a limit line runs.</summary>
public enum LimitDirection
{
    /// <summary>Across the panel at a value of y.</summary>
    AtY,

    /// <summary>Up the panel at a value of x.</summary>
    AtX,
}
