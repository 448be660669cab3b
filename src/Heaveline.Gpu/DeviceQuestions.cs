using Heaveline.Measures;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Gpu;

/// <summary>
/// What is asked of the runs of a launch: the same kinds of questions to signals that are read off the same channels, whatever their shares.
/// </summary>
internal sealed class DeviceQuestions
{
    private readonly List<PassSignal> signals = [];
    private readonly List<int> firstOf = [];
    private readonly int[] signalOf;

    private DeviceQuestions(CurveQuestion[] questions)
    {
        Questions = questions;
        signalOf = new int[questions.Length];
        // Ranges last: they can be read off signals that count from elsewhere, but not the other way round.
        foreach (var q in Enumerable.Range(0, questions.Length).OrderBy(q => questions[q].Kind == CurveQuestionKind.Range ? 1 : 0))
        {
            var asked = questions[q];
            var s = signals.FindIndex(signal => IsOf(signal, asked));
            if (s < 0)
            {
                s = signals.Count;
                signals.Add(asked.Signal);
                firstOf.Add(q);
            }

            signalOf[q] = s;
        }
    }

    /// <summary>The questions of one of the runs.</summary>
    public CurveQuestion[] Questions { get; }

    /// <summary>Number of signals.</summary>
    public int Signals => signals.Count;

    /// <summary>For the questions of one run; null, with the reason, where a device cannot answer them.</summary>
    public static DeviceQuestions? Of(CurveQuestion[] questions, out string why)
    {
        foreach (var question in questions)
        {
            if (question.Kind is not (CurveQuestionKind.Squares or CurveQuestionKind.Range or CurveQuestionKind.Nothing))
            {
                why = "a measure asks for more of a curve than its squares, its range and how long it is nothing";
                return null;
            }

            if (question.Signal.AboveRoad)
            {
                why = "a measure asks for a height above the road";
                return null;
            }

            if (question.Signal.Reading.Wheels.ToArray().Any(part => IsOfLine(part.Channel)))
            {
                why = "a measure asks for the flow of a line";
                return null;
            }
        }

        why = "";
        return new(questions);
    }

    /// <summary>Whether another run's questions can be answered beside these.</summary>
    public bool IsLike(CurveQuestion[] other)
    {
        if (other.Length != Questions.Length)
        {
            return false;
        }

        for (var q = 0; q < other.Length; q++)
        {
            var same = other[q].Kind == Questions[q].Kind && other[q].Signal.IsLike(Questions[q].Signal);
            // Two signals that are one here must be one there.
            if (!same || !IsOf(FirstOf(other, q), other[q]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>How much further on a run's question counts than the signal of which it is answered.</summary>
    public double Further(CurveQuestion[] own, int question) => First(own[question].Signal) - First(FirstOf(own, question));

    /// <summary>Of each question its kind and its signal.</summary>
    public int[] Asked() => [.. Questions.Index().SelectMany(q => (int[])[(int)q.Item.Kind, signalOf[q.Index]])];

    /// <summary>Parts of all signals.</summary>
    public int Parts => signals.Sum(signal => Shares(signal).Length);

    /// <summary>Which signal a question is about.</summary>
    public int SignalOf(int question) => signalOf[question];

    /// <summary>Channels of a signal's parts, in order.</summary>
    public int[] Channels(int signal) => [.. Shares(signals[signal]).Select(part => part.Channel)];

    /// <summary>Writes a run's own shares, and what its signals count from.</summary>
    public void Write<T>(CurveQuestion[] own, int run, int runs, Span<T> shares, Span<T> bases)
        where T : unmanaged, ILane<T>
    {
        var at = run;
        for (var s = 0; s < Signals; s++)
        {
            var signal = own[firstOf[s]].Signal;
            bases[run + (s * runs)] = T.Of(First(signal));
            foreach (var (_, share) in Shares(signal))
            {
                shares[at] = T.Of(share);
                at += runs;
            }
        }
    }

    /// <summary>Writes where a run's stretches begin and end.</summary>
    public static void Write<T>(CurveQuestion[] own, Span<int> places, Span<T> past)
        where T : unmanaged, ILane<T>
    {
        for (var q = 0; q < own.Length; q++)
        {
            var (from, to) = (own[q].From, own[q].To);
            // Of an empty stretch nothing is asked.
            var (first, last) = to > from ? ((int)from, (int)to) : (int.MaxValue, int.MinValue);
            (places[2 * q], places[(2 * q) + 1]) = (first, last);
            (past[2 * q], past[(2 * q) + 1]) = (T.Of(from - Math.Floor(from)), T.Of(to - Math.Floor(to)));
        }
    }

    // A range moves with what its signal counts from: signals that differ in nothing else are one.
    private static bool IsOf(PassSignal signal, CurveQuestion question) =>
        signal.Equals(question.Signal)
        || (question.Kind == CurveQuestionKind.Range && signal.AboveRoad == question.Signal.AboveRoad
            && signal.Reading.From(0.0).Equals(question.Signal.Reading.From(0.0)));

    private PassSignal FirstOf(CurveQuestion[] own, int question) => own[firstOf[signalOf[question]]].Signal;

    private static double First(PassSignal signal) => signal.Reading.First - signal.Less;

    private static (int Channel, double Share)[] Shares(PassSignal signal) => [.. signal.Reading.Wheels, .. signal.Reading.Body];

    private static bool IsOfLine(int channel) =>
        channel % Channel.Accelerations is Channel.Flow or Channel.Flow + 1 && channel < Channel.Tyre
        || channel is Channel.Rates + Channel.Flow or Channel.Rates + Channel.Flow + 1;
}
