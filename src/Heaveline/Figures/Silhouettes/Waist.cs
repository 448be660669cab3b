namespace Heaveline.Figures.Silhouettes;

/// <summary>The line that the glass of a car stands on, and how its bonnet falls from there to the lamp.</summary>
/// <param name="Height">Height of the waist, m.</param>
/// <param name="Roof">Height of the roof over it, m.</param>
/// <param name="Bonnet">How much higher the bonnet's front is than usual (–).</param>
internal readonly record struct Waist(double Height, double Roof, double Bonnet)
{
    private const double LeastBonnet = 0.85;
    private const double MostBonnet = 1.15;

    /// <summary>A waist that leaves room for the wheels under it and for the lamp where it was measured.</summary>
    /// <param name="measures">The measures.</param>
    /// <param name="share">Usual height of the waist as a share of the roof's.</param>
    /// <param name="lamp">Usual height of the lamp as a share of the waist's.</param>
    /// <param name="arch">Radius of an arch as a share of the wheel's.</param>
    public static Waist Of(SilhouetteMeasures measures, double share, double lamp, double arch)
    {
        var over = (1.0 + arch) * measures.WheelRadius;
        var height = Math.Max(Math.Max(share * measures.Height, measures.Lamp.Z / (lamp * MostBonnet)), (over + 0.08) / 0.85);
        return new(
            height,
            Math.Max(measures.Height, 1.25 * height),
            Math.Clamp(measures.Lamp.Z / (height * lamp), LeastBonnet, MostBonnet));
    }

    /// <summary>A height at the front between ground and waist, by its share: it goes with the lamp, and is never above the waist.</summary>
    public double Front(double share) => Math.Min(share * Height * Bonnet, 0.97 * Height);
}
