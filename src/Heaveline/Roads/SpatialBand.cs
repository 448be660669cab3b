using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>A range of spatial frequencies.</summary>
public sealed record SpatialBand
{
    /// <summary>Makes the band.</summary>
    /// <param name="low">Lowest spatial frequency, cycles/m, 1e-4 to 100.</param>
    /// <param name="high">Highest spatial frequency, cycles/m, above the lowest, at most 100.</param>
    public SpatialBand(double low, double high)
    {
        Low = Checked.Within(low, 1e-4, 100.0, "Give the lowest spatial frequency in cycles/m.", "LowestSpatialFrequency");
        High = Checked.Within(
            high, Math.BitIncrement(low), 100.0, "Give the highest spatial frequency in cycles/m, above the lowest.", "HighestSpatialFrequency");
    }

    /// <summary>
    /// 0.011 to 2.83 cycles/m, waves of 91 m to 0.35 m: the range over which ISO 8608 fits its straight line (as public transcriptions have it).
    /// </summary>
    public static SpatialBand Iso8608 { get; } = new(0.011, 2.83);

    /// <summary>Lowest spatial frequency, cycles/m.</summary>
    public double Low { get; }

    /// <summary>Highest spatial frequency, cycles/m.</summary>
    public double High { get; }

    /// <summary>Whether a spatial frequency lies in it, its ends included.</summary>
    public bool Holds(double n) => n >= Low && n <= High;

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant($"{Low:0.####} to {High:0.####} cycles/m");
}
