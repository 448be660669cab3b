using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>A kink of an axle's two wheels whose place all runs share, and those after it.</summary>
internal struct SharedKinkChain<T, TSides, TIndex, TRest> : IKinkChain<SharedKinkChain<T, TSides, TIndex, TRest>, T>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
    where TIndex : IFixed
    where TRest : unmanaged, IKinkChain<TRest, T>
{
    public T At;
    public TSides Bend;
    public TRest Rest;

    public static SharedKinkChain<T, TSides, TIndex, TRest> Read(ref NumberReader<T> numbers, DevicePlaces<T> places)
    {
        SharedKinkChain<T, TSides, TIndex, TRest> chain = default;
        chain.At = places.At(TIndex.Value);
        numbers.Skip(TSides.Count);
        chain.Bend = numbers.Sides<TSides>();
        chain.Rest = TRest.Read(ref numbers, places);
        return chain;
    }

    public void InTurn(T left, T right, ref T sumLeft, ref T sumRight, ref T otherLeft, ref T otherRight)
    {
        var (at, bend) = (At, Bend);
        sumLeft = T.Fma(bend.L, T.Max(left, at), sumLeft);
        sumRight = T.Fma(bend.R, T.Max(right, at), sumRight);
        Rest.InTurn(left, right, ref otherLeft, ref otherRight, ref sumLeft, ref sumRight);
    }

    public void Above(T left, T right, ref T sumLeft, ref T sumRight)
    {
        var (at, bend) = (At, Bend);
        sumLeft = T.Fma(bend.L, T.Max(left, at), sumLeft);
        sumRight = T.Fma(bend.R, T.Max(right, at), sumRight);
        Rest.Above(left, right, ref sumLeft, ref sumRight);
    }

    public void Below(T left, T right, ref T sumLeft, ref T sumRight)
    {
        var (at, bend) = (At, Bend);
        sumLeft = T.Fma(bend.L, T.Min(left, at), sumLeft);
        sumRight = T.Fma(bend.R, T.Min(right, at), sumRight);
        Rest.Below(left, right, ref sumLeft, ref sumRight);
    }
}
