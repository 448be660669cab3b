namespace Heaveline.Figures;

/// <summary>How the values of categories are drawn.</summary>
public enum CategoryStyle
{
    /// <summary>Bars from zero: for amounts.</summary>
    Bars,

    /// <summary>Dots, the axis need not hold zero: for places on a scale.</summary>
    Dots,
}
