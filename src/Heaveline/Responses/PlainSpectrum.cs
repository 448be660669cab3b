using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Responses;

/// <summary>
/// Mean square of α·z + β·θ and κ·φ of a symmetric car without interconnection, wheels eliminated in closed form. Per axle, with z = k + iωc,
/// τ = k_t + iωc_t, W = τ − ω²m, D = z + W: the force on the body is F = (z/D)·(τ·r − W·h) at a road height r and a body height h there. What is left is
/// two equations for heave and pitch and one for roll.
/// </summary>
/// <remarks>
/// Every quotient is kept as a numerator, all multiplied by |D_f|²·|D_r|²; one division at the end serves four frequencies. Stiffnesses and masses are
/// counted in front tyre rates so that the products stay far from overflow. Written out in real numbers: as complex operators it is more than the
/// compiler puts in line in one method.
/// </remarks>
internal static class PlainSpectrum
{
    [SkipLocalsInit]
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double MeanSquare(SpectrumTable t, in SymmetricRide car, double alpha, double beta, double kappa)
    {
        var unit = 1.0 / car.Front.TyreRate;
        var (xf, xr, yf, yr) = (car.Front.X, car.Rear.X, car.Front.Y, car.Rear.Y);
        Vector256<double> kf = Of(unit * car.Front.Rate), cf = Of(unit * car.Front.Damping), mf = Of(unit * car.Front.HopMass);
        Vector256<double> kr = Of(unit * car.Rear.Rate), cr = Of(unit * car.Rear.Damping), mr = Of(unit * car.Rear.HopMass);
        Vector256<double> ktf = Of(unit * car.Front.TyreRate), ctf = Of(unit * car.Front.TyreDamping), ktr = Of(unit * car.Rear.TyreRate), ctr = Of(unit * car.Rear.TyreDamping);
        Vector256<double> mass = Of(unit * car.Mass), inertia = Of(unit * car.PitchInertia), gravity = Of(unit * car.PitchGravity);
        Vector256<double> xfw = Of(xf), xrw = Of(xr), xff = Of(xf * xf), xrr = Of(xr * xr);
        // Numerator α·(a₂₂b₁ − a₁₂b₂) + β·(a₁₁b₂ − a₁₂b₁) with b = g·(1, −x): g·(α·a₂₂ + (α·x − β)·a₁₂ − β·x·a₁₁).
        Vector256<double> al = Of(alpha), fx = Of((alpha * xf) - beta), rx = Of((alpha * xr) - beta), fb = Of(-beta * xf), rb = Of(-beta * xr);
        Vector256<double> rollMass = Of(unit * car.RollInertia), rollGravity = Of(unit * car.RollGravity);
        Vector256<double> akf = Of(unit * car.Front.RollRate), acf = Of(unit * car.Front.RollDamping), amf = Of(unit * car.Front.TrampMass);
        Vector256<double> akr = Of(unit * car.Rear.RollRate), acr = Of(unit * car.Rear.RollDamping), amr = Of(unit * car.Rear.TrampMass);
        Vector256<double> yff = Of(yf * yf), yrr = Of(yr * yr), kff = Of(kappa * kappa * yf * yf), krr = Of(kappa * kappa * yr * yr), kfr = Of(kappa * kappa * yf * yr);
        var sum = Vector256<double>.Zero;
        var rolls = kappa != 0.0 && car.Rolls;
        for (var q = 0; q < t.Count; q++)
        {
            Vector256<double> w = t.Omega[q], w2 = t.Square[q], dr = t.Cosine[q], di = t.Sine[q];
            Axle(kf, cf, ktf, ctf, mf, w, w2, out var gfr, out var gfi, out var sfr, out var sfi, out var pf);
            Axle(kr, cr, ktr, ctr, mr, w, w2, out var grr, out var gri, out var srr, out var sri, out var pr);
            sfr *= pr;
            sfi *= pr;
            srr *= pf;
            sri *= pf;
            var p = pf * pr;
            var a11r = sfr + srr - (w2 * mass * p);
            var a11i = sfi + sri;
            var a12r = -((xfw * sfr) + (xrw * srr));
            var a12i = -((xfw * sfi) + (xrw * sri));
            var a22r = (xff * sfr) + (xrr * srr) - (((w2 * inertia) + gravity) * p);
            var a22i = (xff * sfi) + (xrr * sri);
            var detr = (a11r * a22r) - (a11i * a22i) - ((a12r * a12r) - (a12i * a12i));
            var deti = (a11r * a22i) + (a11i * a22r) - ((a12r + a12r) * a12i);
            var bottom = (detr * detr) + (deti * deti);
            // Front and rear road: factor times the road's own part, front scaled by the rear's |D|² and the other way round.
            var hfr = (al * a22r) + (fx * a12r) + (fb * a11r);
            var hfi = (al * a22i) + (fx * a12i) + (fb * a11i);
            var hrr = (al * a22r) + (rx * a12r) + (rb * a11r);
            var hri = (al * a22i) + (rx * a12i) + (rb * a11i);
            var nfr = pr * ((gfr * hfr) - (gfi * hfi));
            var nfi = pr * ((gfr * hfi) + (gfi * hfr));
            var nrr = pf * ((grr * hrr) - (gri * hri));
            var nri = pf * ((grr * hri) + (gri * hrr));
            var mixed = (nfr * ((nrr * dr) - (nri * di))) + (nfi * ((nrr * di) + (nri * dr)));
            var top = (t.TogetherFront[q] * ((nfr * nfr) + (nfi * nfi))) + (t.TogetherRear[q] * ((nrr * nrr) + (nri * nri))) + (t.TogetherBoth[q] * mixed);
            if (rolls)
            {
                Axle(akf, acf, ktf, ctf, amf, w, w2, out gfr, out gfi, out sfr, out sfi, out pf);
                Axle(akr, acr, ktr, ctr, amr, w, w2, out grr, out gri, out srr, out sri, out pr);
                var ar = (yff * pr * sfr) + (yrr * pf * srr) - (((w2 * rollMass) + rollGravity) * pf * pr);
                var ai = (yff * pr * sfi) + (yrr * pf * sri);
                gfr *= pr;
                gfi *= pr;
                grr *= pf;
                gri *= pf;
                mixed = (gfr * ((grr * dr) - (gri * di))) + (gfi * ((grr * di) + (gri * dr)));
                var rollTop = (t.AgainstFront[q] * kff * ((gfr * gfr) + (gfi * gfi))) + (t.AgainstRear[q] * krr * ((grr * grr) + (gri * gri))) + (t.AgainstBoth[q] * kfr * mixed);
                var rollBottom = (ar * ar) + (ai * ai);
                top = (top * rollBottom) + (rollTop * bottom);
                bottom *= rollBottom;
            }

            sum += top / bottom;
        }

        return Vector256.Sum(sum);
    }

    private static Vector256<double> Of(double value) => Vector256.Create(value);

    // g = z·conj(D)·τ and s = z·conj(D)·W, both to be divided by p = |D|².
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Axle(
        Vector256<double> k,
        Vector256<double> c,
        Vector256<double> kt,
        Vector256<double> ct,
        Vector256<double> m,
        Vector256<double> w,
        Vector256<double> w2,
        out Vector256<double> gr,
        out Vector256<double> gi,
        out Vector256<double> sr,
        out Vector256<double> si,
        out Vector256<double> p)
    {
        var zi = w * c;
        var ti = w * ct;
        var wr = kt - (w2 * m);
        var dr = k + wr;
        var di = zi + ti;
        p = (dr * dr) + (di * di);
        var er = (k * dr) + (zi * di);
        var ei = (zi * dr) - (k * di);
        gr = (er * kt) - (ei * ti);
        gi = (er * ti) + (ei * kt);
        sr = (er * wr) - (ei * ti);
        si = (er * ti) + (ei * wr);
    }
}
