using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

/// <summary>Roads of very many points: averaged block by block, and stopped wherever they are being worked on.</summary>
public class LongRoadTests
{
    private const int Points = LongAverage.From + 20_000;
    private static readonly double[] Distances = [.. Enumerable.Range(0, Points).Select(i => 0.01 * i)];
    private static readonly double[] Heights =
        [.. Enumerable.Range(0, Points).Select(i => (0.01 * Math.Sin(0.3 * i)) + (0.02 * Math.Sin(0.011 * i)))];

    [Fact]
    public void An_average_that_is_read_block_by_block_has_the_numbers_of_the_whole_one()
    {
        var profile = Road.FromMeasured("long", Distances, Heights, null, TestContext.Current.CancellationToken).Left;
        var averaged = profile.AveragedOver(new(0.15));
        var whole = Profile.FromCubics(averaged.Knots, averaged.Coefficients);
        Assert.Equal((whole.Start, whole.End), (averaged.Start, averaged.End));
        Assert.Equal((whole.StartHeight, whole.EndHeight), (averaged.StartHeight, averaged.EndHeight));
        Assert.Equal(whole.HasJump, averaged.HasJump);
        var (blocks, one) = (averaged.Reader(), whole.Reader());
        // Forwards in steps as a pass takes them, then back, then here and there; beyond both ends too.
        var chance = new Random(5);
        foreach (var x in Enumerable.Range(-40, 30_000).Select(k => 0.0291 * k)
            .Concat(Enumerable.Range(0, 3000).Select(k => 870.0 - (0.3 * k)))
            .Concat(Enumerable.Range(0, 300).Select(_ => 870.0 * chance.NextDouble()))
            .Concat(whole.Knots[..50].ToArray()).Concat(whole.Knots[^50..].ToArray()))
        {
            blocks.At(x, out var height, out var slope);
            one.At(x, out var wholeHeight, out var wholeSlope);
            Assert.Equal((wholeHeight, wholeSlope), (height, slope));
        }
    }

    [Fact]
    public void An_average_that_is_read_block_by_block_asks_for_less_room_than_the_road_itself_has()
    {
        var profile = Road.FromMeasured("long", Distances, Heights, null, TestContext.Current.CancellationToken).Left;
        var before = GC.GetAllocatedBytesForCurrentThread();
        var reader = profile.AveragedOver(new(0.15)).Reader();
        reader.At(1.0, out _, out _);
        // One area a point, one block, and the places where blocks begin. The whole average would be ten doubles a point.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, (sizeof(double) * Points) + 3_000_000);
    }

    [Fact]
    public void Whatever_works_on_a_long_road_stops_when_it_is_told_to()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var road = Road.FromMeasured("long", Distances, Heights, null, TestContext.Current.CancellationToken);
        var random = new RandomRoad { Spectrum = RoadSpectrum.Of(RoadClass.A), Length = new(500.0), Track = new(1.5), Seed = 1UL };
        foreach (var work in new Action[]
        {
            () => Road.FromMeasured("long", Distances, Heights, null, stop.Token),
            () => Road.From(random, stop.Token),
            () => RoadRoughness.Of(road.Left, stop.Token),
            () => ProfileSpectrum.Of(Heights, new Amount<Length>(0.01), stop.Token),
            () => Iri.Of(Heights, new Amount<Length>(0.01), null, stop.Token),
            () => EqualSamples.Of(road.Left, new Amount<Length>(0.01), stop.Token),
            () => Heaveline.Studies.RoadStudy.Run(new() { Road = road }, new() { Cancellation = stop.Token }),
        })
        {
            Assert.Throws<OperationCanceledException>(work);
        }
    }
}
