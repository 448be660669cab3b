using Heaveline.Quantities;
using MathNet.Numerics;

namespace Heaveline.Roads;

/// <summary>
/// How far two parallel tracks of one surface go together, if the surface looks alike in every direction (isotropy): cross over auto spectral
/// density γ(n) = 2(πbn)^(w/2)·K_(w/2)(2πbn)/Γ(w/2) for G_d ∝ n^−w and a distance b between the tracks, with w = 2 2πbn·K₁(2πbn)
/// [Dodds and Robson, The description of road surface roughness, J. Sound Vib. 31 (1973) 175; the closed form for any w follows from their
/// integral]. Its square is the ordinary coherence. Measured roads lie below and above it: isotropy is a model, and not the best one.
/// </summary>
public sealed record TrackCoherence
{
    // Below this argument 1 − γ is lost in rounding for every w allowed here, and K would grow towards overflow.
    private const double Together = 1e-60;

    /// <summary>b, distance between the tracks, 0 to 10 m.</summary>
    public required Amount<Length> Track { get; init => field = Checked.Within(value, 0.0, 10.0, "Give the distance between the wheel tracks."); }

    /// <summary>w, exponent of the spectrum (–), 0.5 to 5.</summary>
    public double Waviness { get; init => field = Checked.Within(value, 0.5, 5.0, "Give the exponent of the spectrum, usually 1.5 to 3."); } = 2.0;

    /// <summary>γ(n), between 0 and 1.</summary>
    /// <param name="n">Spatial frequency, cycles/m, 0 or above.</param>
    public double At(double n)
    {
        var order = Waviness / 2.0;
        var a = 2.0 * Math.PI * Track.Si * n;

        // γ falls monotonically from 1; past a = 700 the exponential has underflowed. Math.Min takes the rounding above 1 at small a.
        return a switch
        {
            <= Together => 1.0,
            > 700.0 => 0.0,
            _ when order == 1.0 => Math.Min(1.0, a * SpecialFunctions.BesselK1(a)),
            _ => Math.Min(1.0, 2.0 * Math.Pow(a / 2.0, order) * SpecialFunctions.BesselK(order, a) / SpecialFunctions.Gamma(order)),
        };
    }

    /// <summary>γ²(n), the ordinary (squared) coherence.</summary>
    /// <param name="n">Spatial frequency, cycles/m, 0 or above.</param>
    public double SquaredAt(double n) => Math.Pow(At(n), 2.0);
}
