using System.Runtime.CompilerServices;

namespace Heaveline.Numerics;

/// <summary>Four numbers, one per corner, in the order in which a step reads them: front left, front right, rear left, rear right.</summary>
internal readonly struct Quad<TLane>(TLane frontLeft, TLane frontRight, TLane rearLeft, TLane rearRight)
    where TLane : struct, ILane<TLane>
{
    private readonly TLane FL = frontLeft;
    private readonly TLane FR = frontRight;
    private readonly TLane RL = rearLeft;
    private readonly TLane RR = rearRight;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> Of(TLane frontLeft, TLane frontRight, TLane rearLeft, TLane rearRight) =>
        new(frontLeft, frontRight, rearLeft, rearRight);

    /// <summary>The same number at every corner.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> All(TLane value) => new(value, value, value, value);

    /// <summary>Number at corner 0 to 3.</summary>
    public TLane At(int corner) => corner switch { 0 => FL, 1 => FR, 2 => RL, _ => RR };
}
