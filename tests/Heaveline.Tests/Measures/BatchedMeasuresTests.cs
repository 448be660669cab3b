using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Tests.Doubts;

namespace Heaveline.Tests.Measures;

/// <summary>What a batch measures from short and narrow records is what the measures say of the whole pass.</summary>
public class BatchedMeasuresTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });
    private static readonly Road Left = Road.From(new Versine { Height = new(0.03), Length = new(1.2) }, Tracks.Left);

    private static readonly Measure<Pass>[] Measures =
    [
        SettlingCatalogue.RmsPitch, SettlingCatalogue.LatePitch, SettlingCatalogue.PeakPitch, HitCatalogue.PeakPitchAcceleration,
        WholePassCatalogue.PeakPitchAcceleration, WholePassCatalogue.RmsPitch,
        WholePassCatalogue.RmsPitchAcceleration, WholePassCatalogue.RmsHeaveAcceleration, WheelCatalogue.LoadVariation(WheelPlace.Of(0, true)),
        WheelCatalogue.LoadVariation(WheelPlace.Of(2, true)),
    ];

    public static TheoryData<string> Names => [.. Measures.Select(m => m.Name)];

    // Cars of different step, length and damping, at speeds and on roads that do not fill the lanes evenly: 1e-9 allows for the order of additions
    // and for the clock that neighbours share.
    private static List<PassRequest> Asked { get; } =
    [
        .. from damping in new[] { 0.1, 0.35, 0.9 }
           from stretch in new[] { 1.0, 1.07 }
           from road in new[] { Hump, Left }
           from speed in new[] { 9.0, 17.3, 31.0 }
           select new PassRequest(
               (MeasuredCar.Saloon with { FrontDamping = damping, RearDamping = damping, Wheelbase = 2.7 * stretch }).Model(), road, speed),
    ];

    [Theory, MemberData(nameof(Names))]
    public void A_measure_alone_from_the_shortest_record_that_it_needs_is_that_of_the_whole_pass(string name)
    {
        var measure = Measures.Single(m => m.Name == name);
        var batched = BatchedMeasures.Of([.. Asked], [measure], null, 2, TestContext.Current.CancellationToken);
        for (var i = 0; i < Asked.Count; i++)
        {
            var whole = measure.Of(Pass.Of(Asked[i].Model, Asked[i].Road, Asked[i].Speed, new() { Method = FixedStep.Once }));
            Assert.True(whole > 0.0);
            Assert.Equal(whole, batched[i][0], 1e-9 * whole);
        }
    }

    [Fact]
    public void Hit_and_settling_look_no_further_than_a_second_and_a_measure_of_the_callers_own_looks_at_a_whole_record()
    {
        Assert.True(SettlingCatalogue.RmsPitch.LooksFor <= 1.0 && HitCatalogue.PeakPitchAcceleration.LooksFor <= 1.0);
        var own = new Measure<Pass>("mine", "mine", In.Plain, 3, p => p.TyreLoad(0)[^1], "Mine.");
        Assert.Equal((double.PositiveInfinity, true), (own.LooksFor, own.InFlight is null));
    }

    [Fact]
    public void Neither_threads_nor_order_nor_neighbours_change_a_number()
    {
        Measure<Pass>[] both = [SettlingCatalogue.RmsPitch, HitCatalogue.PeakPitchAcceleration];
        var stop = TestContext.Current.CancellationToken;
        var one = BatchedMeasures.Of([.. Asked], both, null, 1, stop);
        var many = BatchedMeasures.Of([.. Asked], both, null, 8, stop);
        // The same groups on other threads: the same bits.
        Assert.Equal(one.SelectMany(r => r), many.SelectMany(r => r));
        // Other groups: the same bits too.
        int[] shuffled = [.. Enumerable.Range(0, Asked.Count).OrderBy(i => i * 7 % Asked.Count)];
        var other = BatchedMeasures.Of([null, .. shuffled.Skip(3).Select(i => Asked[i])], both, null, 3, stop);
        Assert.All(other[0], v => Assert.Equal(double.NaN, v));
        for (var k = 3; k < shuffled.Length; k++)
        {
            for (var j = 0; j < both.Length; j++)
            {
                Assert.Equal(one[shuffled[k]][j], other[k - 2][j]);
            }
        }
    }

    [Fact]
    public void A_measure_of_the_callers_own_may_keep_the_pass_with_all_its_traces()
    {
        var kept = new List<Pass>();
        var mine = new Measure<Pass>("mine", "mine", In.Plain, 3, p =>
        {
            lock (kept)
            {
                kept.Add(p);
            }

            return p.TyreLoad(3).Max();
        }, "Mine.");
        var rows = BatchedMeasures.Of([.. Asked.Take(8)], [mine], null, 2, TestContext.Current.CancellationToken);
        Assert.Equal(8, kept.Count);
        Assert.Equal(rows.Select(r => r[0]).Order(), kept.Select(p => p.TyreLoad(3).Max()).Order());
        Assert.All(kept, p => Assert.Equal(p.Count, p.PitchRate.Length));
    }
}
