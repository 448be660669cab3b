namespace Heaveline.Roads;

/// <summary>The International Roughness Index of one part of a profile.</summary>
/// <param name="Start">Where it begins, m from the profile's first height.</param>
/// <param name="Length">How long it is, m. The last one of a profile is as long as what is left.</param>
/// <param name="Slope">Mean of the golden car's suspension motion over distance (–), m per m.</param>
public readonly record struct IriSegment(double Start, double Length, double Slope)
{
    /// <summary>The index as it is always written, m/km.</summary>
    public double MetresPerKilometre => 1000.0 * Slope;
}
