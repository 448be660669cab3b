using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>Measures of a group of passes, gathered while they run: of the samples nothing is kept.</summary>
internal sealed class MeasureFlight : ISampleFolds, IDisposable
{
    private readonly PassGroup group;
    private readonly CurveNumber[] numbers;
    private readonly FlightCurves[] curves;
    private Func<PassOutcome[]>? end;
    private IDisposable? fold;

    private MeasureFlight(PassGroup group, CurveNumber[] numbers)
    {
        (this.group, this.numbers) = (group, numbers);
        curves = new FlightCurves[group.Requests.Length];
        // What a number comes to before the run is nothing; what it asks is learnt.
        var row = new double[numbers.Length];
        var reads = Channel.Motion;
        for (var k = 0; k < curves.Length; k++)
        {
            curves[k] = new FlightCurves(group.Requests[k], group.Clocks[k]);
            Numbers(k, row);
            foreach (var question in curves[k].Questions)
            {
                reads = Math.Max(reads, question.Signal.Reading.Reads);
            }
        }

        Channels = Length(reads);
    }

    /// <inheritdoc/>
    public int Channels { get; }

    /// <summary>The numbers of every pass of a group, in the group's order.</summary>
    /// <param name="group">The passes.</param>
    /// <param name="width">How many lanes stand side by side, at least as many as there are passes.</param>
    /// <param name="numbers">Their definitions.</param>
    /// <param name="give">Is given the place of each pass in its group, how it ended and its numbers: none where it left the model's range.</param>
    /// <param name="memory">Of the road that the group before has met; null for none.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static void Of(
        PassGroup group,
        int width,
        CurveNumber[] numbers,
        Action<int, PassOutcome, ReadOnlySpan<double>> give,
        RoadMemory? memory,
        CancellationToken cancellation)
    {
        using var flight = new MeasureFlight(group, numbers);
        group.Fold(width, flight, null, memory, cancellation);
        flight.Give(give);
    }

    /// <summary>The same of two groups, beside each other where they may: it takes less than one after the other, for the same bits.</summary>
    /// <param name="groups">Both.</param>
    /// <param name="width">How many lanes stand side by side, at least as many as there are passes in either.</param>
    /// <param name="numbers">Their definitions.</param>
    /// <param name="give">Of each: is given the place of each pass in its group, how it ended and its numbers.</param>
    /// <param name="memory">Of the road that the group before has met; null for none.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static void Of(
        (PassGroup First, PassGroup Second) groups,
        int width,
        CurveNumber[] numbers,
        (Action<int, PassOutcome, ReadOnlySpan<double>> First, Action<int, PassOutcome, ReadOnlySpan<double>> Second) give,
        RoadMemory? memory,
        CancellationToken cancellation)
    {
        using var first = new MeasureFlight(groups.First, numbers);
        using var second = new MeasureFlight(groups.Second, numbers);
        groups.First.Fold(width, first, (groups.Second, second), memory, cancellation);
        first.Give(give.First);
        second.Give(give.Second);
    }

    private void Give(Action<int, PassOutcome, ReadOnlySpan<double>> give)
    {
        var outcomes = end!();
        var row = new double[numbers.Length];
        for (var k = 0; k < outcomes.Length; k++)
        {
            if (outcomes[k] == PassOutcome.Completed)
            {
                Numbers(k, row);
                give(k, outcomes[k], row);
            }
            else
            {
                give(k, outcomes[k], []);
            }
        }
    }

    /// <inheritdoc/>
    public ISampleFold<TLane> Of<TLane>(PassTiming timing)
        where TLane : unmanaged, ILane<TLane>
    {
        var made = new MeasureFold<TLane>(group, timing, Channels, curves);
        (fold, end) = (made, made.End);
        return made;
    }

    /// <summary>Hands back what the fold has borrowed, however the run has ended.</summary>
    public void Dispose() => fold?.Dispose();

    private static int Length(int reads) => reads switch
    {
        <= Channel.Motion => Channel.Motion,
        <= Channel.BodyAccelerations => Channel.BodyAccelerations,
        <= Channel.TyreLoads => Channel.TyreLoads,
        _ => Channel.Count,
    };

    private void Numbers(int k, Span<double> row)
    {
        for (var j = 0; j < numbers.Length; j++)
        {
            row[j] = numbers[j](curves[k]);
        }
    }
}
