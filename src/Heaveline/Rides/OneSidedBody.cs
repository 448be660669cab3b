using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// The body of a car whose sides differ: heave, pitch and roll in one symmetric system, solved for an asked signal by its cofactors, at several
/// frequencies side by side.
/// </summary>
internal struct OneSidedBody<T>
    where T : unmanaged, ILane<T>
{
    private readonly T mass;
    private readonly T pitchInertia;
    private readonly T rollInertia;
    private readonly T product;
    private readonly T pitchGravity;
    private readonly T rollGravity;
    private readonly T alpha;
    private readonly T beta;
    private readonly T kappa;
    private LaneComplex<T> heave;
    private LaneComplex<T> pitch;
    private LaneComplex<T> roll;
    private LaneComplex<T> determinant;

    /// <param name="car">The car.</param>
    /// <param name="unit">What stiffnesses and masses are counted in, one over it.</param>
    /// <param name="alpha">Share of the heave in the signal.</param>
    /// <param name="beta">Share of the pitch.</param>
    /// <param name="kappa">Share of the roll.</param>
    public OneSidedBody(in OneSidedRide car, double unit, double alpha, double beta, double kappa)
    {
        var mean = car.Mean;
        (mass, pitchInertia, rollInertia) = (T.Of(unit * mean.Mass), T.Of(unit * mean.PitchInertia), T.Of(unit * mean.RollInertia));
        (product, pitchGravity, rollGravity) = (T.Of(unit * car.InertiaProduct), T.Of(unit * mean.PitchGravity), T.Of(unit * mean.RollGravity));
        (this.alpha, this.beta, this.kappa) = (T.Of(alpha), T.Of(beta), T.Of(kappa));
    }

    /// <summary>Times the determinant: the solution for the signal, by heave.</summary>
    public readonly LaneComplex<T> Heave => heave;

    /// <summary>By pitch.</summary>
    public readonly LaneComplex<T> Pitch => pitch;

    /// <summary>By roll.</summary>
    public readonly LaneComplex<T> Roll => roll;

    /// <summary>The determinant.</summary>
    public readonly LaneComplex<T> Determinant => determinant;

    /// <summary>Solves on two axles.</summary>
    [MethodImpl(MethodImplOptions.NoInlining)]
    public void Solve(T square, in OneSidedEnd<T> front, in OneSidedEnd<T> rear)
    {
        // A height over an axle's middle is z − x·θ + y·φ, and half of what its sides differ by is Y·φ.
        var (frontRoll, rearRoll) = (Rolling(front), Rolling(rear));
        var (frontPitch, rearPitch) = (front.Ahead * front.Together, rear.Ahead * rear.Together);
        var zz = Less(front.Together + rear.Together, square * mass);
        var zp = frontPitch + rearPitch;
        var zr = frontRoll + rearRoll;
        var pp = Less(LaneComplex<T>.Fma(front.Ahead, frontPitch, rear.Ahead * rearPitch), T.Fma(square, pitchInertia, pitchGravity));
        // Of pitch nose-up: the signs of θ turn once here and once below.
        var pr = Less(LaneComplex<T>.Fma(front.Ahead, frontRoll, rear.Ahead * rearRoll), square * product);
        var rr = Less(Tilting(front, frontRoll) + Tilting(rear, rearRoll), T.Fma(square, rollInertia, rollGravity));
        var (czz, czp, czr) = ((pp * rr) - (pr * pr), (zr * pr) - (zp * rr), (zp * pr) - (zr * pp));
        determinant = LaneComplex<T>.Fma(zz, czz, LaneComplex<T>.Fma(zp, czp, zr * czr));
        var (cpp, cpr, crr) = ((zz * rr) - (zr * zr), (zr * zp) - (zz * pr), (zz * pp) - (zp * zp));
        heave = LaneComplex<T>.Fma(alpha, czz, LaneComplex<T>.Fma(-beta, czp, kappa * czr));
        pitch = LaneComplex<T>.Fma(-alpha, czp, LaneComplex<T>.Fma(beta, cpp, -kappa * cpr));
        roll = LaneComplex<T>.Fma(alpha, czr, LaneComplex<T>.Fma(-beta, cpr, kappa * crr));
    }

    // Force of an axle on the body per roll.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static LaneComplex<T> Rolling(in OneSidedEnd<T> end) => LaneComplex<T>.Fma(end.Right, end.Together, end.Aside * end.Mixed);

    // Moment about the roll axis per roll: of that force at the axle's middle, and of the sides against each other.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static LaneComplex<T> Tilting(in OneSidedEnd<T> end, LaneComplex<T> rolling) => LaneComplex<T>.Fma(
        end.Right, rolling, end.Aside * LaneComplex<T>.Fma(end.Right, end.Mixed, end.Aside * end.Against));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static LaneComplex<T> Less(LaneComplex<T> a, T real) => new(a.Real - real, a.Imaginary);
}
