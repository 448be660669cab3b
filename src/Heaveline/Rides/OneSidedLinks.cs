using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// Mean square of α·z + β·θ + κ·φ of a car whose sides differ and whose axles are joined: seven equations, of half the sum and half the difference of
/// each axle's wheels and of the body, all symmetric, as L·D·Lᵀ without exchange of rows. The asked signal stands on the right side and the solution
/// at the wheels, times their tyres, says what each wave of the road does to it.
/// </summary>
internal static class OneSidedLinks
{
    private const int Size = 7;

    // Where the body's equations begin: heave, pitch nose-up, roll.
    private const int Body = 4;

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
        Span<LaneComplex<T>> matrix = stackalloc LaneComplex<T>[Size * Size];
        Span<LaneComplex<T>> answer = stackalloc LaneComplex<T>[Size];
        ReadOnlySpan<double> asked = [alpha, -beta, kappa];
        for (var q = 0; q < t.Steps<T>(); q++)
        {
            var at = t.Step<T>(q);
            Fill(car, at[SpectrumTable.Omega], at[SpectrumTable.Square], matrix);
            for (var i = 0; i < Size; i++)
            {
                answer[i] = new(T.Of(i < Body ? 0.0 : asked[i - Body]), T.Of(0.0));
            }

            Solve(matrix, answer);
            var unit = 1.0 / car.Mean.Front.TyreRate;
            var (front, rear) = (Tyre<T>(car.Mean.Front, unit, at[SpectrumTable.Omega]), Tyre<T>(car.Mean.Rear, unit, at[SpectrumTable.Omega]));
            PlainSpectrum.Add(
                OneSidedSpectrum.Power(at, front * answer[0], front * answer[1], rear * answer[2], rear * answer[3]), ref sums);
        }

