namespace Heaveline.Figures;

/// <summary>How values are spaced along an axis.</summary>
public enum AxisScale
{
    /// <summary>Equal steps take equal room.</summary>
    Linear,

    /// <summary>Equal ratios take equal room; every value above zero.</summary>
    Logarithmic,
}
