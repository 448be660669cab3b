using Heaveline.Numerics;

namespace Heaveline.Gpu.Kernels;

/// <summary>
/// Places of an axle's damper kinks, where all cars of a launch have the same: a kernel's arguments are operands of its instructions, so that these
/// take no registers.
/// </summary>
internal struct DevicePlaces<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Most that there is room for.</summary>
    public const int Most = 16;

    private T at0;
    private T at1;
    private T at2;
    private T at3;
    private T at4;
    private T at5;
    private T at6;
    private T at7;
    private T at8;
    private T at9;
    private T at10;
    private T at11;
    private T at12;
    private T at13;
    private T at14;
    private T at15;

    /// <summary>From their values, so many as there are.</summary>
    public static unsafe DevicePlaces<T> Of(ReadOnlySpan<T> values)
    {
        DevicePlaces<T> places = default;
        values.CopyTo(new Span<T>(&places, Most));
        return places;
    }

    /// <summary>One of them. The index is known when this is compiled, and so the comparisons are gone.</summary>
    public readonly T At(int index) =>
        index == 0 ? at0 :
        index == 1 ? at1 :
        index == 2 ? at2 :
        index == 3 ? at3 :
        index == 4 ? at4 :
        index == 5 ? at5 :
        index == 6 ? at6 :
        index == 7 ? at7 :
        index == 8 ? at8 :
        index == 9 ? at9 :
        index == 10 ? at10 :
        index == 11 ? at11 :
        index == 12 ? at12 :
        index == 13 ? at13 :
        index == 14 ? at14 :
        at15;
}
