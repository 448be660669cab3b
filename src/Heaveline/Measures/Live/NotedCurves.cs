using Heaveline.Models;
using Heaveline.Recording;
using Heaveline.Roads;

namespace Heaveline.Measures;

/// <summary>
/// The curves of a pass of which speed and stand are given later: what is asked of them and what is made of the answers is noted in the record that
/// the thread writes.
/// </summary>
/// <param name="model">The car; its own numbers may be moved.</param>
/// <param name="road">The road.</param>
/// <param name="sampleStep">Time from one sample to the next, s.</param>
/// <param name="answers">Where the answers stand among what is given.</param>
internal sealed class NotedCurves(RideModel model, Road road, double sampleStep, int answers)
    : MeasuredCurves(new(model, road, double.NaN), double.NaN, sampleStep, 0)
{
    private readonly List<PassSignal> signals = [];
    private readonly List<(LiveQuestion Question, int From, int To)> asked = [];

    /// <summary>What is read off every sample for them.</summary>
    public IReadOnlyList<PassSignal> Signals => signals;

    /// <summary>The questions.</summary>
    public IReadOnlyList<LiveQuestion> Questions => [.. asked.Select(one => one.Question)];

    /// <summary>Lines of their stretches: where each begins and ends.</summary>
    public IReadOnlyList<int> Windows => [.. asked.SelectMany(one => new[] { one.From, one.To })];

    public override NotedNumber Speed => Given(LiveGiven.Speed);

    public override NotedNumber StandingPitch => Given(LiveGiven.Position + 1);

    public override NotedNumber First => Given(LiveGiven.Start);

    public override NotedNumber Last => First + (LastPlace * SampleStep);

    protected override NotedNumber LastPlace => Given(LiveGiven.Last);

    // A two-wheeler's corners are halves of its wheels.
    public override NotedNumber StandingLoad(int corner) => (Model.Rolls ? 1.0 : 2.0) * Given(LiveGiven.Trim + 8 + corner);

    public override NotedNumber BumpTouch(int corner) => OfCar(Model.BumpTouch[corner]);

    public override NotedNumber ReboundTouch(int corner) => OfCar(Model.ReboundTouch[corner]);

    public override NotedNumber? LastAbove(PassSignal of, double share) => throw Unheard("the last time above a limit");

    public override NotedNumber Lobes(PassSignal of, double share, NotedNumber after) => throw Unheard("swings");

    public override NotedNumber Farthest(PassSignal of, int apart) => Ask(CurveQuestionKind.Farthest, of, 0.0, LastPlace, apart).First;

    public override NotedNumber Nothing(PassSignal of) => Ask(CurveQuestionKind.Nothing, of, 0.0, LastPlace).First;

    protected override NotedNumber Squares(PassSignal of, NotedNumber from, NotedNumber to) => Ask(CurveQuestionKind.Squares, of, from, to).First;

    protected override (NotedNumber Least, NotedNumber Most) Range(PassSignal of, NotedNumber from, NotedNumber to) =>
        Ask(CurveQuestionKind.Range, of, from, to);

    // A question that has been asked has its answer.
    private (NotedNumber First, NotedNumber Second) Ask(CurveQuestionKind kind, PassSignal of, NotedNumber from, NotedNumber to, int apart = 0)
    {
        if (of.AboveRoad || of.Less != 0.0)
        {
            throw Unheard("a signal that is not read off the car alone");
        }

        var signal = signals.IndexOf(of);
        if (signal < 0)
        {
            signal = signals.Count;
            signals.Add(of);
        }

        var question = (new LiveQuestion((int)kind, signal, apart), from.Lane.Line, to.Lane.Line);
        var at = asked.IndexOf(question);
        if (at < 0)
        {
            at = asked.Count;
            asked.Add(question);
        }

        return (Given(answers + (2 * at)), Given(answers + (2 * at) + 1));
    }

    private static NotedNumber OfCar(double value) => NotedNumber.Of(RecordLane.Of(value));

    private static NotedNumber Given(int place) => NotedNumber.Of(new(Recording.Record.Writing.Source(Operation.Given, place)));

    private static NotSupportedException Unheard(string what) => new($"What asks for {what} is not recorded.");
}
