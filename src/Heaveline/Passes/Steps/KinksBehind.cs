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
            fFL = T.Fma(bend.L, T.Max(vFL, at.L), fFL);
            fFR = T.Fma(bend.R, T.Max(vFR, at.R), fFR);
            (at, bend) = (e[0].At, e[0].Bend);
            fRL = T.Fma(bend.L, T.Max(vRL, at.L), fRL);
            fRR = T.Fma(bend.R, T.Max(vRR, at.R), fRR);
            (at, bend) = (d[1].At, d[1].Bend);
            gFL = T.Fma(bend.L, T.Max(vFL, at.L), gFL);
            gFR = T.Fma(bend.R, T.Max(vFR, at.R), gFR);
            (at, bend) = (e[1].At, e[1].Bend);
            gRL = T.Fma(bend.L, T.Max(vRL, at.L), gRL);
            gRR = T.Fma(bend.R, T.Max(vRR, at.R), gRR);
        }

        if (d < end)
        {
            var e = (KinkPair<T, Alike<T>>*)((byte*)d + apart);
            var (at, bend) = (d->At, d->Bend);
            fFL = T.Fma(bend.L, T.Max(vFL, at.L), fFL);
            fFR = T.Fma(bend.R, T.Max(vFR, at.R), fFR);
            (at, bend) = (e->At, e->Bend);
            fRL = T.Fma(bend.L, T.Max(vRL, at.L), fRL);
            fRR = T.Fma(bend.R, T.Max(vRR, at.R), fRR);
            d++;
        }

        var p = (KinkPair<T, TSides>*)d;
        for (var last = p + front.count.Above; p < last; p++)
        {
            var q = (KinkPair<T, TSides>*)((byte*)p + apart);
            var (at, bend) = (p->At, p->Bend);
            gFL = T.Fma(bend.L, T.Max(sFL, at.L), gFL);
            gFR = T.Fma(bend.R, T.Max(sFR, at.R), gFR);
            (at, bend) = (q->At, q->Bend);
            gRL = T.Fma(bend.L, T.Max(sRL, at.L), gRL);
            gRR = T.Fma(bend.R, T.Max(sRR, at.R), gRR);
        }

        for (var last = p + front.count.Below; p < last; p++)
        {
            var q = (KinkPair<T, TSides>*)((byte*)p + apart);
            var (at, bend) = (p->At, p->Bend);
            fFL = T.Fma(bend.L, T.Min(sFL, at.L), fFL);
            fFR = T.Fma(bend.R, T.Min(sFR, at.R), fFR);
            (at, bend) = (q->At, q->Bend);
            fRL = T.Fma(bend.L, T.Min(sRL, at.L), fRL);
            fRR = T.Fma(bend.R, T.Min(sRR, at.R), fRR);
        }
    }
}
