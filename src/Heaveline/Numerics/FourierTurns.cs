using System.Numerics;

namespace Heaveline.Numerics;

/// <summary>What transforms of many windows of one count have in common (<see cref="RealFourier"/>), made once; it belongs to the caller.</summary>
internal sealed class FourierTurns
{
    /// <summary>For a count.</summary>
    /// <param name="count">How many real numbers, above 0.</param>
    public FourierTurns(int count)
    {
        var whole = count % 2 == 0 ? count / 2 : count;
        Halves = count % 2 == 0 ? [.. Enumerable.Range(0, whole + 1).Select(k => RealFourier.Half(k, count))] : [];
        var isPlain = BitOperations.IsPow2(whole);
        Chirps = isPlain ? [] : [.. Enumerable.Range(0, whole).Select(k => RealFourier.Chirp(k, whole))];
        Transformed = isPlain ? [] : RealFourier.Transformed(whole, CancellationToken.None);
    }

    /// <summary>e^(−i2πk/n), shape (n/2 + 1); empty for an odd count.</summary>
    public Complex[] Halves { get; }

    /// <summary>The chirp, shape (numbers that are transformed); empty where their count is a power of two.</summary>
    public Complex[] Chirps { get; }

    /// <summary>The transform of its conjugate, in bit-reversed order; empty where there is none.</summary>
    public Complex[] Transformed { get; }
}
