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
            T.AddAbove(ref fL, bend.L, vL, at.L);
            T.AddAbove(ref fR, bend.R, vR, at.R);
            (at, bend) = (d[1].At, d[1].Bend);
            T.AddAbove(ref gL, bend.L, vL, at.L);
            T.AddAbove(ref gR, bend.R, vR, at.R);
        }

        if (d < end)
        {
            var (at, bend) = (d->At, d->Bend);
            T.AddAbove(ref fL, bend.L, vL, at.L);
            T.AddAbove(ref fR, bend.R, vR, at.R);
            d++;
        }

        var p = (KinkPair<T, TSides>*)d;
        for (var last = p + count.Above; p < last; p++)
        {
            var (at, bend) = (p->At, p->Bend);
            T.AddAbove(ref gL, bend.L, sL, at.L);
            T.AddAbove(ref gR, bend.R, sR, at.R);
        }

        for (var last = p + count.Below; p < last; p++)
        {
            var (at, bend) = (p->At, p->Bend);
            T.AddBelow(ref fL, bend.L, sL, at.L);
            T.AddBelow(ref fR, bend.R, sR, at.R);
        }
    }

    /// <summary>Those of both axles, of each as many, in turn.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static void Add(
        in KinksBehind<T, TSides> front,
        in KinksBehind<T, TSides> rear,
        T sFL, T sFR, T vFL, T vFR, ref T fFL, ref T fFR, ref T gFL, ref T gFR,
        T sRL, T sRR, T vRL, T vRR, ref T fRL, ref T fRR, ref T gRL, ref T gRR)
    {
        var d = front.first;
        // The rear axle's lie so far from the front one's.
        var apart = (byte*)rear.first - (byte*)d;
        var end = d + front.count.Dampers;
        for (; d < end - 1; d += 2)
        {
            var e = (KinkPair<T, Alike<T>>*)((byte*)d + apart);
            var (at, bend) = (d[0].At, d[0].Bend);
            T.AddAbove(ref fFL, bend.L, vFL, at.L);
            T.AddAbove(ref fFR, bend.R, vFR, at.R);
            (at, bend) = (e[0].At, e[0].Bend);
            T.AddAbove(ref fRL, bend.L, vRL, at.L);
            T.AddAbove(ref fRR, bend.R, vRR, at.R);
            (at, bend) = (d[1].At, d[1].Bend);
            T.AddAbove(ref gFL, bend.L, vFL, at.L);
            T.AddAbove(ref gFR, bend.R, vFR, at.R);
            (at, bend) = (e[1].At, e[1].Bend);
            T.AddAbove(ref gRL, bend.L, vRL, at.L);
            T.AddAbove(ref gRR, bend.R, vRR, at.R);
        }

        if (d < end)
        {
            var e = (KinkPair<T, Alike<T>>*)((byte*)d + apart);
            var (at, bend) = (d->At, d->Bend);
            T.AddAbove(ref fFL, bend.L, vFL, at.L);
            T.AddAbove(ref fFR, bend.R, vFR, at.R);
            (at, bend) = (e->At, e->Bend);
            T.AddAbove(ref fRL, bend.L, vRL, at.L);
            T.AddAbove(ref fRR, bend.R, vRR, at.R);
            d++;
        }

        var p = (KinkPair<T, TSides>*)d;
        for (var last = p + front.count.Above; p < last; p++)
        {
            var q = (KinkPair<T, TSides>*)((byte*)p + apart);
            var (at, bend) = (p->At, p->Bend);
            T.AddAbove(ref gFL, bend.L, sFL, at.L);
            T.AddAbove(ref gFR, bend.R, sFR, at.R);
            (at, bend) = (q->At, q->Bend);
            T.AddAbove(ref gRL, bend.L, sRL, at.L);
            T.AddAbove(ref gRR, bend.R, sRR, at.R);
        }

        for (var last = p + front.count.Below; p < last; p++)
        {
            var q = (KinkPair<T, TSides>*)((byte*)p + apart);
            var (at, bend) = (p->At, p->Bend);
            T.AddBelow(ref fFL, bend.L, sFL, at.L);
            T.AddBelow(ref fFR, bend.R, sFR, at.R);
            (at, bend) = (q->At, q->Bend);
            T.AddBelow(ref fRL, bend.L, sRL, at.L);
            T.AddBelow(ref fRR, bend.R, sRR, at.R);
        }
    }
}
