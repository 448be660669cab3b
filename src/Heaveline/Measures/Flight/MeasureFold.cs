using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>The questions of passes side by side to their curves, answered sample by sample; questions that are alike share a fold.</summary>
internal sealed class MeasureFold<TLane> : ISampleFold<TLane>, IDisposable
    where TLane : unmanaged, ILane<TLane>
{
    private readonly FlightCurves[] curves;
    private readonly RangeWatch<TLane> watch;
    private readonly int channels;
    private readonly List<LaneFold<TLane>> folds = [];
    private readonly List<LaneCurve<TLane>> signals = [];
    private readonly List<(int First, int Last)> reach = [];
    private readonly int[][] answers;
    private int at;

    /// <param name="group">The passes.</param>
    /// <param name="timing">The clock that covers all of theirs.</param>
    /// <param name="channels">How much of a sample is recorded.</param>
    /// <param name="curves">What is asked of each.</param>
    public MeasureFold(PassGroup group, PassTiming timing, int channels, FlightCurves[] curves)
    {
        (this.curves, this.channels) = (curves, channels);
        watch = new(group, timing, channels);
        CurveRecord[] records = [.. curves.Select(c => new CurveRecord(c.Request, c.Clock, c.Clock.First - timing.First))];
        var (asked, of) = (new List<CurveQuestion?[]>(), new List<PassSignal?[]>());
        answers = new int[curves.Length][];
        for (var lane = 0; lane < curves.Length; lane++)
        {
            answers[lane] = new int[curves[lane].Questions.Count];
            for (var j = 0; j < answers[lane].Length; j++)
            {
                var question = curves[lane].Questions[j];
                answers[lane][j] = Place(asked, lane, question, (a, b) => a.IsLike(b));
                Place(of, lane, question.Signal, (a, b) => a.IsLike(b));
            }
        }

        foreach (var signal in of)
        {
            signals.Add(new(signal, records, PassFlight<TLane>.Outputs));
            reach.Add((int.MaxValue, int.MinValue));
        }

        foreach (var questions in asked)
        {
            var (lane, question) = questions.Index().First(q => q.Item is not null);
            var signal = of.FindIndex(s => s[lane] == question!.Signal);
            var fold = Of(signals[signal], questions, records);
            folds.Add(fold);
            reach[signal] = (Math.Min(reach[signal].First, fold.Reach.First), Math.Max(reach[signal].Last, fold.Reach.Last));
        }
    }

    /// <inheritdoc/>
    public bool Fold(ReadOnlySpan<TLane> samples, int outputs)
    {
        for (var i = 0; i < signals.Count; i++)
        {
            // From the stretch of samples on in which what is needed about the first one begins.
            if (at + outputs > reach[i].First - (2 * LaneCurve<TLane>.Beside) && at <= reach[i].Last + LaneCurve<TLane>.Beside)
            {
                signals[i].Read(samples, channels, at, outputs);
            }
        }

        Ready(at - LaneCurve<TLane>.Beside, at + outputs - LaneCurve<TLane>.Beside);
        at += outputs;
        return watch.Look(samples, outputs);
    }

    /// <summary>Ends the record, gives every pass its answers and says how each has come through.</summary>
    public PassOutcome[] End()
    {
        foreach (var signal in signals)
        {
            signal.End(at);
        }

        Ready(at - LaneCurve<TLane>.Beside, at);
        for (var lane = 0; lane < curves.Length; lane++)
        {
            curves[lane].Answer(Array.ConvertAll(answers[lane], fold => folds[fold].Answer(lane)));
        }

        return watch.Outcomes;
    }

    /// <summary>Hands back what the signals have borrowed.</summary>
    public void Dispose()
    {
        foreach (var signal in signals)
        {
            signal.Dispose();
        }

        signals.Clear();
    }

    private static LaneFold<TLane> Of(LaneCurve<TLane> signal, CurveQuestion?[] questions, CurveRecord[] records) =>
        Array.Find(questions, q => q is not null)!.Kind switch
        {
            CurveQuestionKind.Squares => new SquareFold<TLane>(signal, questions, records),
            CurveQuestionKind.Range => new RangeFold<TLane>(signal, questions, records),
            CurveQuestionKind.Farthest => new FarthestFold<TLane>(signal, questions, records),
            CurveQuestionKind.Nothing => new NothingFold<TLane>(signal, questions, records),
            _ => new SwingFold<TLane>(signal, questions, records),
        };

    // The row that holds the same of this lane already, else the first like it that has room for it, else a new one.
    private int Place<T>(List<T?[]> rows, int lane, T of, Func<T, T, bool> alike)
        where T : class
    {
        var place = rows.FindIndex(row => of.Equals(row[lane]));
        if (place < 0)
        {
            place = rows.FindIndex(row => row[lane] is null && alike(Array.Find(row, other => other is not null)!, of));
        }

        if (place < 0)
        {
            place = rows.Count;
            rows.Add(new T?[curves.Length]);
        }

        rows[place][lane] = of;
        return place;
    }

    private void Ready(int from, int to)
    {
        foreach (var fold in folds)
        {
            var (first, last) = fold.Reach;
            if (from <= last && to > first)
            {
                fold.Fold(Math.Max(0, from), to);
            }
        }
    }
}
