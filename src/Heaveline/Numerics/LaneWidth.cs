using System.Runtime.Intrinsics;

namespace Heaveline.Numerics;

/// <summary>How many doubles this processor really handles side by side: chosen once, never a width that the runtime would imitate in software.</summary>
internal static class LaneWidth
{
    /// <summary>8, 4, 2 or 1.</summary>
    public static int Best { get; } =
        Vector512.IsHardwareAccelerated ? 8 : Vector256.IsHardwareAccelerated ? 4 : Vector128.IsHardwareAccelerated ? 2 : 1;
}
