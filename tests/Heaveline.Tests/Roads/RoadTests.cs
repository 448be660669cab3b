using CsCheck;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

public class RoadTests
{
    [Fact]
    public void A_sine_road_grows_over_its_first_wave_and_then_is_a_sine_in_both_tracks()
    {
        var sine = new SineRoad { Amplitude = M(0.02), Wavelength = M(2.0), Waves = 3, RightLag = new(Math.PI / 2.0) };
        var road = Road.From(sine);
        Assert.Null(road.EventStart);
        Assert.Equal(8.0, road.End, 1e-12);
        Assert.Equal(0.0, road.Left.StartHeight);
        Assert.Equal(0.0, road.Right.StartHeight);
        Assert.Equal(0.0, road.Right.Slope(0.0), 1e-12);
        for (var x = 0.0; x < 8.0; x += 0.0113)
        {
            var share = x < 2.0 ? 0.5 * (1.0 - Math.Cos(Math.PI * x / 2.0)) : 1.0;
            Assert.Equal(share * 0.02 * Math.Sin(Math.PI * x), road.Left.Height(x), 1.01e-9);
            Assert.Equal(share * 0.02 * Math.Sin((Math.PI * x) - (Math.PI / 2.0)), road.Right.Height(x), 1.01e-9);
        }
    }

    [Fact]
    public void A_two_wheeler_is_told_of_no_left_and_no_right()
    {
        var hump = new RoundTopHump { Height = M(0.06), Length = M(3.7) };
        Assert.EndsWith(", left track", Road.From(hump, Tracks.Left).CaptionFor(hasTracks: true), StringComparison.Ordinal);
        foreach (var tracks in new[] { Tracks.Left, Tracks.Right })
        {
            Assert.EndsWith("3.7 m long", Road.From(hump, tracks).CaptionFor(hasTracks: false), StringComparison.Ordinal);
        }

        Assert.EndsWith("3.7 m long", Road.From(hump).CaptionFor(hasTracks: false), StringComparison.Ordinal);
        var named = Road.From(hump, Tracks.Right) with { Name = "hump under the right wheels" };
        Assert.Equal("hump", named.MetBy(hasTracks: false).Name);
        Assert.Same(named, named.MetBy(hasTracks: true));
        Assert.Equal(0.06, named.MetBy(hasTracks: false).Left.Height(1.85), 1e-9);
    }

    [Fact]
    public void Waves_over_a_distance_are_the_distance_long()
    {
        var sine = SineRoad.Over(M(12.0), M(0.01), M(1.6)) with { LeadIn = false };
        Assert.Equal(7.5, sine.Waves, 1e-12);
        Assert.Equal(12.0, Road.From(sine).End, 1e-12);
    }

    [Fact]
    public void Opposite_waves_are_each_others_mirror()
    {
        var road = Road.From(new SineRoad { Amplitude = M(0.02), Wavelength = M(1.0), Waves = 4, RightLag = new(Math.PI) });
        for (var x = 0.0; x < 5.0; x += 0.017)
        {
            Assert.Equal(-road.Left.Height(x), road.Right.Height(x), 1e-14);
        }
    }

    [Fact]
    public void One_obstacle_after_another_stands_on_the_level_where_the_first_ended()
    {
        var up = Road.From(new Step { Height = M(0.1) }, Tracks.Left);
        var bump = Road.From(new HalfSine { Height = M(0.05), Length = M(0.5) });
        var road = up.Then(bump, M(2.0)).Then(Road.From(new Step { Height = M(-0.1) }, Tracks.Left), M(0.0));
        Assert.Equal(0.0, road.EventStart);
        Assert.Equal(2.5, road.EventEnd);
        Assert.True(road.HasJump);
        Assert.Equal(0.1, road.Left.Height(1.0), 1e-15);
        Assert.Equal(0.15, road.Left.Height(2.25), 1e-12);
        Assert.Equal(0.05, road.Right.Height(2.25), 1e-12);
        Assert.Equal(0.0, road.Left.Height(2.5), 1e-15);
        Assert.Equal(0.0, road.Left.AveragedOver(M(0.1)).EndHeight, 1e-15);
        Assert.Throws<RefusedValueException>(() => up.Then(Road.Flat, M(1.0)));
        Assert.Throws<RefusedValueException>(() => up.Then(bump, M(-1.0)));
    }

    [Fact]
    public void A_measured_road_begins_at_zero_and_keeps_the_difference_between_its_tracks()
    {
        var road = Road.FromMeasured("yard", [100.0, 101.0, 102.5, 103.0], [2.10, 2.12, 2.08, 2.11], [2.06, 2.05, 2.04, 2.05]);
        Assert.Equal(0.0, road.Start);
        Assert.Equal(3.0, road.End);
        Assert.Equal(0.02, road.Left.StartHeight, 1e-12);
        Assert.Equal(-0.02, road.Right.StartHeight, 1e-12);
        Assert.Equal(0.0, road.Left.Height(2.5), 1e-12);
        var one = Road.FromMeasured("yard", [0.0, 1.0, 2.0, 3.0], [0.0, 0.1, 0.2, 0.1], null);
        Assert.Same(one.Left, one.Right);
    }

    // The slopes come from parabolas, so a road that is one is met exactly, as long as no piece is more than twice as long as its neighbour: across
    // such a one nothing is invented between its points, a crest neither.
    [Fact]
    public void Measured_points_of_a_parabola_give_the_parabola() =>
        Gen.Select(Gen.Double[0.5, 1.0].Array[3, 20], Gen.Double[-0.1, 0.1], Gen.Double[-0.02, 0.02], Gen.Double[0.0, 1.0])
            .Sample((steps, b, a, share) =>
            {
                var x = new List<double> { 0.0 };
                foreach (var step in steps)
                {
                    x.Add(x[^1] + step);
                }

                var profile = Road.FromMeasured("parabola", x, x.ConvertAll(s => s * (b + (a * s))), null).Left;
                var at = share * x[^1] * 0.999999;
                Assert.Equal(at * (b + (a * at)), profile.Height(at), 1e-9);
                Assert.Equal(b + (2.0 * a * at), profile.Slope(at), 1e-9);
            });

    [Theory]
    [InlineData(new[] { 0.0, 1.0, 2.0 }, new[] { 0.0, 0.0, 0.0 })]
    [InlineData(new[] { 0.0, 1.0, 1.0, 2.0 }, new[] { 0.0, 0.0, 0.0, 0.0 })]
    [InlineData(new[] { 0.0, 2.0, 1.0, 3.0 }, new[] { 0.0, 0.0, 0.0, 0.0 })]
    [InlineData(new[] { 0.0, 1.0, 2.0, 3.0 }, new[] { 0.0, 0.0, 0.0 })]
    [InlineData(new[] { 0.0, 1.0, 2.0, 3.0 }, new[] { 0.0, 0.0, double.NaN, 0.0 })]
    [InlineData(new[] { 0.0, 1.0, 2.0, 3.0 }, new[] { 5.0, 0.0, 16.0, 0.0 })]
    public void Measured_points_that_make_no_road_are_refused(double[] distances, double[] heights) =>
        Assert.Throws<RefusedValueException>(() => Road.FromMeasured("yard", distances, heights, null));

    private static Amount<Length> M(double value) => RandomRoads.Metres(value);
}
