using System.Numerics;

namespace Heaveline.Drives.Events;

/// <summary>A rise of one metre over a length of road: how bumps usually look from the side.</summary>
/// <param name="Length">Length from where it begins to where it ends, m.</param>
/// <param name="Ramp">Share of the length that each ramp takes; a half leaves no top; 0 is an arc.</param>
internal readonly record struct BumpShape(double Length, double Ramp)
{
    /// <summary>Shapes of all usual lengths: an arc, a wave, a flat top.</summary>
    public static IReadOnlyList<BumpShape> All { get; } =
    [
        .. from length in new[] { 0.2, 0.35, 0.5, 0.7, 0.9, 1.2, 1.6, 2.0, 2.5, 3.0, 3.6, 4.3, 5.1, 6.0, 7.2, 8.7, 10.5 }
           from ramp in new[] { 0.0, 0.5, 0.2 }
           select new BumpShape(length, ramp),
    ];

    /// <summary>∫ height·e^(−iκx) dx from where it begins, m².</summary>
    /// <param name="wave">κ, rad/m, not 0.</param>
    /// <remarks>
    /// An arc 1 − (x/a)², |x| below a, has the transform 4(sin κa − κa·cos κa)/(κ³a²). A flat top with ramps of half a cosine is a flat box smeared
    /// by half a cosine wave: box of length ℓ(1 − ρ) times the transform of that wave, about the middle; moved by half the length.
    /// </remarks>
    public Complex At(double wave)
    {
        var moved = Complex.FromPolarCoordinates(1.0, -0.5 * wave * Length);
        if (Ramp == 0.0)
        {
            var (a, at) = (0.5 * Length, 0.5 * wave * Length);
            // (sin x − x·cos x)/x³ is ⅓ − x²/30 near 0.
            var inner = at < 1e-2 ? (1.0 / 3.0) - (at * at / 30.0) : (Math.Sin(at) - (at * Math.Cos(at))) / (at * at * at);
            return 4.0 * a * inner * moved;
        }

        var (box, ramp) = (Length * (1.0 - Ramp), Length * Ramp);
        var middle = 2.0 * Math.Sin(0.5 * wave * box) / wave;
        // ½π/ρ·cos(πx/ρ) over ± ρ/2 has area 1 and the transform cos(κρ/2)/(1 − (κρ/π)²).
        var u = wave * ramp / Math.PI;
        var smear = Math.Abs(1.0 - (u * u)) < 1e-6 ? 0.25 * Math.PI : Math.Cos(0.5 * wave * ramp) / (1.0 - (u * u));
        return middle * smear * moved;
    }
}
