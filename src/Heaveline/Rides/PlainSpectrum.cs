using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// Mean square of α·z + β·θ and κ·φ of a symmetric car without interconnection, wheels eliminated in closed form. Per axle, with z = k + iωc,
/// τ = k_t + iωc_t, W = τ − ω²m, D = z + W: the force on the body is F = (z/D)·(τ·r − W·h) at a road height r and a body height h there. What is left
/// is two equations for heave and pitch and one for roll.
/// </summary>
/// <remarks>
/// Every quotient is kept as a numerator, all multiplied by |D_f|²·|D_r|²; one division at the end serves as many frequencies as a register holds.
/// Stiffnesses and masses are counted in front tyre rates so that the products stay far from overflow. Written out in real numbers: as complex
/// operators it is more than the compiler puts in line in one method.
/// </remarks>
internal static class PlainSpectrum
{
    /// <summary>How many frequencies stand side by side on this processor.</summary>
    public static int Width { get; } = Vector512.IsHardwareAccelerated ? 8 : SpectrumTable.Lanes;

    /// <summary>The mean square.</summary>
    public static double MeanSquare(SpectrumTable t, in SymmetricRide car, double alpha, double beta, double kappa) => Width == 8
        ? MeanSquare<Lane512>(t, car, alpha, beta, kappa)
        : MeanSquare<Lane256>(t, car, alpha, beta, kappa);

    /// <summary>The mean square by registers of one width: the same bits from every one.</summary>
    [SkipLocalsInit]
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double MeanSquare<T>(SpectrumTable t, in SymmetricRide car, double alpha, double beta, double kappa)
        where T : unmanaged, ILane<T>
    {
        // Always the same four sums, whatever the register.
        var sums = Vector256<double>.Zero;
        var unit = 1.0 / car.Front.TyreRate;
        var (xf, xr, yf, yr) = (car.Front.X, car.Rear.X, car.Front.Y, car.Rear.Y);
        T kf = T.Of(unit * car.Front.Rate), cf = T.Of(unit * car.Front.Damping), mf = T.Of(unit * car.Front.HopMass);
        T kr = T.Of(unit * car.Rear.Rate), cr = T.Of(unit * car.Rear.Damping), mr = T.Of(unit * car.Rear.HopMass);
        T ktf = T.Of(unit * car.Front.TyreRate),
            ctf = T.Of(unit * car.Front.TyreDamping), ktr = T.Of(unit * car.Rear.TyreRate), ctr = T.Of(unit * car.Rear.TyreDamping);
        T mass = T.Of(unit * car.Mass), inertia = T.Of(unit * car.PitchInertia), gravity = T.Of(unit * car.PitchGravity);
        T xfw = T.Of(xf), xrw = T.Of(xr), xff = T.Of(xf * xf), xrr = T.Of(xr * xr);
        // Numerator α·(a₂₂b₁ − a₁₂b₂) + β·(a₁₁b₂ − a₁₂b₁) with b = g·(1, −x): g·(α·a₂₂ − (α·x − β)·m − β·x·a₁₁), m = −a₁₂.
        T al = T.Of(alpha), fx = T.Of(beta - (alpha * xf)), rx = T.Of(beta - (alpha * xr)), fb = T.Of(-beta * xf), rb = T.Of(-beta * xr);
        T rollMass = T.Of(unit * car.RollInertia), rollGravity = T.Of(unit * car.RollGravity);
        T akf = T.Of(unit * car.Front.RollRate), acf = T.Of(unit * car.Front.RollDamping), amf = T.Of(unit * car.Front.TrampMass);
        T akr = T.Of(unit * car.Rear.RollRate), acr = T.Of(unit * car.Rear.RollDamping), amr = T.Of(unit * car.Rear.TrampMass);
        T yf1 = T.Of(yf), yr1 = T.Of(yr), kk = T.Of(kappa * kappa);
        var rolls = kappa != 0.0 && car.Rolls;
        for (var q = 0; q < t.Steps<T>(); q++)
        {
            var at = t.Step<T>(q);
            T w = at[SpectrumTable.Omega], w2 = at[SpectrumTable.Square], dr = at[SpectrumTable.Cosine], di = at[SpectrumTable.Sine];
            Axle(kf, cf, ktf, ctf, mf, w, w2, out var gfr, out var gfi, out var sfr, out var sfi, out var pf);
            Axle(kr, cr, ktr, ctr, mr, w, w2, out var grr, out var gri, out var srr, out var sri, out var pr);
            sfr *= pr;
            sfi *= pr;
            srr *= pf;
            sri *= pf;
            var p = pf * pr;
            var a11r = T.Fma(-(w2 * mass), p, sfr + srr);
            var a11i = sfi + sri;
            var a12r = T.Fma(xfw, sfr, xrw * srr);
            var a12i = T.Fma(xfw, sfi, xrw * sri);
            var a22r = T.Fma(-T.Fma(w2, inertia, gravity), p, T.Fma(xff, sfr, xrr * srr));
            var a22i = T.Fma(xff, sfi, xrr * sri);
            var detr = T.Fma(a11r, a22r, -T.Fma(a11i, a22i, T.Fma(a12r, a12r, -(a12i * a12i))));
            var deti = T.Fma(a11r, a22i, T.Fma(a11i, a22r, -((a12r + a12r) * a12i)));
            var bottom = T.Fma(detr, detr, deti * deti);
            // Front and rear road: factor times the road's own part, front scaled by the rear's |D|² and the other way round.
            var hfr = T.Fma(al, a22r, T.Fma(fx, a12r, fb * a11r));
            var hfi = T.Fma(al, a22i, T.Fma(fx, a12i, fb * a11i));
            var hrr = T.Fma(al, a22r, T.Fma(rx, a12r, rb * a11r));
            var hri = T.Fma(al, a22i, T.Fma(rx, a12i, rb * a11i));
            var nfr = pr * T.Fma(gfr, hfr, -(gfi * hfi));
            var nfi = pr * T.Fma(gfr, hfi, gfi * hfr);
            var nrr = pf * T.Fma(grr, hrr, -(gri * hri));
            var nri = pf * T.Fma(grr, hri, gri * hrr);
            var top = Power(
                at[SpectrumTable.TogetherFront], at[SpectrumTable.TogetherRear], at[SpectrumTable.TogetherBoth], nfr, nfi, nrr, nri, dr, di);
            if (rolls)
            {
                Axle(akf, acf, ktf, ctf, amf, w, w2, out gfr, out gfi, out sfr, out sfi, out pf);
                Axle(akr, acr, ktr, ctr, amr, w, w2, out grr, out gri, out srr, out sri, out pr);
                var (front, rear) = (yf1 * pr, yr1 * pf);
                var ar = T.Fma(
                    front * yf1, sfr, T.Fma(rear * yr1, srr, -(T.Fma(w2, rollMass, rollGravity) * pf * pr)));
                var ai = T.Fma(front * yf1, sfi, rear * yr1 * sri);
                var rollTop = Power(
                    at[SpectrumTable.AgainstFront],
                    at[SpectrumTable.AgainstRear],
                    at[SpectrumTable.AgainstBoth],
                    front * gfr,
                    front * gfi,
                    rear * grr,
                    rear * gri,
                    dr,
                    di);
                var rollBottom = T.Fma(ar, ar, ai * ai);
                top = T.Fma(top, rollBottom, kk * rollTop * bottom);
                bottom *= rollBottom;
            }

            Add(top / bottom, ref sums);
        }

        return Vector256.Sum(sums);
    }

