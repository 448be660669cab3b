using System.Numerics;

namespace Heaveline.Numerics;

/// <summary>
/// The fast Fourier transform of 2^m complex numbers in place [Gentleman, Sande, Fast Fourier transforms: for fun and profit, AFIPS 29 (1966) 563],
/// halves of halves one after the other, so that what is worked on stays in the cache. Forwards it leaves its result in bit-reversed order, backwards
/// it takes it so: a convolution needs no other.
/// </summary>
internal static class PowerOfTwo
{
    // A part of so many is worked off between two looks at the token: about a millisecond.
    private const int Part = 1 << 16;

    // e^(−i2πk/n) is the product of one of so many fine turns with a coarse one.
    private const int Fine = 1 << 10;

    // For each m, the turns of n = 2^m: all of them, or the first of them.
    private static readonly Complex[][] FineTurns =
        [.. Enumerable.Range(0, 31).Select(m => Enumerable.Range(0, Math.Min((1 << m) / 2, Fine)).Select(k => Turn(k, 1 << m)).ToArray())];

    /// <summary>Σ a(j) e^(−i2πjk/n), k in bit-reversed order.</summary>
    public static void Forward(Span<Complex> a, CancellationToken stop)
    {
        if (a.Length < 2)
        {
            return;
        }

        if (a.Length >= Part)
        {
            stop.ThrowIfCancellationRequested();
        }

        var half = a.Length / 2;
        var low = a[..half];
        var high = a[half..];
        var turns = FineTurns[BitOperations.Log2((uint)a.Length)];
        for (var k = 0; k < turns.Length; k++)
        {
            // The first coarse turn is none.
            var (u, v) = (low[k], high[k]);
            low[k] = u + v;
            high[k] = (u - v) * turns[k];
        }

        for (var from = Fine; from < half; from += Fine)
        {
            var coarse = Turn(from, a.Length);
            for (var k = 0; k < turns.Length; k++)
            {
                var (u, v) = (low[from + k], high[from + k]);
                low[from + k] = u + v;
                high[from + k] = (u - v) * (coarse * turns[k]);
            }
        }

        Forward(low, stop);
        Forward(high, stop);
    }

    /// <summary>Σ a(k) e^(+i2πjk/n) of numbers in bit-reversed order: n times what was before <see cref="Forward"/>.</summary>
    public static void Backward(Span<Complex> a, CancellationToken stop)
    {
        if (a.Length < 2)
        {
            return;
        }

        if (a.Length >= Part)
        {
            stop.ThrowIfCancellationRequested();
        }

        var half = a.Length / 2;
        var low = a[..half];
        var high = a[half..];
        Backward(low, stop);
        Backward(high, stop);
        var turns = FineTurns[BitOperations.Log2((uint)a.Length)];
        for (var k = 0; k < turns.Length; k++)
        {
            var (u, v) = (low[k], high[k] * Complex.Conjugate(turns[k]));
            low[k] = u + v;
            high[k] = u - v;
        }

        for (var from = Fine; from < half; from += Fine)
        {
            var coarse = Turn(from, a.Length);
            for (var k = 0; k < turns.Length; k++)
            {
                var (u, v) = (low[from + k], high[from + k] * Complex.Conjugate(coarse * turns[k]));
                low[from + k] = u + v;
                high[from + k] = u - v;
            }
        }
    }

    /// <summary>Puts numbers in bit-reversed order into order, or back.</summary>
    public static void Reorder(Span<Complex> a)
    {
        for (var (i, j) = (1, 0); i < a.Length; i++)
        {
            var bit = a.Length >> 1;
            for (; (j & bit) != 0; bit >>= 1)
            {
                j ^= bit;
            }

            j |= bit;
            if (i < j)
            {
                (a[i], a[j]) = (a[j], a[i]);
            }
        }
    }

    private static Complex Turn(int k, int n)
    {
        var (sine, cosine) = Math.SinCos(-2.0 * Math.PI * k / n);
        return new Complex(cosine, sine);
    }
}
