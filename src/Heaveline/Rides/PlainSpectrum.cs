using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using static System.Runtime.Intrinsics.Vector256;

namespace Heaveline.Rides;

/// <summary>
/// Mean square of α·z + β·θ and κ·φ of a symmetric car without interconnection, wheels eliminated in closed form. Per axle, with z = k + iωc,
/// τ = k_t + iωc_t, W = τ − ω²m, D = z + W: the force on the body is F = (z/D)·(τ·r − W·h) at a road height r and a body height h there. What is left
/// is two equations for heave and pitch and one for roll.
/// </summary>
/// <remarks>
/// Every quotient is kept as a numerator, all multiplied by |D_f|²·|D_r|²; one division at the end serves four frequencies. Stiffnesses and masses
/// are counted in front tyre rates so that the products stay far from overflow. Written out in real numbers: as complex operators it is more than the
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
        Vector256<double> ktf = Of(unit * car.Front.TyreRate),
            ctf = Of(unit * car.Front.TyreDamping), ktr = Of(unit * car.Rear.TyreRate), ctr = Of(unit * car.Rear.TyreDamping);
        Vector256<double> mass = Of(unit * car.Mass), inertia = Of(unit * car.PitchInertia), gravity = Of(unit * car.PitchGravity);
        Vector256<double> xfw = Of(xf), xrw = Of(xr), xff = Of(xf * xf), xrr = Of(xr * xr);
        // Numerator α·(a₂₂b₁ − a₁₂b₂) + β·(a₁₁b₂ − a₁₂b₁) with b = g·(1, −x): g·(α·a₂₂ − (α·x − β)·m − β·x·a₁₁), m = −a₁₂.
        Vector256<double> al = Of(alpha), fx = Of(beta - (alpha * xf)), rx = Of(beta - (alpha * xr)), fb = Of(-beta * xf), rb = Of(-beta * xr);
        Vector256<double> rollMass = Of(unit * car.RollInertia), rollGravity = Of(unit * car.RollGravity);
        Vector256<double> akf = Of(unit * car.Front.RollRate), acf = Of(unit * car.Front.RollDamping), amf = Of(unit * car.Front.TrampMass);
        Vector256<double> akr = Of(unit * car.Rear.RollRate), acr = Of(unit * car.Rear.RollDamping), amr = Of(unit * car.Rear.TrampMass);
        Vector256<double> yf1 = Of(yf), yr1 = Of(yr), kk = Of(kappa * kappa);
        var sum = Vector256<double>.Zero;
        var rolls = kappa != 0.0 && car.Rolls;
        for (var q = 0; q < t.Count; q++)
        {
            var at = t[q];
            Vector256<double> w = at[SpectrumTable.Omega], w2 = at[SpectrumTable.Square], dr = at[SpectrumTable.Cosine], di = at[SpectrumTable.Sine];
            Axle(kf, cf, ktf, ctf, mf, w, w2, out var gfr, out var gfi, out var sfr, out var sfi, out var pf);
            Axle(kr, cr, ktr, ctr, mr, w, w2, out var grr, out var gri, out var srr, out var sri, out var pr);
            sfr *= pr;
            sfi *= pr;
            srr *= pf;
            sri *= pf;
            var p = pf * pr;
            var a11r = MultiplyAddEstimate(-(w2 * mass), p, sfr + srr);
            var a11i = sfi + sri;
            var a12r = MultiplyAddEstimate(xfw, sfr, xrw * srr);
            var a12i = MultiplyAddEstimate(xfw, sfi, xrw * sri);
            var a22r = MultiplyAddEstimate(-MultiplyAddEstimate(w2, inertia, gravity), p, MultiplyAddEstimate(xff, sfr, xrr * srr));
            var a22i = MultiplyAddEstimate(xff, sfi, xrr * sri);
            var detr = MultiplyAddEstimate(a11r, a22r, -MultiplyAddEstimate(a11i, a22i, MultiplyAddEstimate(a12r, a12r, -(a12i * a12i))));
            var deti = MultiplyAddEstimate(a11r, a22i, MultiplyAddEstimate(a11i, a22r, -((a12r + a12r) * a12i)));
            var bottom = MultiplyAddEstimate(detr, detr, deti * deti);
            // Front and rear road: factor times the road's own part, front scaled by the rear's |D|² and the other way round.
            var hfr = MultiplyAddEstimate(al, a22r, MultiplyAddEstimate(fx, a12r, fb * a11r));
            var hfi = MultiplyAddEstimate(al, a22i, MultiplyAddEstimate(fx, a12i, fb * a11i));
            var hrr = MultiplyAddEstimate(al, a22r, MultiplyAddEstimate(rx, a12r, rb * a11r));
            var hri = MultiplyAddEstimate(al, a22i, MultiplyAddEstimate(rx, a12i, rb * a11i));
            var nfr = pr * MultiplyAddEstimate(gfr, hfr, -(gfi * hfi));
            var nfi = pr * MultiplyAddEstimate(gfr, hfi, gfi * hfr);
            var nrr = pf * MultiplyAddEstimate(grr, hrr, -(gri * hri));
            var nri = pf * MultiplyAddEstimate(grr, hri, gri * hrr);
            var top = Power(
                at[SpectrumTable.TogetherFront], at[SpectrumTable.TogetherRear], at[SpectrumTable.TogetherBoth], nfr, nfi, nrr, nri, dr, di);
            if (rolls)
            {
                Axle(akf, acf, ktf, ctf, amf, w, w2, out gfr, out gfi, out sfr, out sfi, out pf);
                Axle(akr, acr, ktr, ctr, amr, w, w2, out grr, out gri, out srr, out sri, out pr);
                var (front, rear) = (yf1 * pr, yr1 * pf);
                var ar = MultiplyAddEstimate(
                    front * yf1, sfr, MultiplyAddEstimate(rear * yr1, srr, -(MultiplyAddEstimate(w2, rollMass, rollGravity) * pf * pr)));
                var ai = MultiplyAddEstimate(front * yf1, sfi, rear * yr1 * sri);
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
                var rollBottom = MultiplyAddEstimate(ar, ar, ai * ai);
                top = MultiplyAddEstimate(top, rollBottom, kk * rollTop * bottom);
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
        var wr = MultiplyAddEstimate(-w2, m, kt);
        var dr = k + wr;
        var di = zi + ti;
        p = MultiplyAddEstimate(dr, dr, di * di);
        var er = MultiplyAddEstimate(k, dr, zi * di);
        var ei = MultiplyAddEstimate(zi, dr, -(k * di));
        var cross = ei * ti;
        gr = MultiplyAddEstimate(er, kt, -cross);
        gi = MultiplyAddEstimate(er, ti, ei * kt);
        sr = MultiplyAddEstimate(er, wr, -cross);
        si = MultiplyAddEstimate(er, ti, ei * wr);
    }

    // Front and rear together, the rear later: a·|f|² + b·|r|² + c·Re(f·conj(r·d)).
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<double> Power(
        Vector256<double> ofFront,
        Vector256<double> ofRear,
        Vector256<double> ofBoth,
        Vector256<double> fr,
        Vector256<double> fi,
        Vector256<double> rr,
        Vector256<double> ri,
        Vector256<double> dr,
        Vector256<double> di)
    {
        var mixed = MultiplyAddEstimate(fr, MultiplyAddEstimate(rr, dr, -(ri * di)), fi * MultiplyAddEstimate(rr, di, ri * dr));
        var squares = MultiplyAddEstimate(ofFront, MultiplyAddEstimate(fr, fr, fi * fi), ofRear * MultiplyAddEstimate(rr, rr, ri * ri));
        return MultiplyAddEstimate(ofBoth, mixed, squares);
    }
}
