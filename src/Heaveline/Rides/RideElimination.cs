using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// The equations of a <see cref="LinearRide"/> at several frequencies side by side, one in each place of a register: elimination without exchange of
/// rows, fluid first, then the wheels, then the body, leaving out what is nought by the car's make. What <see cref="LinearRide.Answer"/> finds by a
/// dense solution, to rounding.
/// </summary>
internal sealed class RideElimination
{
    // A pivot smaller than this share of its own diagonal has lost too many digits: those frequencies are solved densely.
    private const double LeastPivot = 1e-4;

    private readonly LinearRide ride;
    private readonly bool[] full;

    public RideElimination(LinearRide ride)
    {
        this.ride = ride;
        var n = ride.Count;
        full = new bool[n * n];
        for (var i = 0; i < full.Length; i++)
        {
            full[i] = ride.ByPlace[i] != 0.0 || ride.BySpeed[i] != 0.0 || i % (n + 1) == 0;
        }

        for (var k = n - 1; k > 0; k--)
        {
            for (var i = 0; i < k; i++)
            {
                for (var j = 0; j < k && full[(i * n) + k]; j++)
                {
                    full[(i * n) + j] |= full[(k * n) + j];
                }
            }
        }
    }

    /// <summary>Numbers of scratch for so many waves: real and imaginary parts of the rows with their right sides.</summary>
    public static int Scratch(int positions, int waves) => 2 * positions * (positions + waves);

    /// <summary>Solves for every wave; the solution stands in the last columns of each row.</summary>
    /// <typeparam name="T">As many frequencies as it has places.</typeparam>
    /// <param name="omegas">ω of the frequencies, rad/s.</param>
    /// <param name="heights">Heights under the four wheels in each wave, real and imaginary, <paramref name="stride"/> numbers apart.</param>
    /// <param name="stride">Numbers from one entry of the heights to the next.</param>
    /// <param name="waves">Number of waves.</param>
    /// <param name="re">Scratch, and the real parts of the solution; the imaginary parts follow.</param>
    [SkipLocalsInit]
    public unsafe void Solve<T>(double* omegas, double* heights, int stride, int waves, T* re)
        where T : unmanaged, ILane<T>
    {
        var n = ride.Count;
        var wide = n + waves;
        var im = re + (n * wide);
        var omega = *(T*)omegas;
        if (!Fill(omega, heights, stride, waves, re, im))
        {
            Dense(omegas, heights, stride, waves, re, im);
        }
    }

