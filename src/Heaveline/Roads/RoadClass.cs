using Heaveline.Quantities;

namespace Heaveline.Roads;

/// <summary>
/// Class of a road by the spectral density of its heights at 0.1 cycles/m [ISO 8608:2016, table C.2, as public transcriptions of it agree]. The
/// geometric means are 16·4^k ·10⁻⁶ m³ and the limits twice and half of them; A has no lower limit and H no upper one.
/// </summary>
public sealed record RoadClass
{
    private RoadClass(char letter)
    {
        Letter = letter;
        var mean = 16e-6 * Math.ScaleB(1.0, 2 * (letter - 'A'));
        Mean = new(mean);
        Lower = letter == 'A' ? new(0.0) : new(mean / 2.0);
        Upper = letter == 'H' ? new(double.PositiveInfinity) : new(2.0 * mean);
    }

    /// <summary>Very good: geometric mean 16e-6 m³.</summary>
    public static RoadClass A { get; } = new('A');

    /// <summary>Good: geometric mean 64e-6 m³.</summary>
    public static RoadClass B { get; } = new('B');

    /// <summary>Average: geometric mean 256e-6 m³.</summary>
    public static RoadClass C { get; } = new('C');

    /// <summary>Poor: geometric mean 1 024e-6 m³.</summary>
    public static RoadClass D { get; } = new('D');

    /// <summary>Very poor: geometric mean 4 096e-6 m³.</summary>
    public static RoadClass E { get; } = new('E');

    /// <summary>Geometric mean 16 384e-6 m³.</summary>
    public static RoadClass F { get; } = new('F');

    /// <summary>Geometric mean 65 536e-6 m³.</summary>
    public static RoadClass G { get; } = new('G');

    /// <summary>Geometric mean 262 144e-6 m³.</summary>
    public static RoadClass H { get; } = new('H');

    /// <summary>All classes, smoothest first.</summary>
    public static IReadOnlyList<RoadClass> All { get; } = [A, B, C, D, E, F, G, H];

    /// <summary>Its letter, A to H.</summary>
    public char Letter { get; }

    /// <summary>Geometric mean of the density at 0.1 cycles/m.</summary>
    public Amount<RoadDensity> Mean { get; }

    /// <summary>Least density of the class, itself in it; 0 for A.</summary>
    public Amount<RoadDensity> Lower { get; }

    /// <summary>Density above the class, not in it; infinite for H.</summary>
    public Amount<RoadDensity> Upper { get; }

    /// <summary>The class that a density at 0.1 cycles/m falls into.</summary>
    /// <param name="density">G_d(n0), above 0.</param>
    public static RoadClass Of(Amount<RoadDensity> density)
    {
        _ = Checked.Positive(density, "Give the spectral density of heights at 0.1 cycles/m.", "Density");
        return All.First(c => density.Si < c.Upper.Si);
    }

    /// <inheritdoc/>
    public override string ToString() => $"class {Letter}";
}
