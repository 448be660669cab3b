using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Gpu.Kernels;

/// <summary>
/// Gathers the answers to the questions of one run, sample by sample, by the pieces of <see cref="Curve"/>. Pieces within a stretch the signals take
/// by themselves; those at its ends, and those that may reach past what a range has reached, are looked at closely here.
/// </summary>
internal struct DeviceFold<T, TSignals>
    where T : unmanaged, ILane<T>
    where TSignals : unmanaged, IDeviceSignals<TSignals, T>
{
    private DeviceRoom<T> room;
    private int run;
    private int table;
    private int samples;
    private int turn;
    private int until;
    private int within;
    private T farthest;

    private static int OwnSlot => ValueSlot + (DeviceRoom<T>.About * TSignals.Count);

    private static int ValueSlot => 2 * TSignals.Questions;

    public static DeviceFold<T, TSignals> Of(in DeviceArguments<T> a, int run, int table, int samples)
    {
        DeviceFold<T, TSignals> fold = default;
        fold.room = DeviceRoom<T>.Of(DeviceRoom<T>.SizeOf(TSignals.Count, TSignals.Questions, TSignals.Own));
        (fold.run, fold.table, fold.samples) = (run, table, samples);
        fold.turn = a.Tables[(3 * table) + 2];
        fold.farthest = T.Of(0.0);
        for (var q = 0; q < TSignals.Questions; q++)
        {
            var range = a.Asked[2 * q] == (int)CurveQuestionKind.Range;
            fold.room.Put(2 * q, range ? T.Of(double.PositiveInfinity) : T.Of(0.0));
            fold.room.Put((2 * q) + 1, range ? T.Of(double.NegativeInfinity) : T.Of(0.0));
        }

        for (var j = ValueSlot; j < OwnSlot; j++)
        {
            fold.room.Put(j, T.Of(0.0));
        }

        TSignals.Read(in a, fold.room, run, 0, 0, OwnSlot);
        return fold;
    }

    /// <summary>Positions and rates as they are before the step.</summary>
    public void Before(int k, AxleState<T> front, AxleState<T> rear, BodyBlock<T> body)
    {
        TSignals.Before(room, Values(k), 0, OwnSlot, front, rear, body);
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
        BodyPast<T> bodyNow)
    {
        if (k >= until)
        {
            until = a.Turns[2 * turn];
            within = a.Turns[(2 * turn) + 1];
            turn++;
        }

        var simply = within == DeviceTurns.Closely ? 0 : within;
        var close = TSignals.After(
            room, (Values(k), Values(k - 1), Values(k - 2), Values(k - 3)), simply, 0, OwnSlot, front, rear, frontNow, rearNow, bodyNow);
        close = within == DeviceTurns.Closely ? DeviceTurns.Closely : close;
        if (close != 0)
        {
            Fold(in a, k, close);
        }
    }

    /// <summary>Ends the record and writes the answers.</summary>
    public void End(in DeviceArguments<T> a, AxleState<T> front, AxleState<T> rear, in BodyBlock<T> body)
    {
        Fold(in a, samples, DeviceTurns.Closely);
        for (var j = 0; j < 2 * TSignals.Questions; j++)
        {
            a.Answers[run + ((long)j * a.Runs)] = room.Get(j);
        }

        // A motion that is once not finite stays so, and zero times it is not zero.
        var all = body.Z + body.Theta + body.Phi + front.UL + front.UR + rear.UL + rear.UR;
        a.Answers[run + (2L * TSignals.Questions * a.Runs)] = farthest;
        a.Answers[run + (((2L * TSignals.Questions) + 1L) * a.Runs)] = all * T.Of(0.0);
    }

    // The piece that begins two samples before the newest, for which all that it is made of is there.
    private void Fold(in DeviceArguments<T> a, int newest, int close)
    {
        var j = newest - 2;
        if (j < 0)
        {
            return;
        }

        for (var q = 0; q < TSignals.Questions; q++)
        {
            var place = 2 * ((table * TSignals.Questions) + q);
            var (from, to) = (a.Places[place], a.Places[place + 1]);
            if ((close & 1) != 0 && j >= from && j <= to)
            {
                Fold(in a, newest, q, place);
            }

            close >>= 1;
        }
    }

    private void Fold(in DeviceArguments<T> a, int newest, int q, int place)
    {
        var j = newest - 2;
        var (from, to) = (a.Places[place], a.Places[place + 1]);
        var signal = DeviceRoom<T>.About * a.Asked[(2 * q) + 1];
        var (value, next) = (Values(j).Get(signal), Values(j + 1).Get(signal));
        var two = T.Of(2.0);
        var (last, beyond) = (Values(j - 1).Get(signal), Values(j + 2).Get(signal));
        var before = last - (two * value) + next;
        var after = value - (two * next) + beyond;
        // At the record's ends there is one second difference only.
        before = j == 0 ? after : before;
        after = newest == samples ? before : after;
        var (pastFrom, pastTo) = (a.Past[place], a.Past[place + 1]);
        if (a.Asked[2 * q] == (int)CurveQuestionKind.Squares)
        {
            Squares(2 * q, j, from, to, pastFrom, pastTo, LanePiece<T>.Of(value, next, before, after));
        }
        else if (a.Asked[2 * q] == (int)CurveQuestionKind.Nothing)
        {
            // The record's last sample begins no piece.
            var many = (T.AnyAbove(value, T.Of(0.0)) ? 0.0 : 1.0) + (j != samples - 2 || T.AnyAbove(next, T.Of(0.0)) ? 0.0 : 1.0);
            room.Put(2 * q, room.Get(2 * q) + T.Of(many));
        }
        else
        {
            var beforeMeets = j > 0 && !T.AnyAbove(T.Of(0.0), (value - last) * (value - next));
            var afterMeets = newest < samples && !T.AnyAbove(T.Of(0.0), (next - value) * (next - beyond));
            Range(2 * q, j, from, to, pastFrom, pastTo, value, next, before, after, beforeMeets || afterMeets);
        }
    }

    private void Squares(int sum, int j, int from, int to, T pastFrom, T pastTo, LanePiece<T> piece)
    {
        var own = room.Get(sum);
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

        room.Put(sum, own);
    }

    // ∫x² from 0 to s.
    private static T Part(LanePiece<T> p, T s) => s * new LanePiece<T>(p.C0, p.C1 * s, p.C2 * s * s, p.C3 * s * s * s).SquareIntegral();

    private void Range(
        int sum, int j, int from, int to, T pastFrom, T pastTo, T value, T next, T before, T after, bool turns)
    {
        var (least, most) = (room.Get(sum), room.Get(sum + 1));
        var beyond = T.Of(LanePiece<T>.Beyond);
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

        room.Put(sum, least);
        room.Put(sum + 1, most);
    }

    private static T At(LanePiece<T> p, T s) => p.C0 + (s * (p.C1 + (s * (p.C2 + (s * p.C3)))));

    // Where the first signal's value at a sample stands, of its last four in turn; those of the other signals follow, four on each.
    private readonly DeviceRoom<T> Values(int sample) => room.From(ValueSlot + (sample & (DeviceRoom<T>.About - 1)));
}
