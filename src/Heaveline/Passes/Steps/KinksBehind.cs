using System.Runtime.CompilerServices;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>Kinks that follow an axle's block in memory: dampers, alike on both sides, springs and bump stops, rebound stops.</summary>
/// <param name="block">The block.</param>
/// <param name="count">How many they are.</param>
internal readonly unsafe struct KinksBehind<T, TSides>(AxleBlock<T, TSides>* block, KinkCount count) : IAxleKinks<T>
    where T : unmanaged, ILane<T>
    where TSides : unmanaged, ISides<TSides, T>
{
    private readonly KinkPair<T, Alike<T>>* first = (KinkPair<T, Alike<T>>*)(block + 1);
    private readonly KinkCount count = count;

    public bool Solid
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => count.Solid;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(T sL, T sR, T vL, T vR, ref T fL, ref T fR, ref T gL, ref T gR)
    {
        var d = first;
        var end = d + count.Dampers;
        for (; d < end - 1; d += 2)
        {
            var (at, bend) = (d[0].At, d[0].Bend);
            fL = T.Fma(bend.L, T.Max(vL, at.L), fL);
            fR = T.Fma(bend.R, T.Max(vR, at.R), fR);
            (at, bend) = (d[1].At, d[1].Bend);
            gL = T.Fma(bend.L, T.Max(vL, at.L), gL);
            gR = T.Fma(bend.R, T.Max(vR, at.R), gR);
        }

        if (d < end)
        {
            var (at, bend) = (d->At, d->Bend);
            fL = T.Fma(bend.L, T.Max(vL, at.L), fL);
            fR = T.Fma(bend.R, T.Max(vR, at.R), fR);
            d++;
        }

        var p = (KinkPair<T, TSides>*)d;
        for (var last = p + count.Above; p < last; p++)
        {
            var (at, bend) = (p->At, p->Bend);
            gL = T.Fma(bend.L, T.Max(sL, at.L), gL);
            gR = T.Fma(bend.R, T.Max(sR, at.R), gR);
        }

        for (var last = p + count.Below; p < last; p++)
        {
            var (at, bend) = (p->At, p->Bend);
            fL = T.Fma(bend.L, T.Min(sL, at.L), fL);
            fR = T.Fma(bend.R, T.Min(sR, at.R), fR);
        }
    }
}
