using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>
/// How many doubles stand side by side in a batch on this processor: chosen once, never a width that the runtime would imitate in software.
/// </summary>
/// <remarks>
/// The widest pays only in memory aligned to its own width, as <see cref="Passes.Steps.AlignedMemory"/> gives it: the runtime keeps its own objects
/// aligned to 8 bytes, so that most 512-bit loads would straddle two cache lines (measured 2026-11-25: between 0.3 and 0.9 of the 256-bit rate).
/// </remarks>
internal static class LaneWidth
{
    /// <summary>8, 4, 2 or 1.</summary>
    public static int Best => All[^1];

    /// <summary>Every width that this processor has, for tests and measurements.</summary>
    public static IReadOnlyList<int> All { get; } =
    [
        1,
        .. Vector128.IsHardwareAccelerated ? [2] : (int[])[],
        .. Vector256.IsHardwareAccelerated ? [4] : (int[])[],
        .. Vector512.IsHardwareAccelerated ? [8] : (int[])[],
    ];
}
