using Heaveline.Numerics;
using ILGPU;

namespace Heaveline.Gpu.Kernels;

/// <summary>
/// A thread's own part of the memory that its group shares: first two sums a question, then the last four values of each signal, then the shares that
/// are its run's own. An odd number of numbers each, so that the threads' parts begin in different banks.
/// </summary>
internal readonly struct DeviceRoom<T>
    where T : unmanaged, ILane<T>
{
    /// <summary>Values of a signal that a piece is made of.</summary>
    public const int About = 4;

    private readonly ArrayView<T> own;

    private DeviceRoom(ArrayView<T> own) => this.own = own;

    /// <summary>Numbers that a thread needs.</summary>
    public static int SizeOf(int signals, int questions, int shares) => ((2 * questions) + (About * signals) + shares) | 1;

    /// <summary>This thread's.</summary>
    public static DeviceRoom<T> Of(int size) => new(SharedMemory.GetDynamic<T>().SubView(Group.IdxX * size, size));

    /// <summary>What begins so many numbers on.</summary>
    public DeviceRoom<T> From(int slot) => new(own.SubView(slot));

    public T Get(int slot) => own[slot];

    public void Put(int slot, T value) => own[slot] = value;
}
