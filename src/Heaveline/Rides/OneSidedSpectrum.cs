using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// Mean square of α·z + β·θ + κ·φ of a car whose sides differ, without interconnection: heave, pitch and roll are one motion. Each axle is taken by
/// half the sum and half the difference of its sides, where masses and tyres stand apart and the road's powers too. Its suspension is
/// Z = [z_s e; e z_d] with e half of left less right; with W = diag(τ − ω²m) and D = Z + W the body meets Z·D⁻¹·(τ·r − W·h).
/// </summary>
/// <remarks>
/// The three equations that are left are symmetric, so one solution a with the asked signal for its right side tells what each of the four road waves
/// does to it: (a·H)·Z·D⁻¹·τ. That is why it costs about twice, and not eight times, what a car alike on both sides does.
/// </remarks>
internal static class OneSidedSpectrum
{
    /// <summary>The mean square.</summary>
    public static double MeanSquare(SpectrumTable t, in OneSidedRide car, double alpha, double beta, double kappa) => PlainSpectrum.Width == 8
        ? MeanSquare<Lane512>(t, car, alpha, beta, kappa)
        : MeanSquare<Lane256>(t, car, alpha, beta, kappa);

    /// <summary>The mean square by registers of one width: the same bits from every one.</summary>
    [SkipLocalsInit]
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static double MeanSquare<T>(SpectrumTable t, in OneSidedRide car, double alpha, double beta, double kappa)
        where T : unmanaged, ILane<T>
    {
        var sums = Vector256<double>.Zero;
        var unit = 1.0 / car.Mean.Front.TyreRate;
        var front = new OneSidedEnd<T>(car.Mean.Front, car.Front, unit, car.LeftOfMiddle);
        var rear = new OneSidedEnd<T>(car.Mean.Rear, car.Rear, unit, car.LeftOfMiddle);
        var body = new OneSidedBody<T>(car, unit, alpha, beta, kappa);
        for (var q = 0; q < t.Steps<T>(); q++)
        {
            var at = t.Step<T>(q);
            front.Meet(at[SpectrumTable.Omega], at[SpectrumTable.Square]);
            rear.Meet(at[SpectrumTable.Omega], at[SpectrumTable.Square]);
            body.Solve(at[SpectrumTable.Square], front, rear);
            front.Answer(body.Heave, body.Pitch, body.Roll, out var frontSum, out var frontDifference);
            rear.Answer(body.Heave, body.Pitch, body.Roll, out var rearSum, out var rearDifference);
            PlainSpectrum.Add(
                Power(at, frontSum, frontDifference, rearSum, rearDifference) / body.Determinant.Square, ref sums);
        }

        return Vector256.Sum(sums);
    }

    /// <summary>
    /// Power of a signal by its answers to half the sum and half the difference of the tracks, which have nothing to do with each other.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static T Power<T>(
        ReadOnlySpan<T> at,
        in LaneComplex<T> frontSum,
        in LaneComplex<T> frontDifference,
        in LaneComplex<T> rearSum,
        in LaneComplex<T> rearDifference)
        where T : unmanaged, ILane<T>
    {
        T cosine = at[SpectrumTable.Cosine], sine = at[SpectrumTable.Sine];
        return PlainSpectrum.Power(
            at[SpectrumTable.TogetherFront],
            at[SpectrumTable.TogetherRear],
            at[SpectrumTable.TogetherBoth],
            frontSum.Real,
            frontSum.Imaginary,
            rearSum.Real,
            rearSum.Imaginary,
            cosine,
            sine)
            + PlainSpectrum.Power(
            at[SpectrumTable.AgainstFront],
            at[SpectrumTable.AgainstRear],
            at[SpectrumTable.AgainstBoth],
            frontDifference.Real,
            frontDifference.Imaginary,
            rearDifference.Real,
            rearDifference.Imaginary,
            cosine,
            sine);
    }
}
