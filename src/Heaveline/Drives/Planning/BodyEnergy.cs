namespace Heaveline.Drives.Planning;

/// <summary>Mean squares of the body's motion over a window: of ż, of their product, of k·θ̇, m²/s².</summary>
internal readonly record struct BodyEnergy(double Heave, double Mixed, double Turn)
{
    public double Whole => Heave + Turn;

    /// <summary>What of it lies along a direction, m²/s².</summary>
    public double Along(BodyDirection d) => (d.Heave * d.Heave * Heave) + (2.0 * d.Heave * d.Turn * Mixed) + (d.Turn * d.Turn * Turn);

    /// <summary>The share that lies along a direction (–).</summary>
    public double ShareOf(BodyDirection direction) => Whole > 0.0 ? Along(direction) / Whole : 0.0;
}
