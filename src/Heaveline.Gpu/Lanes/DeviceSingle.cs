using System.Runtime.CompilerServices;
using Heaveline.Numerics;
using ILGPU;

namespace Heaveline.Gpu.Lanes;

/// <summary>One number of single precision on a device: one run, one thread.</summary>
internal readonly struct DeviceSingle(float value) : ILane<DeviceSingle>
{
    private readonly float value = value;

    public static int Count => 1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle Of(double value) => new((float)value);

    public static DeviceSingle From(ReadOnlySpan<double> values) => new((float)values[0]);

    public void To(Span<double> values) => values[0] = value;

    // The device's compiler makes one instruction, and one rounding, of both.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle Fma(DeviceSingle a, DeviceSingle b, DeviceSingle c) => new((a.value * b.value) + c.value);

    // Said here too: the device's compiler does not look for what an interface says in its place.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddProduct(ref DeviceSingle sum, DeviceSingle a, DeviceSingle b) => sum = Fma(a, b, sum);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle Max(DeviceSingle a, DeviceSingle b) => new(IntrinsicMath.Max(a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle Min(DeviceSingle a, DeviceSingle b) => new(IntrinsicMath.Min(a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle Sqrt(DeviceSingle a) => new(MathF.Sqrt(a.value));

    public static DeviceSingle Power(DeviceSingle a, DeviceSingle b) => new((float)DevicePower.Of(a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(DeviceSingle a, DeviceSingle b) => a.value > b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle WhereAtMost(DeviceSingle a, DeviceSingle limit, DeviceSingle then, DeviceSingle otherwise) =>
        new(a.value <= limit.value ? then.value : otherwise.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle operator +(DeviceSingle a, DeviceSingle b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle operator -(DeviceSingle a, DeviceSingle b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle operator *(DeviceSingle a, DeviceSingle b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle operator /(DeviceSingle a, DeviceSingle b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceSingle operator -(DeviceSingle a) => new(-a.value);
}
