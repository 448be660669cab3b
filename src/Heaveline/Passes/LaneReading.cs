using Heaveline.Numerics;

namespace Heaveline.Passes;

/// <summary>Readings of the same channels by cars side by side, each with its own shares: bit for bit what each reads alone.</summary>
internal sealed class LaneReading<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    private readonly TLane first;
    private readonly (int Channel, TLane Share)[] wheels;
    private readonly (int Channel, TLane Share)[] body;
    private readonly bool plain;

    /// <param name="each">One reading a lane, all like each other; lanes past the last repeat it.</param>
    public LaneReading(IReadOnlyList<SampleReading> each)
    {
        Span<double> values = stackalloc double[TLane.Count];
        for (var lane = 0; lane < values.Length; lane++)
        {
            values[lane] = Of(each, lane).First;
        }

        first = TLane.From(values);
        wheels = new (int, TLane)[each[0].Wheels.Length];
        body = new (int, TLane)[each[0].Body.Length];
        for (var part = 0; part < wheels.Length; part++)
        {
            for (var lane = 0; lane < values.Length; lane++)
            {
                values[lane] = Of(each, lane).Wheels[part].Share;
            }

            wheels[part] = (each[0].Wheels[part].Channel, TLane.From(values));
        }

        for (var part = 0; part < body.Length; part++)
        {
            for (var lane = 0; lane < values.Length; lane++)
            {
                values[lane] = Of(each, lane).Body[part].Share;
            }

            body[part] = (each[0].Body[part].Channel, TLane.From(values));
        }

        plain = IsPlain(each);
    }

    /// <summary>The reading of one sample.</summary>
    public TLane Of(ReadOnlySpan<TLane> sample)
    {
        var wheel = first;
        foreach (ref readonly var part in wheels.AsSpan())
        {
            wheel += part.Share * sample[part.Channel];
        }

        var rest = TLane.Of(SampleReading.Nothing);
        foreach (ref readonly var part in body.AsSpan())
        {
            rest += part.Share * sample[part.Channel];
        }

        return wheel + rest;
    }

    /// <summary>The reading of many samples.</summary>
    /// <param name="samples">One sample after the other.</param>
    /// <param name="channels">Length of a sample.</param>
    /// <param name="values">Receives a value a sample, as many as it has room for.</param>
    public void Read(ReadOnlySpan<TLane> samples, int channels, Span<TLane> values)
    {
        if (plain)
        {
            // Once and nothing else: the channel as it is.
            for (int k = 0, at = body[0].Channel; k < values.Length; k++, at += channels)
            {
                values[k] = samples[at];
            }

            return;
        }

        for (var k = 0; k < values.Length; k++)
        {
            values[k] = Of(samples.Slice(k * channels, channels));
        }
    }

    private static SampleReading Of(IReadOnlyList<SampleReading> each, int lane) => each[Math.Min(lane, each.Count - 1)];

    private static bool IsPlain(IReadOnlyList<SampleReading> each)
    {
        foreach (var reading in each)
        {
            if (!(reading.Wheels.IsEmpty && reading.Body is [(_, 1.0)] && reading.First.Equals(SampleReading.Nothing)
                && double.IsNegative(reading.First)))
            {
                return false;
            }
        }

        return true;
    }
}
