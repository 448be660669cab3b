namespace Heaveline.Passes;

/// <summary>
/// How a signal is read off recorded samples: shares of their channels, summed in the order in which its formula names them, those of the wheels and
/// lines from a first value on, those of the body by themselves, then both together. Readings of the same shares are equal.
/// </summary>
internal sealed class SampleReading : IEquatable<SampleReading>
{
    // −0 + x is x bit for bit, whatever x is; +0 would make +0 of −0.
    internal const double Nothing = -0.0;

    private readonly double first;
    private readonly (int Channel, double Share)[] wheels;
    private readonly (int Channel, double Share)[] body;
    private readonly int hash;

    private SampleReading(double first, (int Channel, double Share)[] wheels, (int Channel, double Share)[] body)
    {
        (this.first, this.wheels, this.body) = (first, wheels, body);
        var all = default(HashCode);
        all.Add(first);
        foreach (var part in (ReadOnlySpan<(int, double)>)[.. wheels, .. body])
        {
            all.Add(part);
        }

        hash = all.ToHashCode();
        Reads = 1 + wheels.Concat(body).Select(part => part.Channel).DefaultIfEmpty(-1).Max();
    }

    /// <summary>How many numbers of a sample it needs, from the first on.</summary>
    public int Reads { get; }

    /// <summary>A reading of some channels.</summary>
    public static SampleReading Of(params ReadOnlySpan<(int Channel, double Share)> parts)
    {
        var (wheels, body) = (new List<(int, double)>(), new List<(int, double)>());
        foreach (var part in parts)
        {
            (IsOfBody(part.Channel) ? body : wheels).Add(part);
        }

        return new(Nothing, [.. wheels], [.. body]);
    }

    /// <summary>What the wheels and lines are counted from.</summary>
    public double First => first;

    /// <summary>Channels of the wheels and lines with their shares, in order.</summary>
    public ReadOnlySpan<(int Channel, double Share)> Wheels => wheels;

    /// <summary>Channels of the body with their shares, in order.</summary>
    public ReadOnlySpan<(int Channel, double Share)> Body => body;

    /// <summary>Whether another reading is of the same channels in the same order, whatever its shares.</summary>
    public bool IsLike(SampleReading other) =>
        ReferenceEquals(this, other) || (SameChannels(wheels, other.wheels) && SameChannels(body, other.body));

    /// <summary>The same reading from another first value on.</summary>
    public SampleReading From(double value) => new(value, wheels, body);

    /// <summary>The reading of one sample.</summary>
    public double Of(ReadOnlySpan<double> sample)
    {
        var wheel = first;
        foreach (var (channel, share) in wheels)
        {
            wheel += share * sample[channel];
        }

        var rest = Nothing;
        foreach (var (channel, share) in body)
        {
            rest += share * sample[channel];
        }

        return wheel + rest;
    }

    /// <summary>The reading of many samples.</summary>
    /// <param name="samples">The record, one sample after the other.</param>
    /// <param name="channels">Length of a sample.</param>
    /// <param name="values">Receives a value a sample, as many as it has room for.</param>
    public void Read(ReadOnlySpan<double> samples, int channels, Span<double> values)
    {
        for (var k = 0; k < values.Length; k++)
        {
            values[k] = Of(samples.Slice(k * channels, channels));
        }
    }

    public bool Equals(SampleReading? other) =>
        other is not null
        && (ReferenceEquals(this, other)
            || (first.Equals(other.first) && wheels.AsSpan().SequenceEqual(other.wheels) && body.AsSpan().SequenceEqual(other.body)));

    public override bool Equals(object? obj) => Equals(obj as SampleReading);

    public override int GetHashCode() => hash;

    private static bool SameChannels((int Channel, double Share)[] a, (int Channel, double Share)[] b)
    {
        var same = a.Length == b.Length;
        for (var i = 0; same && i < a.Length; i++)
        {
            same = a[i].Channel == b[i].Channel;
        }

        return same;
    }

    // Heave, pitch and roll, their rates and accelerations.
    private static bool IsOfBody(int channel) =>
        channel is < Channel.Wheel or (>= Channel.Accelerations and < Channel.Accelerations + Channel.Wheel)
            or (>= Channel.Rates and < Channel.Rates + Channel.Wheel);
}
