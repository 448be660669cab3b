using System.Numerics;

namespace Heaveline.Tests.Measures;

/// <summary>x = A·e^(−σt)·sin(ωt) from t = 0 on, nothing before: its values, derivatives and integrals in closed form.</summary>
/// <param name="Size">A.</param>
/// <param name="Decay">σ, 1/s.</param>
/// <param name="Swing">ω, rad/s.</param>
internal sealed record DampedSwing(double Size, double Decay, double Swing)
{
    // x = Im A·e^(λt).
    private Complex Root => new(-Decay, Swing);

    /// <summary>First turning point, s; each next is π/ω later, e^(−σπ/ω) as high and on the other side.</summary>
    public double FirstTop => Math.Atan(Swing / Decay) / Swing;

    /// <summary>Height of the first turning point.</summary>
    public double Top => At(FirstTop);

    public double HalfPeriod => Math.PI / Swing;

    /// <summary>What is left of a turning point at the next one.</summary>
    public double Left => Math.Exp(-Decay * HalfPeriod);

    public double At(double t) => Derivative(t, 0);

    public double Derivative(double t, int order) => t >= 0.0 ? Size * (Complex.Pow(Root, order) * Complex.Exp(Root * t)).Imaginary : 0.0;

    /// <summary>√(∫ of the square of a derivative over from … to, both after zero).</summary>
    public double Root2(double from, double to, int order = 0)
    {
        // (Im c·e^(λt))² = ½|c|²e^(−2σt) − ½Re c²e^(2λt).
        var c = Size * Complex.Pow(Root, order);
        var plain = c.Magnitude * c.Magnitude * (Math.Exp(-2.0 * Decay * from) - Math.Exp(-2.0 * Decay * to)) / (2.0 * Decay);
        var turning = c * c * (Complex.Exp(2.0 * Root * to) - Complex.Exp(2.0 * Root * from)) / (2.0 * Root);
        return Math.Sqrt(0.5 * (plain - turning.Real));
    }

    /// <summary>The last time at which |x| passes a level, by halving between its last turning point above it and the next zero.</summary>
    public double LastAbove(double level)
    {
        var n = (int)Math.Floor(Math.Log(level / Top) / Math.Log(Left));
        var (from, to) = (FirstTop + (n * HalfPeriod), (n + 1) * HalfPeriod);
        for (var i = 0; i < 60; i++)
        {
            var middle = 0.5 * (from + to);
            (from, to) = Math.Abs(At(middle)) > level ? (middle, to) : (from, middle);
        }

        return to;
    }
}
