using System.Numerics;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Roads;

/// <summary>
/// The quarter car that defines the International Roughness Index, per kilogram of its sprung mass, at 80 km/h [Sayers, On the calculation of IRI
/// from longitudinal road profile, TRR 1501 (1995); World Bank Technical Paper 46; ASTM E1926]. It has no real car's numbers on purpose: damped hard,
/// it answers to the roads that make cars shake. It runs on the profile's slope, so its states are slopes too.
/// </summary>
public static class GoldenCar
{
    /// <summary>Tyre rate over sprung mass, 1/s².</summary>
    public const double Tyre = 653.0;

    /// <summary>Spring rate over sprung mass, 1/s².</summary>
    public const double Spring = 63.3;

    /// <summary>Damping over sprung mass, 1/s.</summary>
    public const double Damping = 6.0;

    /// <summary>Unsprung over sprung mass (–).</summary>
    public const double UnsprungShare = 0.15;

    /// <summary>Speed, m/s: 80 km/h.</summary>
    public const double Speed = 80.0 / 3.6;

    /// <summary>
    /// One step of the car over a slope that stays for a distance: z ← S·z + p·slope, z = (sprung slope, its rate, unsprung slope, its rate).
    /// </summary>
    /// <remarks>
    /// Both come from one exponential of the equations with the slope as a fifth state that stays. The textbook's A⁻¹(S − I)B subtracts nearly
    /// equal numbers: in the published tables, made in single precision, it cost the first entry of p up to 7e-4 of itself.
    /// </remarks>
    /// <param name="distance">Distance, m.</param>
    /// <returns>S, shape (4, 4), and p, shape (4).</returns>
    public static (double[,] Transition, double[] Response) Step(double distance)
    {
        var withSlope = Matrix<double>.Build.DenseOfArray(new[,]
        {
            { 0.0, 1.0, 0.0, 0.0, 0.0 },
            { -Spring, -Damping, Spring, Damping, 0.0 },
            { 0.0, 0.0, 0.0, 1.0, 0.0 },
            { Spring / UnsprungShare, Damping / UnsprungShare, -(Tyre + Spring) / UnsprungShare, -Damping / UnsprungShare, Tyre / UnsprungShare },
            { 0.0, 0.0, 0.0, 0.0, 0.0 },
        });
        var step = MatrixExponential.Of(withSlope * (distance / Speed));
        return (step.SubMatrix(0, 4, 0, 4).ToArray(), step.Column(4, 0, 4).ToArray());
    }

    /// <summary>
    /// |sprung − unsprung slope| over the slope of a sine of spatial frequency n (–). From μs²u + k₁u − (k₂ + cs)r = k₁y, s²z = −(k₂ + cs)r and
    /// r = z − u, with s = 2πinV.
    /// </summary>
    /// <param name="n">Spatial frequency, cycles/m.</param>
    public static double Gain(double n)
    {
        var s = new Complex(0.0, 2.0 * Math.PI * n * Speed);
        var square = s * s;
        var strut = Spring + (Damping * s);
        return Complex.Abs(Tyre * square / ((((UnsprungShare * square) + Tyre) * (square + strut)) + (square * strut)));
    }
}
