using System.Text;
using Heaveline.Numerics;

namespace Heaveline.Doubts;

/// <summary>
/// Errors of a car's sources that belong to their names: a shared instrument, a load, a part keep their error in every car that has them, and none
/// changes with what else is drawn. Error of a source = a normal number of the seed, the draw and the name.
/// </summary>
internal static class NamedErrors
{
    /// <summary>The errors of a car in a draw, in standard deviations, in the order of its sources.</summary>
    /// <param name="doubts">The car's doubts.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="draw">The draw, from 0.</param>
    /// <param name="attempt">Which time it is drawn, from 0: a car that cannot stand is drawn again.</param>
    public static double[] Of(CarDoubts doubts, ulong seed, int draw, int attempt = 0)
    {
        var own = SplitMix.At(SplitMix.At(seed, (ulong)draw), (ulong)attempt);
        return [.. doubts.Sources.Select(source => SplitMix.Normals(SplitMix.At(own, Hash(source.Name)), 0UL).First)];
    }

    // FNV-1a over the bytes of the name [Fowler, Noll and Vo; RFC 9923]: the same on every machine, unlike the framework's.
    private static ulong Hash(string name)
    {
        var hash = 0xCBF29CE484222325UL;
        foreach (var one in Encoding.UTF8.GetBytes(name))
        {
            hash = (hash ^ one) * 0x100000001B3UL;
        }

        return hash;
    }
}
