namespace Heaveline.Worksheets;

/// <summary>How a measured spring's force grows.</summary>
public enum SpringShape
{
    /// <summary>One rate.</summary>
    Straight,

    /// <summary>A rate that grows (or falls) steadily with compression.</summary>
    Progressive,

    /// <summary>Two rates with a crossover, as of two springs in a row of which one binds.</summary>
    TwoRates,
}
