using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>
/// One step of the body: M z̈ = ΣF, I_yy θ̈ − P φ̈ = −ΣxF + M g h_θ θ, I_xx φ̈ − P θ̈ = ΣyF + M g h_φ φ, F the changes from trim.
/// </summary>
internal static unsafe class BodyStep<T, TSample, TEnds>
    where T : unmanaged, ILane<T>
    where TSample : unmanaged, ILane<TSample>
    where TEnds : IEnds<T, TSample>
{
    /// <param name="body">The body.</param>
    /// <param name="front">The front axle with its forces at this step.</param>
    /// <param name="rear">The rear axle.</param>
    /// <param name="rule">The step.</param>
    /// <param name="past">Takes this step's accelerations; those of the last three steps follow.</param>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public static void Run(BodyBlock<T>* body, AxleState<T>* front, AxleState<T>* rear, AdamsRule<T>* rule, BodyPast<T>* past) =>
        Run(ref *body, in *front, in *rear, in *rule, ref past[0], in past[1], in past[2], in past[3]);

    /// <param name="body">The body.</param>
    /// <param name="front">The front axle with its forces at this step.</param>
    /// <param name="rear">The rear axle.</param>
    /// <param name="adams">The step.</param>
    /// <param name="now">Takes this step's accelerations.</param>
    /// <param name="past1">Those of the step before.</param>
    /// <param name="past2">Of the one before that.</param>
    /// <param name="past3">Of the first that counts.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Run(
        ref BodyBlock<T> body,
        in AxleState<T> front,
        in AxleState<T> rear,
        in AdamsRule<T> adams,
        ref BodyPast<T> now,
        in BodyPast<T> past1,
        in BodyPast<T> past2,
        in BodyPast<T> past3)
    {
        var (fL, fR, rL, rR) = (front.FL, front.FR, rear.FL, rear.FR);
        var (sumFront, sumRear) = (fL + fR, rL + rR);
        var (z, theta, phi) = (body.Z, body.Theta, body.Phi);
        var (zRate, thetaRate, phiRate) = (body.ZRate, body.ThetaRate, body.PhiRate);
        var coupled = body.PitchPerRoll;
        var pitch = T.Fma(body.PitchGravity, theta, TEnds.Sum(front.NegX * sumFront, rear.NegX * sumRear));
        // Rounded alike on both sides: a car and a road alike on both sides do not roll at all.
        var roll = (body.RollGravity * phi)
            - TEnds.Sum((front.NegYL * fL) + (front.NegYR * fR), (rear.NegYL * rL) + (rear.NegYR * rR));
        var z0 = body.PerMass * TEnds.Sum(sumFront, sumRear);
        var t0 = T.Fma(coupled, roll, body.PitchPerPitch * pitch);
        var p0 = T.Fma(body.RollPerRoll, roll, coupled * pitch);
        var (z1, t1, p1) = (past1.Z, past1.Theta, past1.Phi);
        var (z2, t2, p2) = (past2.Z, past2.Theta, past2.Phi);
        var (z3, t3, p3) = (past3.Z, past3.Theta, past3.Phi);

        z = adams.Place(z, zRate, z0, z1, z2, z3);
        theta = adams.Place(theta, thetaRate, t0, t1, t2, t3);
        phi = adams.Place(phi, phiRate, p0, p1, p2, p3);
        zRate = adams.Rate(zRate, z0, z1, z2, z3);
        thetaRate = adams.Rate(thetaRate, t0, t1, t2, t3);
        phiRate = adams.Rate(phiRate, p0, p1, p2, p3);
        body.Z = z;
        body.Theta = theta;
        body.Phi = phi;
        body.ZRate = zRate;
        body.ThetaRate = thetaRate;
        body.PhiRate = phiRate;
        now.Z = z0;
        now.Theta = t0;
        now.Phi = p0;
    }
}
