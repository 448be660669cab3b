using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// One axle of a car whose sides differ, by half the sum and half the difference of its sides, at several frequencies side by side. It lies in
/// aligned memory, is read once at the top of a method and written at its end.
/// </summary>
internal struct OneSidedEnd<T>
    where T : unmanaged, ILane<T>
{
    // Rates and dampings together (hop), against (tramp), and half of what left and right differ by.
    private T rate;
    private T damping;
    private T rollRate;
    private T rollDamping;
    private T rateApart;
    private T dampingApart;
    private T hop;
    private T tramp;
    private T tyreRate;
    private T tyreDamping;

    // Z·D⁻¹, real and imaginary parts: together per together, against per against, and the mixed ones.
    private T togetherReal;
    private T togetherImaginary;
    private T againstReal;
    private T againstImaginary;
    private T togetherByAgainstReal;
    private T togetherByAgainstImaginary;
    private T againstByTogetherReal;
    private T againstByTogetherImaginary;
    private T tyreImaginary;

    /// <summary>x of the axle.</summary>
    public T Ahead;

    /// <summary>Half its track.</summary>
    public T Aside;

    /// <summary>y of its middle: the centre of gravity is not over it.</summary>
    public T Right;

    /// <summary>Force on the body per its height, Z·D⁻¹·W, both sides together.</summary>
    public T ForceReal;
    public T ForceImaginary;

    /// <summary>Force on both sides together per half the sides' difference, and the other way round.</summary>
    public T MixedReal;
    public T MixedImaginary;

    /// <summary>Force of the sides against each other.</summary>
    public T TiltReal;
    public T TiltImaginary;

    /// <summary>Takes the numbers of a car.</summary>
    /// <param name="mean">Mean of both sides.</param>
    /// <param name="apart">What they differ by.</param>
    /// <param name="unit">What stiffnesses and masses are counted in, one over it.</param>
    /// <param name="left">Centre of gravity left of the middle, m.</param>
    public void Take(in SymmetricAxle mean, OneSidedAxle apart, double unit, double left)
    {
        (rate, damping) = (T.Of(unit * mean.Rate), T.Of(unit * mean.Damping));
        (rollRate, rollDamping) = (T.Of(unit * mean.RollRate), T.Of(unit * mean.RollDamping));
        (rateApart, dampingApart) = (T.Of(unit * apart.Rate), T.Of(unit * apart.Damping));
        (hop, tramp) = (T.Of(unit * mean.HopMass), T.Of(unit * mean.TrampMass));
        (tyreRate, tyreDamping) = (T.Of(unit * mean.TyreRate), T.Of(unit * mean.TyreDamping));
        (Ahead, Aside, Right) = (T.Of(mean.X), T.Of(mean.Y), T.Of(-left));
    }

    /// <summary>Takes the wheels out of the equations.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Meet(in T omega, in T square)
    {
        T w = omega, w2 = square;
        T kt = tyreRate, ti = w * tyreDamping, k = rate, zi = w * damping, kd = rollRate, zdi = w * rollDamping;
        T er = rateApart, ei = w * dampingApart;
        T wsr = T.Fma(-w2, hop, kt), wdr = T.Fma(-w2, tramp, kt);
        T dsr = k + wsr, dsi = zi + ti, ddr = kd + wdr, ddi = zdi + ti;
        T eer = T.Fma(er, er, -(ei * ei)), eei = (er + er) * ei;
        Less(dsr, dsi, ddr, ddi, eer, eei, out var detr, out var deti);
        var scale = T.Of(1.0) / T.Fma(detr, detr, deti * deti);
        T vr = scale * detr, vi = -(scale * deti);
        Times(er, ei, vr, vi, out er, out ei);
        Less(k, zi, ddr, ddi, eer, eei, out var nr, out var ni);
        Times(nr, ni, vr, vi, out nr, out ni);
        (togetherReal, togetherImaginary) = (nr, ni);
        Times(nr, ni, wsr, ti, out nr, out ni);
        (ForceReal, ForceImaginary) = (nr, ni);
        Less(kd, zdi, dsr, dsi, eer, eei, out nr, out ni);
        Times(nr, ni, vr, vi, out nr, out ni);
        (againstReal, againstImaginary) = (nr, ni);
        Times(nr, ni, wdr, ti, out nr, out ni);
        (TiltReal, TiltImaginary) = (nr, ni);
        Times(er, ei, wdr, ti, out nr, out ni);
        (againstByTogetherReal, againstByTogetherImaginary) = (nr, ni);
        Times(er, ei, wsr, ti, out nr, out ni);
        (togetherByAgainstReal, togetherByAgainstImaginary) = (nr, ni);
        Times(nr, ni, wdr, ti, out nr, out ni);
        (MixedReal, MixedImaginary, tyreImaginary) = (nr, ni, ti);
    }

    /// <summary>
    /// What a wave under both sides together, and one under the sides against each other, do to the asked signal; the body's solution is of heave,
    /// pitch nose-up and roll.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void Answer(in OneSidedBody<T> body, out T sumReal, out T sumImaginary, out T differenceReal, out T differenceImaginary)
    {
        T kt = tyreRate, ti = tyreImaginary, rollr = body.RollReal, rolli = body.RollImaginary;
        var mr = T.Fma(Right, rollr, T.Fma(Ahead, body.PitchReal, body.HeaveReal));
        var mi = T.Fma(Right, rolli, T.Fma(Ahead, body.PitchImaginary, body.HeaveImaginary));
        Times(mr, mi, kt, ti, out mr, out mi);
        Times(rollr * Aside, rolli * Aside, kt, ti, out var sr, out var si);
        Times(mr, mi, togetherReal, togetherImaginary, out var ar, out var ai);
        Plus(sr, si, againstByTogetherReal, againstByTogetherImaginary, ar, ai, out sumReal, out sumImaginary);
        Times(mr, mi, togetherByAgainstReal, togetherByAgainstImaginary, out ar, out ai);
        Plus(sr, si, againstReal, againstImaginary, ar, ai, out differenceReal, out differenceImaginary);
    }

    // a·b.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Times(T ar, T ai, T br, T bi, out T real, out T imaginary)
    {
        real = T.Fma(ar, br, -(ai * bi));
        imaginary = T.Fma(ar, bi, ai * br);
    }

    // a·b − c.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Less(T ar, T ai, T br, T bi, T cr, T ci, out T real, out T imaginary)
    {
        real = T.Fma(ar, br, -T.Fma(ai, bi, cr));
        imaginary = T.Fma(ar, bi, T.Fma(ai, br, -ci));
    }

    // a·b + c.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Plus(T ar, T ai, T br, T bi, T cr, T ci, out T real, out T imaginary)
    {
        real = T.Fma(ar, br, T.Fma(-ai, bi, cr));
        imaginary = T.Fma(ar, bi, T.Fma(ai, br, ci));
    }
}
