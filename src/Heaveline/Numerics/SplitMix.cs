namespace Heaveline.Numerics;

/// <summary>
/// Random numbers by place: number i of a seed is a function of both, so that any part of a sequence can be drawn by itself and in any order.
/// SplitMix64 [Steele, Lea and Flood, Fast splittable pseudorandom number generators, OOPSLA 2014]: integers and uniform numbers are the
/// same to the last bit on every machine. The framework's generator is not used because its sequence may change with the framework.
/// </summary>
public static class SplitMix
{
    private const ulong Golden = 0x9E3779B97F4A7C15UL;

    /// <summary>Number <paramref name="index"/> of the sequence, 64 random bits.</summary>
    public static ulong At(ulong seed, ulong index)
    {
        var z = seed + ((index + 1UL) * Golden);
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }

    /// <summary>Number <paramref name="index"/> as a uniform number strictly between 0 and 1, of 53 bits.</summary>
    public static double Uniform(ulong seed, ulong index)
    {
        var bits = At(seed, index) >> 11;
        return (bits + 0.5) * (1.0 / 9007199254740992.0);
    }

    /// <summary>
    /// Numbers <paramref name="index"/> and <paramref name="index"/> + 1 as two independent normal numbers of mean 0 and variance 1
    /// [Box and Muller, A note on the generation of random normal deviates, 1958]. Logarithm and sine are the machine's own: they may differ in
    /// the last bit between machines.
    /// </summary>
    public static (double First, double Second) Normals(ulong seed, ulong index)
    {
        var radius = Math.Sqrt(-2.0 * Math.Log(Uniform(seed, index)));
        var (sine, cosine) = Math.SinCos(2.0 * Math.PI * Uniform(seed, index + 1UL));
        return (radius * cosine, radius * sine);
    }
}
