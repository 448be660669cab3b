using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// Mean square of α·z + β·θ + κ·φ of a car whose sides differ and whose axles are joined: seven equations, of half the sum and half the difference of
/// each axle's wheels and of the body, all symmetric, as L·D·Lᵀ without exchange of rows. The asked signal stands on the right side and the solution
/// at the wheels, times their tyres, says what each wave of the road does to it.
/// </summary>
internal static unsafe class OneSidedLinks
{
    private const int Size = OneSidedMatrices.Size;

    // Where the body's equations begin: heave, pitch nose-up, roll.
    private const int Body = OneSidedMatrices.Body;

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
        // The lower triangle row by row and then the answer, real and imaginary parts.
        var room = stackalloc byte[(2 * Size * (Size + 1) * sizeof(T)) + Line];
        var re = (T*)(((nint)room + Line - 1) & ~(nint)(Line - 1));
        var im = re + (Size * (Size + 1));
        T* answer = re + (Size * Size), turned = im + (Size * Size);
        var matrices = stackalloc double[(3 * Size * Size) + (2 * Size)];
        OneSidedMatrices.Fill(car, matrices);
        var unit = 1.0 / car.Mean.Front.TyreRate;
        var (inertance, resistance) = (car.Mean.LineInertance, car.Mean.LineResistance);
        for (var q = 0; q < t.Steps<T>(); q++)
        {
            var at = t.Step<T>(q);
            ref readonly var w = ref at[SpectrumTable.Omega];
            ref readonly var w2 = ref at[SpectrumTable.Square];
            Fill(matrices, w, w2, re, im);
            if (inertance > 0.0)
            {
                Flow(matrices + (3 * Size * Size), car.LeftLine, unit * inertance, 1.0, w, w2, re, im);
                Flow(matrices + (3 * Size * Size) + Size, car.RightLine, unit * inertance, 1.0, w, w2, re, im);
            }
            else if (resistance > 0.0)
            {
                Flow(matrices + (3 * Size * Size), car.LeftLine, unit * resistance, 0.0, w, w2, re, im);
                Flow(matrices + (3 * Size * Size) + Size, car.RightLine, unit * resistance, 0.0, w, w2, re, im);
            }

            for (var i = 0; i < Size; i++)
            {
                answer[i] = T.Of(i == Body ? alpha : i == Body + 1 ? -beta : i == Body + 2 ? kappa : 0.0);
                turned[i] = T.Of(0.0);
            }

            Solve(re, im, answer, turned);
            Through(car.Mean.Front, unit, w, answer, turned);
            Through(car.Mean.Rear, unit, w, answer + 2, turned + 2);
            PlainSpectrum.Add(
                Power(at, SpectrumTable.TogetherFront, answer, turned) + Power(at, SpectrumTable.AgainstFront, answer + 1, turned + 1), ref sums);
        }

        return Vector256.Sum(sums);
    }

    // What wheels tell is told by the road through their tyres.
    private static void Through<T>(in SymmetricAxle axle, double unit, in T omega, T* answer, T* turned)
        where T : unmanaged, ILane<T>
    {
        T k = T.Of(unit * axle.TyreRate), c = T.Of(unit * axle.TyreDamping) * omega;
        for (var i = 0; i < 2; i++)
        {
            T a = answer[i], b = turned[i];
            (answer[i], turned[i]) = (T.Fma(k, a, -(c * b)), T.Fma(k, b, c * a));
        }
    }

    // Of an axle's waves, two places from the front's to the rear's.
    private static T Power<T>(ReadOnlySpan<T> at, int first, T* answer, T* turned)
        where T : unmanaged, ILane<T> => PlainSpectrum.Power(
        at[first], at[first + 1], at[first + 2], answer[0], turned[0], answer[2], turned[2], at[SpectrumTable.Cosine], at[SpectrumTable.Sine]);

    // Stiffness less ω² times the masses, ω times the resistances.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Fill<T>(double* matrices, in T omega, in T square, T* re, T* im)
        where T : unmanaged, ILane<T>
    {
        T w = omega, w2 = -square;
        for (var i = 0; i < Size; i++)
        {
            for (var at = Size * i; at <= (Size + 1) * i; at++)
            {
                re[at] = T.Fma(w2, T.Of(matrices[at + (2 * Size * Size)]), T.Of(matrices[at]));
                im[at] = w * T.Of(matrices[at + (Size * Size)]);
            }
        }
    }

    // What flows in the line of a side is taken off: g·gᵀ·I/(κ − ω² + iωρ), or R/(κ + iω) without inertance; the tangent holds −κ and −ρ.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Flow<T>(
        double* volume,
        (double Front, double Rear, double Flow, double FlowRate) line,
        double scale,
        double inertia,
        in T omega,
        in T square,
        T* re,
        T* im)
        where T : unmanaged, ILane<T>
    {
        T a = T.Fma(T.Of(-inertia), square, T.Of(-line.Flow)), b = T.Of(-line.FlowRate) * omega;
        var over = T.Of(-scale) / T.Fma(a, a, b * b);
        T real = over * a, imaginary = -(over * b);
        for (var i = 0; i < Size; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var (share, at) = (T.Of(volume[i] * volume[j]), (Size * i) + j);
                (re[at], im[at]) = (T.Fma(share, real, re[at]), T.Fma(share, imaginary, im[at]));
            }
        }
    }

    // L·D·Lᵀ: the rows below the diagonal become −L, the diagonal 1/D.
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void Solve<T>(T* re, T* im, T* answer, T* turned)
        where T : unmanaged, ILane<T>
    {
        for (var k = 0; k < Size; k++)
        {
            T a = re[(Size * k) + k], b = im[(Size * k) + k];
            var over = T.Of(1.0) / T.Fma(a, a, b * b);
            (a, b) = (over * a, -(over * b));
            (re[(Size * k) + k], im[(Size * k) + k]) = (a, b);
            // From below: the rows above still hold the column as it was.
            for (var i = Size - 1; i > k; i--)
            {
                T* rowRe = re + (Size * i), rowIm = im + (Size * i);
                T x = rowRe[k], y = rowIm[k];
                T lr = T.Fma(y, b, -(x * a)), li = -T.Fma(x, b, y * a);
                for (var j = k + 1; j <= i; j++)
                {
                    T p = re[(Size * j) + k], q = im[(Size * j) + k];
                    rowRe[j] = T.Fma(lr, p, T.Fma(-li, q, rowRe[j]));
                    rowIm[j] = T.Fma(lr, q, T.Fma(li, p, rowIm[j]));
                }

                (rowRe[k], rowIm[k]) = (lr, li);
                if (k >= Body)
                {
                    T p = answer[k], q = turned[k];
                    answer[i] = T.Fma(lr, p, T.Fma(-li, q, answer[i]));
                    turned[i] = T.Fma(lr, q, T.Fma(li, p, turned[i]));
                }
            }
        }

        for (var k = Size - 1; k >= 0; k--)
        {
            T a = re[(Size * k) + k], b = im[(Size * k) + k], p = answer[k], q = turned[k];
            T x = T.Fma(a, p, -(b * q)), y = T.Fma(a, q, b * p);
            for (var i = k + 1; i < Size; i++)
            {
                T lr = re[(Size * i) + k], li = im[(Size * i) + k], u = answer[i], v = turned[i];
                x = T.Fma(lr, u, T.Fma(-li, v, x));
                y = T.Fma(lr, v, T.Fma(li, u, y));
            }

            (answer[k], turned[k]) = (x, y);
        }
    }
}
