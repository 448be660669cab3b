using System.Runtime.InteropServices;

namespace Heaveline.Passes.Steps;

/// <summary>
/// Cleared memory whose parts begin at multiples of 64 bytes: the widest register reads and writes within one cache line. The runtime aligns its
/// own objects to 8 bytes only.
/// </summary>
internal sealed unsafe class AlignedMemory : IDisposable
{
    private const int Line = 64;

    private byte* start;
    private byte* free;
    private readonly byte* end;

    /// <param name="bytes">How much, the sum of <see cref="Room"/> of its parts.</param>
    public AlignedMemory(int bytes)
    {
        start = free = (byte*)NativeMemory.AlignedAlloc((nuint)bytes, Line);
        end = start + bytes;
        NativeMemory.Clear(start, (nuint)bytes);
    }

    ~AlignedMemory() => Dispose();

    /// <summary>Bytes that a part takes.</summary>
    public static int Room(int bytes) => (bytes + Line - 1) & ~(Line - 1);

    /// <summary>The next part.</summary>
    public void* Take(int bytes)
    {
        var part = free;
        free += Room(bytes);
        return free <= end ? part : throw new InvalidOperationException("More memory was taken than was asked for.");
    }

    public void Dispose()
    {
        NativeMemory.AlignedFree(start);
        start = free = null;
        GC.SuppressFinalize(this);
    }
}
