using System.Runtime.CompilerServices;

namespace Heaveline.Numerics;

/// <summary>Four lanes, one per corner: many cars side by side, each corner in its own register (or one car, each corner its own number).</summary>
internal readonly struct Quad<TLane>(TLane frontLeft, TLane frontRight, TLane rearLeft, TLane rearRight) : IQuad<Quad<TLane>, TLane>
    where TLane : struct, ILane<TLane>
{
    private readonly TLane FL = frontLeft;
    private readonly TLane FR = frontRight;
    private readonly TLane RL = rearLeft;
    private readonly TLane RR = rearRight;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> Of(TLane frontLeft, TLane frontRight, TLane rearLeft, TLane rearRight) =>
        new(frontLeft, frontRight, rearLeft, rearRight);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> All(TLane value) => new(value, value, value, value);

    public TLane At(int corner) => corner switch { 0 => FL, 1 => FR, 2 => RL, _ => RR };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> Fma(Quad<TLane> a, Quad<TLane> b, Quad<TLane> c) =>
        new(TLane.Fma(a.FL, b.FL, c.FL), TLane.Fma(a.FR, b.FR, c.FR), TLane.Fma(a.RL, b.RL, c.RL), TLane.Fma(a.RR, b.RR, c.RR));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> Max(Quad<TLane> a, Quad<TLane> b) =>
        new(TLane.Max(a.FL, b.FL), TLane.Max(a.FR, b.FR), TLane.Max(a.RL, b.RL), TLane.Max(a.RR, b.RR));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> Min(Quad<TLane> a, Quad<TLane> b) =>
        new(TLane.Min(a.FL, b.FL), TLane.Min(a.FR, b.FR), TLane.Min(a.RL, b.RL), TLane.Min(a.RR, b.RR));

    public static Quad<TLane> Sqrt(Quad<TLane> a) => new(TLane.Sqrt(a.FL), TLane.Sqrt(a.FR), TLane.Sqrt(a.RL), TLane.Sqrt(a.RR));

    public static Quad<TLane> Power(Quad<TLane> a, Quad<TLane> b) =>
        new(TLane.Power(a.FL, b.FL), TLane.Power(a.FR, b.FR), TLane.Power(a.RL, b.RL), TLane.Power(a.RR, b.RR));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(Quad<TLane> a, Quad<TLane> b) =>
        TLane.AnyAbove(a.FL, b.FL) || TLane.AnyAbove(a.FR, b.FR) || TLane.AnyAbove(a.RL, b.RL) || TLane.AnyAbove(a.RR, b.RR);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> WhereAtMost(Quad<TLane> a, Quad<TLane> limit, Quad<TLane> then, Quad<TLane> otherwise) => new(
        TLane.WhereAtMost(a.FL, limit.FL, then.FL, otherwise.FL),
        TLane.WhereAtMost(a.FR, limit.FR, then.FR, otherwise.FR),
        TLane.WhereAtMost(a.RL, limit.RL, then.RL, otherwise.RL),
        TLane.WhereAtMost(a.RR, limit.RR, then.RR, otherwise.RR));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> SwapSides(Quad<TLane> a) => new(a.FR, a.FL, a.RR, a.RL);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> SwapEnds(Quad<TLane> a) => new(a.RL, a.RR, a.FL, a.FR);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TLane Sum(Quad<TLane> a) => (a.FL + a.FR) + (a.RL + a.RR);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> operator +(Quad<TLane> a, Quad<TLane> b) => new(a.FL + b.FL, a.FR + b.FR, a.RL + b.RL, a.RR + b.RR);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> operator -(Quad<TLane> a, Quad<TLane> b) => new(a.FL - b.FL, a.FR - b.FR, a.RL - b.RL, a.RR - b.RR);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> operator *(Quad<TLane> a, Quad<TLane> b) => new(a.FL * b.FL, a.FR * b.FR, a.RL * b.RL, a.RR * b.RR);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Quad<TLane> operator /(Quad<TLane> a, Quad<TLane> b) => new(a.FL / b.FL, a.FR / b.FR, a.RL / b.RL, a.RR / b.RR);
}
