using System.Numerics;

namespace Heaveline.Drives;

/// <summary>Sums over a stretch of slow horizontal acceleration h, growth of speed and turning: any fit of the stretch is read off them.</summary>
/// <param name="Square">|h|².</param>
/// <param name="Braking">Growth of speed, squared.</param>
/// <param name="Turning">Speed times yaw rate, squared.</param>
/// <param name="Braked">h times growth.</param>
/// <param name="Turned">h times turning.</param>
internal readonly record struct SlowSums(double Square, double Braking, double Turning, Complex Braked, Complex Turned)
{
    /// <summary>One sample more.</summary>
    public SlowSums With(Complex h, double growth, double turning) => new(
        Square + (h.Real * h.Real) + (h.Imaginary * h.Imaginary),
        Braking + (growth * growth),
        Turning + (turning * turning),
        Braked + (h * growth),
        Turned + (h * turning));

    /// <summary>What braking (first) and turning count for along a given angle, of either sign; 0 for what there is none of.</summary>
    public (double Braking, double Turning) Counts(double angle)
    {
        const double nothing = 1e-12;
        var turn = Complex.FromPolarCoordinates(1.0, -angle);
        return (Braking > nothing ? (Braked * turn).Real / Braking : 0.0, Turning > nothing ? (Turned * turn).Imaginary / Turning : 0.0);
    }

    /// <summary>The same without braking.</summary>
    public SlowSums OfTurning => this with { Braking = 0.0, Braked = Complex.Zero };

    /// <summary>Both stretches.</summary>
    public static SlowSums operator +(SlowSums a, SlowSums b) =>
        new(a.Square + b.Square, a.Braking + b.Braking, a.Turning + b.Turning, a.Braked + b.Braked, a.Turned + b.Turned);

    /// <summary>The first stretch without the second, which is part of it.</summary>
    public static SlowSums operator -(SlowSums a, SlowSums b) =>
        new(a.Square - b.Square, a.Braking - b.Braking, a.Turning - b.Turning, a.Braked - b.Braked, a.Turned - b.Turned);

    /// <summary>All stretches.</summary>
    public static SlowSums Of(IEnumerable<SlowSums> stretches) => stretches.Aggregate(default(SlowSums), (a, b) => a + b);
}
