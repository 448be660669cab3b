using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>The kinks of one axle on independent wheels: dampers, springs and bump stops, rebound stops.</summary>
internal struct KinksInside<T, TDampers, TAbove, TBelow> : IAxleKinks<T>
    where T : unmanaged, ILane<T>
    where TDampers : unmanaged, IKinkChain<TDampers, T>
    where TAbove : unmanaged, IKinkChain<TAbove, T>
    where TBelow : unmanaged, IKinkChain<TBelow, T>
{
    public TDampers Dampers;
    public TAbove Opening;
    public TBelow Closing;

    public readonly bool Solid => false;

    public static KinksInside<T, TDampers, TAbove, TBelow> Read(ref NumberReader<T> numbers, DevicePlaces<T> places)
    {
        KinksInside<T, TDampers, TAbove, TBelow> kinks = default;
        kinks.Dampers = TDampers.Read(ref numbers, places);
        kinks.Opening = TAbove.Read(ref numbers, places);
        kinks.Closing = TBelow.Read(ref numbers, places);
        return kinks;
    }

    public void Add(T sL, T sR, T vL, T vR, ref T fL, ref T fR, ref T gL, ref T gR)
    {
        Dampers.InTurn(vL, vR, ref fL, ref fR, ref gL, ref gR);
        Opening.Above(sL, sR, ref gL, ref gR);
        Closing.Below(sL, sR, ref fL, ref fR);
    }
}
