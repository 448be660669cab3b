using Heaveline.Numerics;
using Heaveline.Passes.Steps;
using ILGPU;

namespace Heaveline.Gpu.Kernels;

/// <summary>
/// Reads the numbers of one run one after the other: number j of run i stands at j·runs + i, so that neighbouring threads read neighbours.
/// </summary>
internal struct NumberReader<T>(ArrayView<T> numbers, long run, long runs)
    where T : unmanaged, ILane<T>
{
    private readonly ArrayView<T> numbers = numbers;
    private readonly long runs = runs;
    private long at = run;

    /// <summary>The next number.</summary>
    public T Next()
    {
        var number = numbers[at];
        at += runs;
        return number;
    }

    /// <summary>Passes over some.</summary>
    public void Skip(int count) => at += count * runs;

    /// <summary>The next number of both sides.</summary>
    public TSides Sides<TSides>()
        where TSides : unmanaged, ISides<TSides, T>
    {
        var left = Next();
        return TSides.Of(left, TSides.Count == 2 ? Next() : left);
    }
}
