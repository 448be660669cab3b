using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>
/// How many doubles stand side by side in a batch on this processor: chosen once, never a width that the runtime would imitate in software.
/// </summary>
/// <remarks>
/// 256 bits are preferred where 512 are to be had: the runtime keeps objects and frames aligned to 16 bytes only, so that most 512-bit loads
/// straddle two cache lines (measured 2026-11-25 on a processor with both: 512 bits gave between 0.3 and 0.9 of the 256-bit rate).
/// </remarks>
internal static class LaneWidth
{
    /// <summary>4, 2 or 1.</summary>
    public static int Best { get; } = Vector256.IsHardwareAccelerated ? 4 : Vector128.IsHardwareAccelerated ? 2 : 1;

    /// <summary>Every width that this processor has, for tests and measurements.</summary>
    public static IReadOnlyList<int> All { get; } =
    [
        1,
        .. Vector128.IsHardwareAccelerated ? [2] : (int[])[],
        .. Vector256.IsHardwareAccelerated ? [4] : (int[])[],
        .. Vector512.IsHardwareAccelerated ? [8] : (int[])[],
    ];
}
