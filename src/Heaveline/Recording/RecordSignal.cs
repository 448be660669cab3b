using Heaveline.Passes;

namespace Heaveline.Recording;

/// <summary>Something that is read off every sample of a record.</summary>
/// <param name="Reading">How.</param>
/// <param name="Standing">
/// Which number of a trim it begins with, counted from <see cref="LiveGiven.Trim"/>, and its share; null: with the reading's own first value.
/// </param>
internal sealed record RecordSignal(SampleReading Reading, (int Place, double Share)? Standing)
{
    /// <summary>Meets the car's numbers in it, in the order in which every record meets them.</summary>
    public RecordLane[] Shares() => [.. Parts().Select(part => RecordLane.Of(part.Share))];

    /// <summary>It, of a sample.</summary>
    /// <param name="shares">Its <see cref="Shares"/>.</param>
    /// <param name="sample">The sample, as <see cref="Channel"/> says.</param>
    public RecordLane Of(RecordLane[] shares, ReadOnlySpan<RecordLane> sample)
    {
        var record = Record.Writing;
        var wheel = Standing is var (place, share)
            ? new RecordLane(record.Constant(share, share)) * new RecordLane(record.Source(Operation.Given, LiveGiven.Trim + place))
            : new RecordLane(record.Constant(Reading.First, Reading.First));
        var rest = new RecordLane(Record.Zero);
        for (var i = 0; i < shares.Length; i++)
        {
            var (isOfWheel, channel) = (i < Reading.Wheels.Length, Parts()[i].Channel);
            var part = shares[i] * sample[channel];
            (wheel, rest) = isOfWheel ? (wheel + part, rest) : (wheel, rest + part);
        }

        return wheel + rest;
    }

    private (int Channel, double Share)[] Parts() => [.. Reading.Wheels, .. Reading.Body];
}
