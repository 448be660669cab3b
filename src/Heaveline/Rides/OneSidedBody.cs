using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// The body of a car whose sides differ: heave, pitch nose-up and roll in one symmetric system, solved for an asked signal by its cofactors, at
/// several frequencies side by side. It lies in aligned memory.
/// </summary>
internal struct OneSidedBody<T>
    where T : unmanaged, ILane<T>
{
    private T mass;
    private T pitchInertia;
    private T rollInertia;
    private T product;
    private T pitchGravity;
    private T rollGravity;
    private T alpha;
    private T beta;
    private T kappa;

    // The six entries, real and imaginary.
    private T zzr;
    private T zzi;
    private T zpr;
    private T zpi;
    private T zrr;
    private T zri;
    private T ppr;
    private T ppi;
    private T prr;
    private T pri;
    private T rrr;
    private T rri;

    /// <summary>The solution for the signal times the determinant, by heave.</summary>
    public T HeaveReal;
    public T HeaveImaginary;

    /// <summary>By pitch nose-up.</summary>
    public T PitchReal;
    public T PitchImaginary;

    /// <summary>By roll.</summary>
    public T RollReal;
    public T RollImaginary;

    /// <summary>|determinant|².</summary>
    public T Determinant;

    /// <summary>Power of the signal, weighted.</summary>
    public T Power;

    /// <summary>Takes the numbers of a car and of a signal.</summary>
    /// <param name="car">The car.</param>
    /// <param name="unit">What stiffnesses and masses are counted in, one over it.</param>
    /// <param name="alpha">Share of the heave in the signal.</param>
    /// <param name="beta">Share of the pitch.</param>
    /// <param name="kappa">Share of the roll.</param>
    public void Take(in OneSidedRide car, double unit, double alpha, double beta, double kappa)
    {
        var mean = car.Mean;
        (mass, pitchInertia, rollInertia) = (T.Of(unit * mean.Mass), T.Of(unit * mean.PitchInertia), T.Of(unit * mean.RollInertia));
        (product, pitchGravity, rollGravity) = (T.Of(unit * car.InertiaProduct), T.Of(unit * mean.PitchGravity), T.Of(unit * mean.RollGravity));
        // The signal's pitch is nose-down.
        (this.alpha, this.beta, this.kappa) = (T.Of(alpha), T.Of(-beta), T.Of(kappa));
    }

    /// <summary>
    /// Puts the body on its axles: a height over an axle's middle is z + x·pitch + y·roll, half of what its sides differ by Y·roll.
    /// </summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Stand(in T square, in OneSidedEnd<T> front, in OneSidedEnd<T> rear)
    {
        var w2 = square;
        T xf = front.Ahead, xr = rear.Ahead, y = front.Right, yf = front.Aside, yr = rear.Aside;
        T ffr = front.ForceReal, ffi = front.ForceImaginary, frr = rear.ForceReal, fri = rear.ForceImaginary;
        (zzr, zzi) = (T.Fma(-w2, mass, ffr + frr), ffi + fri);
        T pfr = xf * ffr, pfi = xf * ffi, p2r = xr * frr, p2i = xr * fri;
        (zpr, zpi) = (pfr + p2r, pfi + p2i);
        ppr = T.Fma(xf, pfr, T.Fma(xr, p2r, -T.Fma(w2, pitchInertia, pitchGravity)));
        ppi = T.Fma(xf, pfi, xr * p2i);
        // Forces of the axles per roll, and their moments.
        T mfr = front.MixedReal, mfi = front.MixedImaginary, m2r = rear.MixedReal, m2i = rear.MixedImaginary;
        T gfr = T.Fma(y, ffr, yf * mfr), gfi = T.Fma(y, ffi, yf * mfi), g2r = T.Fma(y, frr, yr * m2r), g2i = T.Fma(y, fri, yr * m2i);
        (zrr, zri) = (gfr + g2r, gfi + g2i);
        prr = T.Fma(xf, gfr, T.Fma(xr, g2r, -(w2 * product)));
        pri = T.Fma(xf, gfi, xr * g2i);
        var tr = T.Fma(yf, T.Fma(y, mfr, yf * front.TiltReal), yr * T.Fma(y, m2r, yr * rear.TiltReal));
        var ti = T.Fma(yf, T.Fma(y, mfi, yf * front.TiltImaginary), yr * T.Fma(y, m2i, yr * rear.TiltImaginary));
        rrr = T.Fma(y, gfr + g2r, tr - T.Fma(w2, rollInertia, rollGravity));
        rri = T.Fma(y, gfi + g2i, ti);
    }

    /// <summary>Solves.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Solve()
    {
        T ar = zzr, ai = zzi, br = zpr, bi = zpi, cr = zrr, ci = zri, dr = ppr, di = ppi, er = prr, ei = pri, fr = rrr, fi = rri;
        Cross(dr, di, fr, fi, er, ei, er, ei, out var zz, out var zzt);
        Cross(cr, ci, er, ei, br, bi, fr, fi, out var zp, out var zpt);
        Cross(br, bi, er, ei, cr, ci, dr, di, out var zr, out var zrt);
        var real = T.Fma(ar, zz, T.Fma(-ai, zzt, T.Fma(br, zp, T.Fma(-bi, zpt, T.Fma(cr, zr, -(ci * zrt))))));
        var imaginary = T.Fma(ar, zzt, T.Fma(ai, zz, T.Fma(br, zpt, T.Fma(bi, zp, T.Fma(cr, zrt, ci * zr)))));
        Determinant = T.Fma(real, real, imaginary * imaginary);
        T a = alpha, b = beta, k = kappa;
        HeaveReal = T.Fma(a, zz, T.Fma(b, zp, k * zr));
        HeaveImaginary = T.Fma(a, zzt, T.Fma(b, zpt, k * zrt));
        Cross(ar, ai, fr, fi, cr, ci, cr, ci, out var pp, out var ppt);
        Cross(cr, ci, br, bi, ar, ai, er, ei, out var pr, out var prt);
        PitchReal = T.Fma(a, zp, T.Fma(b, pp, k * pr));
        PitchImaginary = T.Fma(a, zpt, T.Fma(b, ppt, k * prt));
        Cross(ar, ai, dr, di, br, bi, br, bi, out var rr, out var rrt);
        RollReal = T.Fma(a, zr, T.Fma(b, pr, k * rr));
        RollImaginary = T.Fma(a, zrt, T.Fma(b, prt, k * rrt));
    }

    // a·b − c·d.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Cross(T ar, T ai, T br, T bi, T cr, T ci, T dr, T di, out T real, out T imaginary)
    {
        real = T.Fma(ar, br, T.Fma(-ai, bi, T.Fma(ci, di, -(cr * dr))));
        imaginary = T.Fma(ar, bi, T.Fma(ai, br, -T.Fma(cr, di, ci * dr)));
    }
}
