using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Gpu.Lanes;

/// <summary>One number of double precision on a device: one run, one thread.</summary>
internal readonly struct DeviceDouble(double value) : ILane<DeviceDouble>
{
    private readonly double value = value;

    public static int Count => 1;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble Of(double value) => new((double)value);

    public static DeviceDouble From(ReadOnlySpan<double> values) => new((double)values[0]);

    public void To(Span<double> values) => values[0] = value;

    // The device's compiler makes one instruction, and one rounding, of both.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble Fma(DeviceDouble a, DeviceDouble b, DeviceDouble c) => new((a.value * b.value) + c.value);

    // Said here too: the device's compiler does not look for what an interface says in its place.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void AddProduct(ref DeviceDouble sum, DeviceDouble a, DeviceDouble b) => sum = Fma(a, b, sum);

    // No device has an instruction for the larger of two numbers of double precision: it compares and selects.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble Max(DeviceDouble a, DeviceDouble b) => new(a.value > b.value ? a.value : b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble Min(DeviceDouble a, DeviceDouble b) => new(a.value < b.value ? a.value : b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble Sqrt(DeviceDouble a) => new(Math.Sqrt(a.value));

    public static DeviceDouble Power(DeviceDouble a, DeviceDouble b) => new((double)DevicePower.Of(a.value, b.value));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool AnyAbove(DeviceDouble a, DeviceDouble b) => a.value > b.value;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble WhereAtMost(DeviceDouble a, DeviceDouble limit, DeviceDouble then, DeviceDouble otherwise) =>
        new(a.value <= limit.value ? then.value : otherwise.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble operator +(DeviceDouble a, DeviceDouble b) => new(a.value + b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble operator -(DeviceDouble a, DeviceDouble b) => new(a.value - b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble operator *(DeviceDouble a, DeviceDouble b) => new(a.value * b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble operator /(DeviceDouble a, DeviceDouble b) => new(a.value / b.value);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static DeviceDouble operator -(DeviceDouble a) => new(-a.value);
}
