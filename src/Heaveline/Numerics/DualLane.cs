using System.Runtime.CompilerServices;

namespace Heaveline.Numerics;

/// <summary>A number with its derivative in one direction: run through a law it gives the exact slope (forward differentiation).</summary>
internal readonly struct DualLane(double value, double slope) : ILane<DualLane>
{
    public static int Count => 1;

    public double Value { get; } = value;

    public double Slope { get; } = slope;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DualLane Of(double value) => new(value, 0.0);

    public static DualLane From(ReadOnlySpan<double> values) => new(values[0], 0.0);

    public void To(Span<double> values) => values[0] = Value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DualLane Fma(DualLane a, DualLane b, DualLane c) => (a * b) + c;

    // At a corner of a force law both slopes count alike: the limit of equivalent linearisation for a small motion about it.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DualLane Max(DualLane a, DualLane b) =>
        a.Value > b.Value ? a : a.Value < b.Value ? b : new(a.Value, 0.5 * (a.Slope + b.Slope));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DualLane Min(DualLane a, DualLane b) =>
        a.Value < b.Value ? a : a.Value > b.Value ? b : new(a.Value, 0.5 * (a.Slope + b.Slope));

    public static DualLane Sqrt(DualLane a)
    {
        var root = Math.Sqrt(a.Value);
        return new(root, a.Slope / (2.0 * root));
    }

    // The exponent of a stop is a constant of the car: its slope is never asked for.
    public static DualLane Power(DualLane a, DualLane b) =>
        new(Math.Pow(a.Value, b.Value), b.Value * Math.Pow(a.Value, b.Value - 1.0) * a.Slope);

    public static bool AnyAbove(DualLane a, DualLane b) => a.Value > b.Value;

    public static DualLane WhereAtMost(DualLane a, DualLane limit, DualLane then, DualLane otherwise) => a.Value <= limit.Value ? then : otherwise;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DualLane operator +(DualLane a, DualLane b) => new(a.Value + b.Value, a.Slope + b.Slope);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DualLane operator -(DualLane a, DualLane b) => new(a.Value - b.Value, a.Slope - b.Slope);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DualLane operator *(DualLane a, DualLane b) => new(a.Value * b.Value, (a.Slope * b.Value) + (a.Value * b.Slope));

    public static DualLane operator /(DualLane a, DualLane b) =>
        new(a.Value / b.Value, ((a.Slope * b.Value) - (a.Value * b.Slope)) / (b.Value * b.Value));

    public static DualLane operator -(DualLane a) => new(-a.Value, -a.Slope);
}
