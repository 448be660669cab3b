using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>A kink of an axle's two wheels, and those after it.</summary>
internal struct KinkChain<T, TSides, TRest> : IKinkChain<KinkChain<T, TSides, TRest>, T>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
    where TRest : unmanaged, IKinkChain<TRest, T>
{
    public TSides At;
    public TSides Bend;
    public TRest Rest;

    public static KinkChain<T, TSides, TRest> Read(ref NumberReader<T> numbers, DevicePlaces<T> places)
    {
        KinkChain<T, TSides, TRest> chain = default;
        chain.At = numbers.Sides<TSides>();
        chain.Bend = numbers.Sides<TSides>();
        chain.Rest = TRest.Read(ref numbers, places);
        return chain;
    }

    public void InTurn(T left, T right, ref T sumLeft, ref T sumRight, ref T otherLeft, ref T otherRight)
    {
        var (at, bend) = (At, Bend);
        sumLeft = T.Fma(bend.L, T.Max(left, at.L), sumLeft);
        sumRight = T.Fma(bend.R, T.Max(right, at.R), sumRight);
        Rest.InTurn(left, right, ref otherLeft, ref otherRight, ref sumLeft, ref sumRight);
    }

    public void Above(T left, T right, ref T sumLeft, ref T sumRight)
    {
        var (at, bend) = (At, Bend);
        sumLeft = T.Fma(bend.L, T.Max(left, at.L), sumLeft);
        sumRight = T.Fma(bend.R, T.Max(right, at.R), sumRight);
        Rest.Above(left, right, ref sumLeft, ref sumRight);
    }

    public void Below(T left, T right, ref T sumLeft, ref T sumRight)
    {
        var (at, bend) = (At, Bend);
        sumLeft = T.Fma(bend.L, T.Min(left, at.L), sumLeft);
        sumRight = T.Fma(bend.R, T.Min(right, at.R), sumRight);
        Rest.Below(left, right, ref sumLeft, ref sumRight);
    }
}
