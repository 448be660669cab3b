using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Numerics;

namespace Heaveline.Modes;

/// <summary>Sprung mass, suspension, unsprung mass and tyre one above the other: two damped modes, body and wheel hop.</summary>
public sealed record QuarterCar
{
    private QuarterCar(Complex body, Complex otherBody, Complex hop, Complex otherHop)
    {
        Body = body;
        Hop = hop;
        BodySquared = (body * otherBody).Real;
        HopSquared = (hop * otherHop).Real;
        BodyDecay = -0.5 * (body + otherBody).Real;
        HopDecay = -0.5 * (hop + otherHop).Real;
    }

    /// <summary>Root of the body mode, 1/s: the one with positive imaginary part, or the slower of two real ones.</summary>
    public Complex Body { get; }

    /// <summary>Root of the wheel-hop mode, 1/s.</summary>
    public Complex Hop { get; }

    /// <summary>Undamped frequency of the body mode |λ|/2π, Hz.</summary>
    public double BodyFrequency => Math.Sqrt(BodySquared) / (2.0 * Math.PI);

    /// <summary>Undamped frequency of wheel hop |λ|/2π, Hz.</summary>
    public double HopFrequency => Math.Sqrt(HopSquared) / (2.0 * Math.PI);

    /// <summary>Damping ratio of the body mode (–); 1 or above when it does not swing.</summary>
    public double BodyDampingRatio => BodyDecay / Math.Sqrt(BodySquared);

    /// <summary>Damping ratio of wheel hop (–).</summary>
    public double HopDampingRatio => HopDecay / Math.Sqrt(HopSquared);

    /// <summary>Period of the damped body mode 2π/Im λ, s; null when it does not swing.</summary>
    public double? BodyPeriod => Body.Imaginary > 0.0 ? 2.0 * Math.PI / Body.Imaginary : null;

    private double BodySquared { get; }

    private double HopSquared { get; }

    private double BodyDecay { get; }

    private double HopDecay { get; }

    /// <summary>The modes of a quarter car.</summary>
    /// <param name="sprung">m_s, kg.</param>
    /// <param name="unsprung">m_u, kg.</param>
    /// <param name="rate">Suspension rate k, N/m.</param>
    /// <param name="damping">Suspension damping c, N s/m.</param>
    /// <param name="tyreRate">k_t, N/m.</param>
    /// <param name="tyreDamping">c_t, N s/m.</param>
    public static QuarterCar Of(double sprung, double unsprung, double rate, double damping, double tyreRate, double tyreDamping = 0.0)
    {
        var a = Matrix<double>.Build.DenseOfArray(new[,]
        {
            { 0.0, 0.0, 1.0, 0.0 },
            { 0.0, 0.0, 0.0, 1.0 },
            { -rate / sprung, rate / sprung, -damping / sprung, damping / sprung },
            { rate / unsprung, -(rate + tyreRate) / unsprung, damping / unsprung, -(damping + tyreDamping) / unsprung },
        });
        // From the slowest to the fastest: a pair is either conjugate, of one magnitude, or two real roots of one overdamped motion.
        var roots = Eigenpairs.Of(a).Values.OrderBy(v => v.Magnitude).ThenByDescending(v => v.Imaginary).ToArray();
        return Pairs(roots);
    }

    // Two real roots may enclose a pair (heavy damping locks the masses together): then they belong together, and the body is the slower motion.
    private static QuarterCar Pairs(Complex[] roots)
    {
        if (roots[0].Imaginary != 0.0 || roots[1].Imaginary == 0.0)
        {
            return new QuarterCar(roots[0], roots[1], roots[2], roots[3]);
        }

        var pairIsSlower = (roots[1] * roots[2]).Real < (roots[0] * roots[3]).Real;
        return pairIsSlower ? new QuarterCar(roots[1], roots[2], roots[0], roots[3]) : new QuarterCar(roots[0], roots[3], roots[1], roots[2]);
    }
}
