using System.Runtime.CompilerServices;

namespace Heaveline.Numerics;

/// <summary>
/// Single places of lanes in memory. Only lanes of plain numbers one after the other are known: all doubles, or all of single precision.
/// </summary>
internal static unsafe class LaneLayout<T>
    where T : unmanaged, ILane<T>
{
    private static bool InDouble => sizeof(T) == T.Count * sizeof(double);

    private static bool InSingle => sizeof(T) == T.Count * sizeof(float);

    /// <summary>Writes one place.</summary>
    /// <exception cref="NotSupportedException">Lanes of another make, such as dual numbers.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Put(T* to, int place, double value)
    {
        if (InDouble)
        {
            ((double*)to)[place] = value;
        }
        else if (InSingle)
        {
            ((float*)to)[place] = (float)value;
        }
        else
        {
            throw Unknown();
        }
    }

    /// <summary>Reads one place of lanes one after the other.</summary>
    /// <param name="lanes">The lanes.</param>
    /// <param name="place">The place, counted through all of them.</param>
    /// <exception cref="NotSupportedException">Lanes of another make.</exception>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double At(T* lanes, int place) =>
        InDouble ? ((double*)lanes)[place] : InSingle ? ((float*)lanes)[place] : throw Unknown();

    private static NotSupportedException Unknown() => new($"{typeof(T).Name} is not numbers one after the other, of double or single precision.");
}
