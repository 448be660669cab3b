using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// Mean square of α·z + β·θ and κ·φ of a symmetric car whose axles are joined. The suspension of one side is the matrix Z = [z_f x; x z_r]; a fluid
/// line takes I·a·aᵀ/(κ − ω² + iωρ) off it, q̈ = a·s − κ·q − ρ·q̇ (R·a·aᵀ/(κ + iω), q̇ = a·s − κ·q, without
/// inertance). With W = diag(τ − ω²m): F = Z(Z + W)⁻¹(τ·r − W·h).
/// </summary>
internal static class LinkedSpectrum
{
    public static double MeanSquare(SpectrumTable t, in SymmetricRide car, double alpha, double beta, double kappa)
    {
        var unit = 1.0 / car.Front.TyreRate;
        var sum = Vector256<double>.Zero;
        var rolls = kappa != 0.0 && car.Rolls;
        for (var q = 0; q < t.Count; q++)
        {
            sum += Together(t, q, car, unit, alpha, beta);
            if (rolls)
            {
                sum += (kappa * kappa) * Against(t, q, car, unit);
            }
        }

        return Vector256.Sum(sum);
    }

    private static Vector256<double> Together(SpectrumTable t, int q, in SymmetricRide car, double unit, double alpha, double beta)
    {
        var w2 = t[q][SpectrumTable.Square];
        var (xf, xr) = (car.Front.X, car.Rear.X);
        var ends = Ends.Of(t, q, car, unit, against: false);
        var a11 = Less(ends.SFront + ends.SRear + (2.0 * ends.SBoth), w2 * (unit * car.Mass) * ends.Scale);
        var a12 = (-xf * ends.SFront) + (-xr * ends.SRear) + (-(xf + xr) * ends.SBoth);
        var a22 = Less(
            (xf * xf * ends.SFront) + (xr * xr * ends.SRear) + (2.0 * xf * xr * ends.SBoth),
            ((w2 * (unit * car.PitchInertia)) + Vector256.Create(unit * car.PitchGravity)) * ends.Scale);
        var heave = (alpha * a22) - (beta * a12);
        var pitch = (beta * a11) - (alpha * a12);
        // Right side of a unit of front road (b₁, b₂) is (ΣF, −ΣxF).
        var front = (heave * (ends.GFrontFront + ends.GRearFront)) + (pitch * ((-xf * ends.GFrontFront) + (-xr * ends.GRearFront)));
        var rear = (heave * (ends.GFrontRear + ends.GRearRear)) + (pitch * ((-xf * ends.GFrontRear) + (-xr * ends.GRearRear)));
        return Power(t, q, front, rear, SpectrumTable.TogetherFront) / ((a11 * a22) - (a12 * a12)).Square;
    }

    private static Vector256<double> Against(SpectrumTable t, int q, in SymmetricRide car, double unit)
    {
        var (yf, yr) = (car.Front.Y, car.Rear.Y);
        var ends = Ends.Of(t, q, car, unit, against: true);
        var a = Less(
            (yf * yf * ends.SFront) + (yr * yr * ends.SRear) + (2.0 * yf * yr * ends.SBoth),
            ((t[q][SpectrumTable.Square] * (unit * car.RollInertia)) + Vector256.Create(unit * car.RollGravity)) * ends.Scale);
        var front = (yf * ends.GFrontFront) + (yr * ends.GRearFront);
        var rear = (yf * ends.GFrontRear) + (yr * ends.GRearRear);
        return Power(t, q, front, rear, SpectrumTable.AgainstFront) / a.Square;
    }

    private static Vector256<double> Power(SpectrumTable t, int q, WideComplex front, WideComplex rear, int powers)
    {
        var later = rear * new WideComplex(t[q][SpectrumTable.Cosine], t[q][SpectrumTable.Sine]);
        return (t[q][powers] * front.Square) + (t[q][powers + 1] * rear.Square)
            + (t[q][powers + 2] * ((front.Real * later.Real) + (front.Imaginary * later.Imaginary)));
    }

    private static WideComplex Less(WideComplex a, Vector256<double> real) => new(a.Real - real, a.Imaginary);

    // Forces on the body per body height (S) and road height (G, end of the force first), all multiplied by Scale = |det(Z + W)|².
    private readonly ref struct Ends
    {
        public WideComplex SFront { get; private init; }

        public WideComplex SRear { get; private init; }

        public WideComplex SBoth { get; private init; }

        public WideComplex GFrontFront { get; private init; }

        public WideComplex GFrontRear { get; private init; }

        public WideComplex GRearFront { get; private init; }

        public WideComplex GRearRear { get; private init; }

        public Vector256<double> Scale { get; private init; }

        [MethodImpl(MethodImplOptions.NoInlining)]
        public static Ends Of(SpectrumTable t, int q, in SymmetricRide car, double unit, bool against)
        {
            var (w, w2) = (t[q][SpectrumTable.Omega], t[q][SpectrumTable.Square]);
            var (zf, tf, wf) = Axle(car.Front, unit, against, w, w2);
            var (zr, tr, wr) = Axle(car.Rear, unit, against, w, w2);
            var x = new WideComplex(Vector256.Create(unit * car.Link), (unit * car.LinkDamping) * w);
            if (car.LineInertance > 0.0 || car.LineResistance > 0.0)
            {
                var line = car.Line;
                // I/(κ − ω² + iωρ), or R/(κ + iω) without inertance; the tangent holds −κ and −ρ.
                var (scale, inertia) = car.LineInertance > 0.0 ? (car.LineInertance, 1.0) : (car.LineResistance, 0.0);
                var bottom = new WideComplex(Vector256.Create(-line.Flow) - (inertia * w2), -line.FlowRate * w);
                var flow = (Vector256.Create(unit * scale) / bottom.Square) * bottom.Conjugate;
                zf -= line.Front * line.Front * flow;
                zr -= line.Rear * line.Rear * flow;
                x -= line.Front * line.Rear * flow;
            }

            var (df, dr) = (zf + wf, zr + wr);
            var determinant = (df * dr) - (x * x);
            var turned = determinant.Conjugate;
            var front = ((zf * dr) - (x * x)) * turned;
            var rear = ((zr * df) - (x * x)) * turned;
            var both = x * turned;
            return new Ends
            {
                Scale = determinant.Square,
                SFront = front * wf,
                SRear = rear * wr,
                SBoth = both * (wf * wr),
                GFrontFront = front * tf,
                GFrontRear = both * (wf * tr),
                GRearFront = both * (wr * tf),
                GRearRear = rear * tr,
            };
        }

        private static (WideComplex Suspension, WideComplex Tyre, WideComplex Wheel) Axle(
            in SymmetricAxle axle, double unit, bool against, Vector256<double> w, Vector256<double> w2)
        {
            var (rate, damping, mass) = against ? (axle.RollRate, axle.RollDamping, axle.TrampMass) : (axle.Rate, axle.Damping, axle.HopMass);
            var tyre = new WideComplex(Vector256.Create(unit * axle.TyreRate), (unit * axle.TyreDamping) * w);
            return (new WideComplex(Vector256.Create(unit * rate), (unit * damping) * w), tyre, Less(tyre, (unit * mass) * w2));
        }
    }
}
