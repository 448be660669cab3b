using System.Numerics;

namespace Heaveline.Numerics;

/// <summary>
/// Discrete Fourier transform of real numbers of any count n, X(k) = Σ x(j) e^(−i2πjk/n). An even count is transformed as half as many complex
/// numbers; a count that is no power of two as a convolution with a chirp [Bluestein, A linear filtering approach to the computation of the discrete
/// Fourier transform, IEEE Trans. Audio Electroacoust. 18 (1970) 451].
/// </summary>
/// <remarks>
/// Written for millions of heights: it can be stopped within a fraction of a second. A convolution takes two arrays of the next power of two above
/// twice the count that is transformed. The order of the sums does not depend on the machine.
/// </remarks>
internal static class RealFourier
{
    /// <summary>The transform from 0 to the middle: X(0) … X(⌊n/2⌋).</summary>
    /// <param name="values">x, at least one.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Complex[] Of(ReadOnlySpan<double> values, CancellationToken stop = default) => Of(values, null, stop);

    /// <summary>The same, where many of one count are transformed.</summary>
    /// <param name="values">x, at least one.</param>
    /// <param name="turns">What depends on their count alone; null: it is made on the way.</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static Complex[] Of(ReadOnlySpan<double> values, FourierTurns? turns, CancellationToken stop)
    {
        var n = values.Length;
        var half = n / 2;
        if (n % 2 != 0)
        {
            var plain = new Complex[n];
            for (var j = 0; j < n; j++)
            {
                plain[j] = values[j];
            }

            return Whole(plain, turns, stop)[..(half + 1)];
        }

        var pairs = new Complex[half];
        for (var j = 0; j < half; j++)
        {
            pairs[j] = new Complex(values[2 * j], values[(2 * j) + 1]);
        }

        var of = Whole(pairs, turns, stop);
        var result = new Complex[half + 1];
        for (var k = 0; k <= half; k++)
        {
            var (there, back) = (of[k % half], Complex.Conjugate(of[(half - k) % half]));
            var turn = turns is null ? Half(k, n) : turns.Halves[k];
            result[k] = 0.5 * (there + back - (Complex.ImaginaryOne * turn * (there - back)));
        }

        return result;
    }

    private static Complex[] Whole(Complex[] values, FourierTurns? turns, CancellationToken stop)
    {
        var n = values.Length;
        if (BitOperations.IsPow2(n))
        {
            PowerOfTwo.Forward(values, stop);
            PowerOfTwo.Reorder(values);
            return values;
        }

        var length = Padded(n);
        var padded = new Complex[length];
        for (var k = 0; k < n; k++)
        {
            padded[k] = values[k] * (turns is null ? Chirp(k, n) : turns.Chirps[k]);
        }

        // Both in the same disorder, in which a product of each pair is all that is asked.
        PowerOfTwo.Forward(padded, stop);
        var chirp = turns is null ? Transformed(n, stop) : turns.Transformed;
        for (var k = 0; k < length; k++)
        {
            padded[k] *= chirp[k];
        }

        PowerOfTwo.Backward(padded, stop);
        for (var k = 0; k < n; k++)
        {
            values[k] = padded[k] * (turns is null ? Chirp(k, n) : turns.Chirps[k]) / length;
        }

        return values;
    }

    private static int Padded(int n) => (int)BitOperations.RoundUpToPowerOf2((uint)((2 * n) - 1));

    /// <summary>e^(−i2πk/n), by which halves are put together.</summary>
    internal static Complex Half(int k, int n) => Turn(-2.0 * Math.PI * k / n);

    /// <summary>The transform of the chirp's conjugate, in bit-reversed order.</summary>
    internal static Complex[] Transformed(int n, CancellationToken stop)
    {
        var chirp = new Complex[Padded(n)];
        for (var k = 0; k < n; k++)
        {
            chirp[k] = Complex.Conjugate(Chirp(k, n));
            chirp[(chirp.Length - k) % chirp.Length] = chirp[k];
        }

        PowerOfTwo.Forward(chirp, stop);
        return chirp;
    }

    /// <summary>e^(−iπk²/n): whole turns taken off k² first.</summary>
    internal static Complex Chirp(long k, long n) => Turn(-Math.PI * (k * k % (2 * n)) / n);

    private static Complex Turn(double angle)
    {
        var (sine, cosine) = Math.SinCos(angle);
        return new Complex(cosine, sine);
    }
}
