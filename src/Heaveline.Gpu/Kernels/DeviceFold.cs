using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using ILGPU;

namespace Heaveline.Gpu.Kernels;

/// <summary>
/// Gathers the answers to the questions of one run, sample by sample, by the pieces of <see cref="Curve"/>. A thread's samples and sums stand in
/// the memory that its group shares: number j of a thread at j·threads + thread.
/// </summary>
internal struct DeviceFold<T>
    where T : unmanaged, ILane<T>
{
    // Values of a signal that a piece is made of.
    private const int About = 4;

    // As a turn beside a sample reaches past it: Measures.RangeFold.
    private const double Beyond = 0.4;

    private ArrayView<T> room;
    private int thread;
    private int threads;
    private int run;
    private int table;
    private int samples;
    private T farthest;

    /// <summary>Numbers of room that a thread needs.</summary>
    public static int RoomOf(int signals, int questions) => Channel.Count + (About * signals) + (2 * questions);

    public static DeviceFold<T> Of(in DeviceArguments<T> a, int run, int table, int samples)
    {
        DeviceFold<T> fold = default;
        fold.room = SharedMemory.GetDynamic<T>();
        fold.thread = Group.IdxX;
        fold.threads = Group.DimX;
        (fold.run, fold.table, fold.samples) = (run, table, samples);
        fold.farthest = T.Of(0.0);
        for (var j = 0; j < Channel.Count; j++)
        {
            fold.Put(j, T.Of(0.0));
        }

        for (var q = 0; q < a.Questions; q++)
        {
            var range = a.Asked[2 * q] == (int)CurveQuestionKind.Range;
            fold.Put(fold.Sum(in a, q), range ? T.Of(double.PositiveInfinity) : T.Of(0.0));
            fold.Put(fold.Sum(in a, q) + 1, range ? T.Of(double.NegativeInfinity) : T.Of(0.0));
        }

        return fold;
    }

    /// <summary>Positions and rates as they are before the step.</summary>
    public void Before(AxleState<T> front, AxleState<T> rear, in BodyBlock<T> body)
    {
        Put(Channel.Heave, body.Z);
        Put(Channel.Pitch, body.Theta);
        Put(Channel.Roll, body.Phi);
        Put(Channel.Wheel, front.UL);
        Put(Channel.Wheel + 1, front.UR);
        Put(Channel.Wheel + 2, rear.UL);
        Put(Channel.Wheel + 3, rear.UR);
        Put(Channel.Rates + Channel.Heave, body.ZRate);
        Put(Channel.Rates + Channel.Pitch, body.ThetaRate);
        Put(Channel.Rates + Channel.Roll, body.PhiRate);
        Put(Channel.Rates + Channel.Wheel, front.WL);
        Put(Channel.Rates + Channel.Wheel + 1, front.WR);
        Put(Channel.Rates + Channel.Wheel + 2, rear.WL);
        Put(Channel.Rates + Channel.Wheel + 3, rear.WR);
        farthest = T.Max(farthest, T.Max(T.Max(body.Theta, -body.Theta), T.Max(body.Phi, -body.Phi)));
    }

    /// <summary>Accelerations and forces, which the step worked out, and all that is asked.</summary>
    public void After(
        in DeviceArguments<T> a,
        int k,
        AxleState<T> front,
        AxleState<T> rear,
        PairPast<T> frontNow,
        PairPast<T> rearNow,
        in BodyPast<T> bodyNow)
    {
        Put(Channel.Accelerations + Channel.Heave, bodyNow.Z);
        Put(Channel.Accelerations + Channel.Pitch, bodyNow.Theta);
        Put(Channel.Accelerations + Channel.Roll, bodyNow.Phi);
        Put(Channel.Accelerations + Channel.Wheel, frontNow.L);
        Put(Channel.Accelerations + Channel.Wheel + 1, frontNow.R);
        Put(Channel.Accelerations + Channel.Wheel + 2, rearNow.L);
        Put(Channel.Accelerations + Channel.Wheel + 3, rearNow.R);
        Put(Channel.Tyre, front.TyreL);
        Put(Channel.Tyre + 1, front.TyreR);
        Put(Channel.Tyre + 2, rear.TyreL);
        Put(Channel.Tyre + 3, rear.TyreR);
        Put(Channel.Force, front.FL);
        Put(Channel.Force + 1, front.FR);
        Put(Channel.Force + 2, rear.FL);
        Put(Channel.Force + 3, rear.FR);
        for (var s = 0; s < a.Signals; s++)
        {
            var value = a.Bases[run + ((long)s * a.Runs)];
            for (var p = a.Parts[s]; p < a.Parts[s + 1]; p++)
            {
                value = T.Fma(a.Shares[run + ((long)p * a.Runs)], Get(a.Parts[a.Signals + 1 + p]), value);
            }

            Put(Value(s, k), value);
        }

        Fold(in a, k);
    }

    /// <summary>Ends the record and writes the answers.</summary>
    public void End(in DeviceArguments<T> a, AxleState<T> front, AxleState<T> rear, in BodyBlock<T> body)
    {
        Fold(in a, samples);
        for (var j = 0; j < 2 * a.Questions; j++)
        {
            a.Answers[run + ((long)j * a.Runs)] = Get(Sum(in a, 0) + j);
        }

        // A motion that is once not finite stays so, and zero times it is not zero.
        var all = body.Z + body.Theta + body.Phi + front.UL + front.UR + rear.UL + rear.UR;
        a.Answers[run + (2L * a.Questions * a.Runs)] = farthest;
        a.Answers[run + (((2L * a.Questions) + 1L) * a.Runs)] = all * T.Of(0.0);
    }

    // The piece that begins two samples before the newest, for which all that it is made of is there.
    private void Fold(in DeviceArguments<T> a, int newest)
    {
        var j = newest - 2;
        if (j < 0)
        {
            return;
        }

        for (var q = 0; q < a.Questions; q++)
        {
            var place = 2 * ((table * a.Questions) + q);
            var (from, to) = (a.Places[place], a.Places[place + 1]);
            if (j < from || j > to)
            {
                continue;
            }

            var s = a.Asked[(2 * q) + 1];
            var (value, next) = (Get(Value(s, j)), Get(Value(s, j + 1)));
            var two = T.Of(2.0);
            var (last, beyond) = (Get(Value(s, j + 3)), Get(Value(s, j + 2)));
            var before = last - (two * value) + next;
            var after = value - (two * next) + beyond;
            // At the record's ends there is one second difference only.
            before = j == 0 ? after : before;
            after = newest == samples ? before : after;
            var (pastFrom, pastTo) = (a.Past[place], a.Past[place + 1]);
            if (a.Asked[2 * q] == (int)CurveQuestionKind.Squares)
            {
                Squares(Sum(in a, q), j, from, to, pastFrom, pastTo, LanePiece<T>.Of(value, next, before, after));
            }
            else
            {
                var beforeMeets = j > 0 && !T.AnyAbove(T.Of(0.0), (value - last) * (value - next));
                var afterMeets = newest < samples && !T.AnyAbove(T.Of(0.0), (next - value) * (next - beyond));
                Range(Sum(in a, q), j, from, to, pastFrom, pastTo, value, next, before, after, beforeMeets || afterMeets);
            }
        }
    }

    private void Squares(int sum, int j, int from, int to, T pastFrom, T pastTo, LanePiece<T> piece)
    {
        var own = Get(sum);
        if (j == from)
        {
            own -= Part(piece, pastFrom);
        }

        if (j < to)
        {
            own += piece.SquareIntegral();
        }

        if (j == to)
        {
            own += Part(piece, pastTo);
        }

        Put(sum, own);
    }

    // ∫x² from 0 to s.
    private static T Part(LanePiece<T> p, T s) => s * new LanePiece<T>(p.C0, p.C1 * s, p.C2 * s * s, p.C3 * s * s * s).SquareIntegral();

    private void Range(
        int sum, int j, int from, int to, T pastFrom, T pastTo, T value, T next, T before, T after, bool turns)
    {
        var (least, most) = (Get(sum), Get(sum + 1));
        var beyond = T.Of(Beyond);
        var (swing, swingNext) = (beyond * T.Max(before, -before), beyond * T.Max(after, -after));
        var ends = j == samples - 2;
        if (j != from && j != to && !ends
            && !T.AnyAbove(T.Max(value + swing, next + swingNext), most) && !T.AnyAbove(least, T.Min(value - swing, next - swingNext)))
        {
            return;
        }

        var zero = T.Of(0.0);
        var piece = LanePiece<T>.Of(value, next, before, after);
        if (j > from || !T.AnyAbove(pastFrom, zero))
        {
            (least, most) = (T.Min(least, value), T.Max(most, value));
        }

        if (ends && to > j)
        {
            (least, most) = (T.Min(least, next), T.Max(most, next));
        }

        if (j == from)
        {
            var here = At(piece, pastFrom);
            (least, most) = (T.Min(least, here), T.Max(most, here));
        }

        if (j == to)
        {
            var here = At(piece, pastTo);
            (least, most) = (T.Min(least, here), T.Max(most, here));
        }

        var slope = piece.C1 + (T.Of(2.0) * piece.C2) + (T.Of(3.0) * piece.C3);
        var rises = T.AnyAbove(piece.C1, zero);
        if (turns && ((rises && !T.AnyAbove(slope, zero)) || (T.AnyAbove(zero, piece.C1) && !T.AnyAbove(zero, slope))))
        {
            // As CurvePiece.Turn.
            var root = T.Sqrt(T.Max(zero, (piece.C2 * piece.C2) - (T.Of(3.0) * piece.C1 * piece.C3)));
            var turn = T.Max(zero, T.Min(T.Of(1.0), piece.C1 / ((rises ? root : -root) - piece.C2)));
            if ((j > from || T.AnyAbove(turn, pastFrom)) && (j < to || T.AnyAbove(pastTo, turn)))
            {
                var here = At(piece, turn);
                (least, most) = (T.Min(least, here), T.Max(most, here));
            }
        }

        Put(sum, least);
        Put(sum + 1, most);
    }

    private static T At(LanePiece<T> p, T s) => p.C0 + (s * (p.C1 + (s * (p.C2 + (s * p.C3)))));

    // Where a signal's value at a sample stands: its last four, in turn.
    private readonly int Value(int signal, int sample) => Channel.Count + (About * signal) + (sample & (About - 1));

    private readonly int Sum(in DeviceArguments<T> a, int question) => Channel.Count + (About * a.Signals) + (2 * question);

    private readonly T Get(int slot) => room[thread + (slot * threads)];

    private readonly void Put(int slot, T value) => room[thread + (slot * threads)] = value;
}
