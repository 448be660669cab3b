using Heaveline.Passes;
using Heaveline.Recording;

namespace Heaveline.Measures;

/// <summary>
/// The curves of a pass that is still to run. Numbers are asked for once before, to learn their questions, and once after, when each question has its
/// answer: a definition asks the same questions both times.
/// </summary>
/// <param name="request">Car, road and speed.</param>
/// <param name="clock">The clock of the pass.</param>
internal sealed class FlightCurves(PassRequest request, PassTiming clock)
    : MeasuredCurves(request, clock.Start, clock.SampleStep, clock.Samples)
{
    private readonly List<CurveQuestion> questions = [];
    private (double First, double Second)[]? answers;
    private int asked;

    /// <summary>The clock of the pass.</summary>
    public PassTiming Clock => clock;

    /// <summary>What has been asked, in order.</summary>
    public IReadOnlyList<CurveQuestion> Questions => questions;

    /// <summary>Gives the answers to all that has been asked, in order: from now on every question gets its own.</summary>
    public void Answer((double First, double Second)[] all)
    {
        answers = all;
        asked = 0;
    }

    public override NotedNumber? LastAbove(PassSignal of, double share) =>
        Ask(new(CurveQuestionKind.LastAbove, of, share)).First is var time && double.IsNaN(time) ? null : time;

    public override NotedNumber Lobes(PassSignal of, double share, NotedNumber after) =>
        Ask(new(CurveQuestionKind.Lobes, of, share, after)).First;

    public override NotedNumber Farthest(PassSignal of, int apart) => Ask(new(CurveQuestionKind.Farthest, of, apart)).First;

    public override NotedNumber Nothing(PassSignal of) => Ask(new(CurveQuestionKind.Nothing, of)).First;

    protected override NotedNumber Squares(PassSignal of, NotedNumber from, NotedNumber to) =>
        Ask(new(CurveQuestionKind.Squares, of, from, to)).First;

    protected override (NotedNumber Least, NotedNumber Most) Range(PassSignal of, NotedNumber from, NotedNumber to)
    {
        var (least, most) = Ask(new(CurveQuestionKind.Range, of, from, to));
        return (least, most);
    }

    private (double First, double Second) Ask(CurveQuestion question)
    {
        if (answers is null)
        {
            questions.Add(question);
            return (0.0, 0.0);
        }

        return questions[asked] == question
            ? answers[asked++]
            : throw new InvalidOperationException($"A number asked for {question} after the run that it had not asked for before it.");
    }
}
