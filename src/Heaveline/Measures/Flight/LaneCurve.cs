using System.Buffers;
using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Measures;

/// <summary>
/// The latest values of one signal of passes side by side. A sample is ready when its two neighbours on either side are there, of which the curve
/// about it is made.
/// </summary>
internal sealed class LaneCurve<TLane> : IDisposable
    where TLane : unmanaged, ILane<TLane>
{
    /// <summary>Neighbours on one side that the curve about a sample is made of.</summary>
    public const int Beside = 2;

    private readonly CurveRecord[] records;
    private readonly PassSignal?[] signals;
    private readonly LaneReading<TLane> reading;
    private readonly TLane less;
    private readonly bool isLess;
    private readonly bool aboveRoad;
    private readonly TLane[] values;
    private int newest;

    /// <param name="signals">One a lane, alike; null where a lane asks for none.</param>
    /// <param name="records">The record of each lane.</param>
    /// <param name="most">Most samples that are read at a time.</param>
    public LaneCurve(PassSignal?[] signals, CurveRecord[] records, int most)
    {
        (this.records, this.signals) = (records, signals);
        var any = Array.Find(signals, signal => signal is not null)!;
        reading = new(Array.ConvertAll(signals, signal => (signal ?? any).Reading));
        Span<double> each = stackalloc double[TLane.Count];
        for (var lane = 0; lane < each.Length; lane++)
        {
            each[lane] = lane < signals.Length ? (signals[lane] ?? any).Less : 0.0;
        }

        (less, isLess, aboveRoad) = (TLane.From(each), each.ContainsAnyExcept(0.0), any.AboveRoad);
        values = ArrayPool<TLane>.Shared.Rent(most + (2 * Beside));
    }

    /// <summary>Number of the sample that <see cref="Values"/> begin with, counted from the first of all lanes.</summary>
    public int Origin { get; private set; }

    /// <summary>The values about the samples that are ready.</summary>
    public ReadOnlySpan<TLane> Values => values.AsSpan(0, newest);

    /// <summary>Reads the next samples.</summary>
    /// <param name="samples">One after the other.</param>
    /// <param name="channels">Length of a sample.</param>
    /// <param name="at">Number of the first.</param>
    /// <param name="outputs">How many they are.</param>
    public void Read(ReadOnlySpan<TLane> samples, int channels, int at, int outputs)
    {
        var fresh = Next(at, outputs);
        reading.Read(samples, channels, fresh);
        if (isLess)
        {
            foreach (ref var value in fresh)
            {
                value -= less;
            }
        }

        for (var lane = 0; aboveRoad && lane < signals.Length; lane++)
        {
            if (signals[lane] is not null)
            {
                TakeOffRoad(fresh, at, lane);
            }
        }
    }

    /// <summary>Ends the record: its last samples are ready too, with nothing beyond them that would be looked at.</summary>
    /// <param name="at">Number of the sample after the last.</param>
    public void End(int at) => Next(at, Beside).Clear();

    /// <summary>One lane's own values about a sample that is ready, as far as they are recorded.</summary>
    /// <param name="lane">The lane.</param>
    /// <param name="sample">The sample, counted in the lane's own record.</param>
    /// <param name="about">Has room for a sample and its neighbours.</param>
    /// <returns>The first sample that is among them, and how many there are.</returns>
    public (int First, int Count) About(int lane, int sample, Span<double> about)
    {
        Span<double> lanes = stackalloc double[TLane.Count];
        var (first, last) = (Math.Max(0, sample - Beside), Math.Min(sample + Beside, records[lane].Count - 1));
        for (var k = first; k <= last; k++)
        {
            values[k + records[lane].First - Origin].To(lanes);
            about[k - first] = lanes[lane];
        }

        return (first, last - first + 1);
    }

    public void Dispose() => ArrayPool<TLane>.Shared.Return(values);

    private Span<TLane> Next(int at, int outputs)
    {
        values.AsSpan(Math.Max(0, newest - (2 * Beside)), Math.Min(newest, 2 * Beside)).CopyTo(values);
        newest = outputs + (2 * Beside);
        Origin = at - (2 * Beside);
        return values.AsSpan(2 * Beside, outputs);
    }

    // As PassSignal says: the mean of the four wheels, each by itself.
    private void TakeOffRoad(Span<TLane> fresh, int at, int lane)
    {
        Span<double> lanes = stackalloc double[TLane.Count];
        var record = records[lane];
        for (var k = Math.Max(at, record.First); k < Math.Min(at + fresh.Length, record.First + record.Count); k++)
        {
            fresh[k - at].To(lanes);
            lanes[lane] = record.AboveRoad(lanes[lane], k - record.First);
            fresh[k - at] = TLane.From(lanes);
        }
    }
}