    private unsafe bool Fill<T>(T omega, double* heights, int stride, int waves, T* re, T* im)
        where T : unmanaged, ILane<T>
    {
        var (n, square) = (ride.Count, omega * omega);
        var wide = n + waves;
        fixed (double* places = ride.ByPlace, speeds = ride.BySpeed, road = ride.Road, rate = ride.RoadRate)
        {
            for (var i = 0; i < n; i++)
            {
                T* rowRe = re + (i * wide), rowIm = im + (i * wide);
                for (var j = 0; j < n; j++)
                {
                    rowRe[j] = T.Of(-places[(i * n) + j]);
                    rowIm[j] = T.Of(-speeds[(i * n) + j]) * omega;
                }

                if (i < ride.Rates)
                {
                    rowRe[i] -= square;
                }

                for (var wave = 0; wave < waves; wave++)
                {
                    rowRe[n + wave] = rowIm[n + wave] = T.Of(0.0);
                }

                for (var wheel = 0; wheel < 4; wheel++)
                {
                    var (height, damped) = (road[(4 * i) + wheel], rate[(4 * i) + wheel]);
                    if (height == 0.0 && damped == 0.0)
                    {
                        continue;
                    }

                    var (real, imaginary) = (T.Of(height), T.Of(damped) * omega);
                    for (var wave = 0; wave < waves; wave++)
                    {
                        var at = heights + (2 * stride * ((4 * wave) + wheel));
                        var (a, b) = (*(T*)at, *(T*)(at + stride));
                        rowRe[n + wave] += (real * a) - (imaginary * b);
                        rowIm[n + wave] += (real * b) + (imaginary * a);
                    }
                }
            }

            return Eliminate(n, waves, omega, square, places, speeds, re, im);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private unsafe bool Eliminate<T>(int n, int waves, T omega, T square, double* places, double* speeds, T* re, T* im)
        where T : unmanaged, ILane<T>
    {
        var wide = n + waves;
        var sound = true;
        for (var k = n - 1; k >= 0; k--)
        {
            T* keyRe = re + (k * wide), keyIm = im + (k * wide);
            var (a, b) = (keyRe[k], keyIm[k]);
            var size = (a * a) + (b * b);
            var scale = T.Of(LeastPivot) * (T.Of(Math.Abs(places[(k * n) + k])) + square + (T.Of(Math.Abs(speeds[(k * n) + k])) * omega));
            sound &= !T.AnyAbove(scale * scale, size);
            var inverse = T.Of(1.0) / size;
            a *= inverse;
            b = -(b * inverse);
            (keyRe[k], keyIm[k]) = (a, b);
            for (var i = 0; i < k; i++)
            {
                if (!full[(i * n) + k])
                {
                    continue;
                }

                T* rowRe = re + (i * wide), rowIm = im + (i * wide);
                var (x, y) = (rowRe[k], rowIm[k]);
                // Less the row times −f.
                var fr = (y * b) - (x * a);
                var fi = -((x * b) + (y * a));
                for (var j = 0; j < wide; j++)
                {
                    if (j >= k ? j < n : !full[(k * n) + j])
                    {
                        continue;
                    }

                    var (p, q) = (keyRe[j], keyIm[j]);
                    rowRe[j] = T.Fma(fr, p, T.Fma(-fi, q, rowRe[j]));
                    rowIm[j] = T.Fma(fr, q, T.Fma(fi, p, rowIm[j]));
                }
            }
        }

        for (var k = 0; k < n; k++)
        {
            T* keyRe = re + (k * wide), keyIm = im + (k * wide);
            for (var wave = n; wave < wide; wave++)
            {
                var (x, y) = (keyRe[wave], keyIm[wave]);
                for (var j = 0; j < k; j++)
                {
                    if (full[(k * n) + j])
                    {
                        var (p, q) = (re[(j * wide) + wave], im[(j * wide) + wave]);
                        x = T.Fma(-keyRe[j], p, T.Fma(keyIm[j], q, x));
                        y = T.Fma(-keyRe[j], q, T.Fma(-keyIm[j], p, y));
                    }
                }

                keyRe[wave] = (keyRe[k] * x) - (keyIm[k] * y);
                keyIm[wave] = (keyRe[k] * y) + (keyIm[k] * x);
            }
        }

        return sound;
    }

    private unsafe void Dense<T>(double* omegas, double* heights, int stride, int waves, T* re, T* im)
        where T : unmanaged, ILane<T>
    {
        var (n, wide) = (ride.Count, ride.Count + waves);
        for (var lane = 0; lane < T.Count; lane++)
        {
            var answer = ride.Answer(omegas[lane]);
            for (var wave = 0; wave < waves; wave++)
            {
                for (var i = 0; i < n; i++)
                {
                    var sum = System.Numerics.Complex.Zero;
                    for (var wheel = 0; wheel < 4; wheel++)
                    {
                        var at = heights + (2 * stride * ((4 * wave) + wheel)) + lane;
                        sum += answer[i, wheel] * new System.Numerics.Complex(*at, at[stride]);
                    }

                    ((double*)(re + (i * wide) + n + wave))[lane] = sum.Real;
                    ((double*)(im + (i * wide) + n + wave))[lane] = sum.Imaginary;
                }
            }
        }
    }
}