    /// <summary>Adds to four sums what stands in a register of four or eight places.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void Add<T>(T part, ref Vector256<double> sums)
        where T : unmanaged, ILane<T>
    {
        if (T.Count == SpectrumTable.Lanes)
        {
            sums += Unsafe.BitCast<T, Vector256<double>>(part);
        }
        else
        {
            var both = Unsafe.BitCast<T, Vector512<double>>(part);
            sums += both.GetLower();
            sums += both.GetUpper();
        }
    }

    // g = z·conj(D)·τ and s = z·conj(D)·W, both to be divided by p = |D|².
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Axle<T>(
        T k,
        T c,
        T kt,
        T ct,
        T m,
        T w,
        T w2,
        out T gr,
        out T gi,
        out T sr,
        out T si,
        out T p)
        where T : unmanaged, ILane<T>
    {
        var zi = w * c;
        var ti = w * ct;
        var wr = T.Fma(-w2, m, kt);
        var dr = k + wr;
        var di = zi + ti;
        p = T.Fma(dr, dr, di * di);
        var er = T.Fma(k, dr, zi * di);
        var ei = T.Fma(zi, dr, -(k * di));
        var cross = ei * ti;
        gr = T.Fma(er, kt, -cross);
        gi = T.Fma(er, ti, ei * kt);
        sr = T.Fma(er, wr, -cross);
        si = T.Fma(er, ti, ei * wr);
    }

    /// <summary>Front and rear together, the rear later: a·|f|² + b·|r|² + c·Re(f·conj(r·d)).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static T Power<T>(
        T ofFront,
        T ofRear,
        T ofBoth,
        T fr,
        T fi,
        T rr,
        T ri,
        T dr,
        T di)
        where T : unmanaged, ILane<T>
    {
        var mixed = T.Fma(fr, T.Fma(rr, dr, -(ri * di)), fi * T.Fma(rr, di, ri * dr));
        var squares = T.Fma(ofFront, T.Fma(fr, fr, fi * fi), ofRear * T.Fma(rr, rr, ri * ri));
        return T.Fma(ofBoth, mixed, squares);
    }
}
