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
/// does to it: (a·H)·Z·D⁻¹·τ. A design costs two to three times what one of a car alike on both sides does (<c>FrequencyDesign</c> of the bench).
/// </remarks>
internal static unsafe class OneSidedSpectrum
{
    // A line of the cache: registers that begin at multiples of their own size do not lie across two.
    private const int Line = 64;

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
        var room = stackalloc byte[(2 * sizeof(OneSidedEnd<T>)) + sizeof(OneSidedBody<T>) + Line];
        var front = (OneSidedEnd<T>*)(((nint)room + Line - 1) & ~(nint)(Line - 1));
        var rear = front + 1;
        var body = (OneSidedBody<T>*)(rear + 1);
        front->Take(car.Mean.Front, car.Front, unit, car.LeftOfMiddle);
        rear->Take(car.Mean.Rear, car.Rear, unit, car.LeftOfMiddle);
        body->Take(car, unit, alpha, beta, kappa);
        for (var q = 0; q < t.Steps<T>(); q++)
        {
            var at = t.Step<T>(q);
            front->Meet(at[SpectrumTable.Omega], at[SpectrumTable.Square]);
            rear->Meet(at[SpectrumTable.Omega], at[SpectrumTable.Square]);
            body->Stand(at[SpectrumTable.Square], *front, *rear);
            body->Solve();
            Weigh(at, ref *body, *front, *rear);
            PlainSpectrum.Add(body->Power, ref sums);
        }

        return Vector256.Sum(sums);
    }

    // Half the sum and half the difference of the tracks have nothing to do with each other: their powers add up.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Weigh<T>(ReadOnlySpan<T> at, ref OneSidedBody<T> body, in OneSidedEnd<T> front, in OneSidedEnd<T> rear)
        where T : unmanaged, ILane<T>
    {
        T cosine = at[SpectrumTable.Cosine], sine = at[SpectrumTable.Sine];
        front.Answer(body, out var fr, out var fi, out var fdr, out var fdi);
        rear.Answer(body, out var rr, out var ri, out var rdr, out var rdi);
        T f = at[SpectrumTable.TogetherFront], r = at[SpectrumTable.TogetherRear], b = at[SpectrumTable.TogetherBoth];
        var together = PlainSpectrum.Power(f, r, b, fr, fi, rr, ri, cosine, sine);
        (f, r, b) = (at[SpectrumTable.AgainstFront], at[SpectrumTable.AgainstRear], at[SpectrumTable.AgainstBoth]);
        body.Power = (together + PlainSpectrum.Power(f, r, b, fdr, fdi, rdr, rdi, cosine, sine)) / body.Determinant;
    }
}
