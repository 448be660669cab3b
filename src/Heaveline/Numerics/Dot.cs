using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>Sums of products, four side by side in an order that does not depend on the machine.</summary>
internal static class Dot
{
    /// <summary>Σ a·b.</summary>
    public static double Of(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var (count, sum, other) = (Math.Min(a.Length, b.Length), Vector256<double>.Zero, Vector256<double>.Zero);
        ref var x = ref MemoryMarshal.GetReference(a);
        ref var y = ref MemoryMarshal.GetReference(b);
        var k = 0;
        for (; k + 8 <= count; k += 8)
        {
            sum += Vector256.LoadUnsafe(ref x, (nuint)k) * Vector256.LoadUnsafe(ref y, (nuint)k);
            other += Vector256.LoadUnsafe(ref x, (nuint)k + 4) * Vector256.LoadUnsafe(ref y, (nuint)k + 4);
        }

        var result = Vector256.Sum(sum + other);
        for (; k < count; k++)
        {
            result += a[k] * b[k];
        }

        return result;
    }

    /// <summary>to += factor·from.</summary>
    public static void Add(double factor, ReadOnlySpan<double> from, Span<double> to)
    {
        var (count, scale) = (Math.Min(from.Length, to.Length), Vector256.Create(factor));
        ref var x = ref MemoryMarshal.GetReference(from);
        ref var y = ref MemoryMarshal.GetReference(to);
        var k = 0;
        for (; k + 4 <= count; k += 4)
        {
            (Vector256.LoadUnsafe(ref y, (nuint)k) + (scale * Vector256.LoadUnsafe(ref x, (nuint)k))).StoreUnsafe(ref y, (nuint)k);
        }

        for (; k < count; k++)
        {
            to[k] += factor * from[k];
        }
    }
}