        return Vector256.Sum(sums);
    }

    // The lower triangle, row by row.
    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void Fill<T>(in OneSidedRide car, T omega, T square, Span<LaneComplex<T>> matrix)
        where T : unmanaged, ILane<T>
    {
        var mean = car.Mean;
        var (unit, right) = (1.0 / mean.Front.TyreRate, -car.LeftOfMiddle);
        Span<LaneComplex<T>> suspension = stackalloc LaneComplex<T>[4 * 4];
        Suspension(car, unit, omega, square, suspension);
        // What each of the four sees of the body.
        ReadOnlySpan<double> sight =
        [
            1.0, mean.Front.X, right, 0.0, 0.0, mean.Front.Y, 1.0, mean.Rear.X, right, 0.0, 0.0, mean.Rear.Y,
        ];
        for (var i = 0; i < Body; i++)
        {
            for (var j = 0; j < Body; j++)
            {
                matrix[(i * Size) + j] = suspension[(i * Body) + j];
            }

            for (var k = 0; k < 3; k++)
            {
                var sum = new LaneComplex<T>(T.Of(0.0), T.Of(0.0));
                for (var j = 0; j < Body; j++)
                {
                    sum = LaneComplex<T>.Fma(T.Of(-sight[(3 * j) + k]), suspension[(i * Body) + j], sum);
                }

                matrix[((Body + k) * Size) + i] = sum;
            }

            var (axle, mass) = i < 2 ? (mean.Front, i == 0 ? mean.Front.HopMass : mean.Front.TrampMass)
                : (mean.Rear, i == 2 ? mean.Rear.HopMass : mean.Rear.TrampMass);
            var tyre = Tyre<T>(axle, unit, omega);
            matrix[(i * Size) + i] += new LaneComplex<T>(tyre.Real - (T.Of(unit * mass) * square), tyre.Imaginary);
        }

        for (var k = 0; k < 3; k++)
        {
            for (var m = 0; m <= k; m++)
            {
                var sum = new LaneComplex<T>(T.Of(0.0), T.Of(0.0));
                for (var i = 0; i < Body; i++)
                {
                    sum = LaneComplex<T>.Fma(T.Of(-sight[(3 * i) + m]), matrix[((Body + k) * Size) + i], sum);
                }

                matrix[((Body + k) * Size) + Body + m] = sum;
            }
        }

        Less(4, 4, unit * mean.Mass, 0.0, matrix);
        Less(5, 5, unit * mean.PitchInertia, unit * mean.PitchGravity, matrix);
        Less(6, 5, unit * car.InertiaProduct, 0.0, matrix);
        Less(6, 6, unit * mean.RollInertia, unit * mean.RollGravity, matrix);

        void Less(int i, int j, double mass, double gravity, Span<LaneComplex<T>> of)
        {
            var at = of[(i * Size) + j];
            of[(i * Size) + j] = new(at.Real - T.Fma(T.Of(mass), square, T.Of(gravity)), at.Imaginary);
        }
    }

    // Rates and damping of half the sum and half the difference of each axle's wheels, what flows in the lines taken off.
    private static void Suspension<T>(in OneSidedRide car, double unit, T omega, T square, Span<LaneComplex<T>> of)
        where T : unmanaged, ILane<T>
    {
        var mean = car.Mean;
        LaneComplex<T> At(double rate, double damping) => new(T.Of(unit * rate), T.Of(unit * damping) * omega);
        of[0] = At(mean.Front.Rate, mean.Front.Damping);
        of[5] = At(mean.Front.RollRate, mean.Front.RollDamping);
        of[10] = At(mean.Rear.Rate, mean.Rear.Damping);
        of[15] = At(mean.Rear.RollRate, mean.Rear.RollDamping);
        (of[1], of[11]) = (At(car.Front.Rate, car.Front.Damping), At(car.Rear.Rate, car.Rear.Damping));
        of[2] = of[7] = At(mean.Link, mean.LinkDamping);
        of[3] = of[6] = At(car.Link, car.LinkDamping);
        if (mean.LineInertance > 0.0 || mean.LineResistance > 0.0)
        {
            Flow(car.LeftLine, 1.0, of);
            Flow(car.RightLine, -1.0, of);
        }

        for (var i = 0; i < Body; i++)
        {
            for (var j = 0; j < i; j++)
            {
                of[(i * Body) + j] = of[(j * Body) + i];
            }
        }

        // I/(κ − ω² + iωρ), or R/(κ + iω) without inertance; the tangent holds −κ and −ρ.
        void Flow((double Front, double Rear, double Flow, double FlowRate) line, double side, Span<LaneComplex<T>> from)
        {
            var (scale, inertia) = mean.LineInertance > 0.0 ? (mean.LineInertance, 1.0) : (mean.LineResistance, 0.0);
            var bottom = new LaneComplex<T>(T.Of(-line.Flow) - (T.Of(inertia) * square), T.Of(-line.FlowRate) * omega);
            var flow = T.Of(-0.5 * unit * scale) * bottom.Inverse;
            Take(0, 5, 1, line.Front * line.Front, from);
            Take(10, 15, 11, line.Rear * line.Rear, from);
            Take(2, 7, 3, line.Front * line.Rear, from);
            from[6] = from[3];

            void Take(int together, int against, int mixed, double share, Span<LaneComplex<T>> part)
            {
                var off = T.Of(share) * flow;
                part[together] += off;
                part[against] += off;
                part[mixed] = LaneComplex<T>.Fma(T.Of(side), off, part[mixed]);
            }
        }
    }

    private static LaneComplex<T> Tyre<T>(in SymmetricAxle axle, double unit, T omega)
        where T : unmanaged, ILane<T> => new(T.Of(unit * axle.TyreRate), T.Of(unit * axle.TyreDamping) * omega);

    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private static void Solve<T>(Span<LaneComplex<T>> matrix, Span<LaneComplex<T>> answer)
        where T : unmanaged, ILane<T>
    {
        for (var k = 0; k < Size; k++)
        {
            var inverse = matrix[(k * Size) + k].Inverse;
            matrix[(k * Size) + k] = inverse;
            // From below: the rows above still hold the column as it was.
            for (var i = Size - 1; i > k; i--)
            {
                var share = matrix[(i * Size) + k] * inverse;
                var less = new LaneComplex<T>(-share.Real, -share.Imaginary);
                for (var j = k + 1; j <= i; j++)
                {
                    matrix[(i * Size) + j] = LaneComplex<T>.Fma(less, matrix[(j * Size) + k], matrix[(i * Size) + j]);
                }

                matrix[(i * Size) + k] = less;
                if (k >= Body)
                {
                    answer[i] = LaneComplex<T>.Fma(less, answer[k], answer[i]);
                }
            }
        }

        for (var k = Size - 1; k >= 0; k--)
        {
            var sum = answer[k] * matrix[(k * Size) + k];
            for (var i = k + 1; i < Size; i++)
            {
                sum = LaneComplex<T>.Fma(matrix[(i * Size) + k], answer[i], sum);
            }

            answer[k] = sum;
        }
    }
}
