using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

/// <summary>Random roads: repeatable, extendable, of the stated spectrum and likeness of tracks.</summary>
public class RandomRoadTests
{
    private static readonly RandomRoad Kilometre =
        new() { Spectrum = RoadSpectrum.Of(RoadClass.C), Track = new(1.5), Length = new(1000.0), Seed = 1UL };

    [Fact]
    public void A_longer_road_begins_with_the_shorter_one_to_the_last_bit()
    {
        var (left, right) = (Kilometre with { Length = new(123.4) }).Draw();
        var (longLeft, longRight) = (Kilometre with { Length = new(200.0) }).Draw();
        Assert.Equal(123.4, left.End, 1e-9);

        // All but the last piece, which is level.
        var pieces = 4 * (left.Knots.Length - 1);
        Assert.Equal(left.Coefficients[..pieces].ToArray(), longLeft.Coefficients[..pieces].ToArray());
        Assert.Equal(right.Coefficients[..pieces].ToArray(), longRight.Coefficients[..pieces].ToArray());
        Assert.Equal(left.EndHeight, longLeft.Height(longLeft.Knots[left.Knots.Length - 1]));
    }

    [Fact]
    public void The_seed_alone_decides()
    {
        var road = Kilometre with { Length = new(50.0) };
        Assert.Equal(road.Draw().Left.Coefficients.ToArray(), (road with { Track = new(1.6) }).Draw().Left.Coefficients.ToArray());
        Assert.NotEqual(road.Draw().Left.StartHeight, (road with { Seed = 2UL }).Draw().Left.StartHeight);
        Assert.NotEqual(road.Draw().Right.StartHeight, (road with { Track = new(1.6) }).Draw().Right.StartHeight);
    }

    [Fact]
    public void The_same_road_at_another_spacing_has_the_same_heights_and_slopes()
    {
        var (coarse, _) = (Kilometre with { Length = new(100.0) }).Draw();
        var (fine, _) = (Kilometre with { Length = new(100.0), Spacing = new(0.01) }).Draw();
        var miss = 0.0;
        for (var i = 0; i < 2000; i++)
        {
            Assert.Equal(fine.Height(i * 0.05), coarse.Height(i * 0.05), 1e-11);
            Assert.Equal(fine.Slope(i * 0.05), coarse.Slope(i * 0.05), 1e-9);
            miss = Math.Max(miss, Math.Abs(fine.Height((i + 0.5) * 0.05) - coarse.Height((i + 0.5) * 0.05)));
        }

        // Between knots the shortest waves (0.35 m, seven spacings) are missed by 0.16 % of their amplitude: under 0.01 mm in class C.
        Assert.InRange(miss, 0.0, 1e-5);
    }

    [Fact]
    public void Slopes_are_the_derivatives_of_the_heights()
    {
        var (_, right) = (Kilometre with { Length = new(40.0), Spacing = new(0.002) }).Draw();
        for (var i = 1; i < 19_000; i += 37)
        {
            var x = right.Knots[i];
            Assert.Equal((right.Height(right.Knots[i + 1]) - right.Height(right.Knots[i - 1])) / 0.004, right.Slope(x), 1e-5);
        }
    }

    /// <summary>Mean square of heights over its stated scatter, 30 roads of 1 km: chi-square with 30 times the degrees of freedom of one.</summary>
    [Fact]
    public void Mean_square_heights_lie_within_their_statistical_interval()
    {
        // Short waves hold hardly any of the height: the band ends at 0.5 cycles/m to be quick.
        var road = Kilometre with { Spectrum = Kilometre.Spectrum with { Band = new(0.011, 0.5) }, Spacing = new(0.5) };
        var spectrum = road.Spectrum;
        var ratios = Enumerable.Range(0, 30)
            .Select(seed => (road with { Seed = (ulong)seed }).Draw()).SelectMany(pair => new[] { pair.Left, pair.Right })
            .Select(track => MeanSquare(track) / spectrum.HeightVariance).ToArray();
        var expected = Math.Sqrt(2.0 / spectrum.DegreesOfFreedom(new(1000.0)));
        Assert.Equal(0.175, Math.Sqrt(2.0 / Kilometre.Spectrum.DegreesOfFreedom(new(1000.0))), 5e-4);

        // The tracks are nearly one at these long waves, so 60 tracks count as 30: 4 standard errors of mean and of scatter.
        Assert.Equal(1.0, ratios.Average(), 4.0 * expected / Math.Sqrt(30.0));
        var scatter = Math.Sqrt(ratios.Average(r => (r - 1.0) * (r - 1.0)));
        Assert.Equal(1.0, scatter / expected, 4.0 / Math.Sqrt(60.0));
    }

    [Fact]
    public void A_road_of_two_kilometres_does_not_repeat()
    {
        var heights = EqualSamples.Of((Kilometre with { Length = new(4000.0), Spacing = new(0.08) }).Draw().Left, new(0.08));
        var count = heights.Length / 2;
        var mean = heights.Average();
        var square = heights.Average(h => (h - mean) * (h - mean));

        // A repeat would correlate fully; chance gives 1/√(ν/2) with about 65 degrees of freedom a kilometre, of which four spans are taken.
        foreach (var lag in (int[])[count / 4, count / 3, count / 2, count * 709 / 1000, count - 100, count])
        {
            var correlation = Enumerable.Range(0, count - 1).Average(i => (heights[i] - mean) * (heights[i + lag] - mean)) / square;
            Assert.InRange(Math.Abs(correlation), 0.0, 0.6);
        }
    }

    [Fact]
    public void A_lead_in_begins_level_and_ends_on_the_road()
    {
        var (plain, _) = (Kilometre with { Length = new(60.0) }).Draw();
        var road = Road.From(Kilometre with { Length = new(60.0), LeadIn = new(20.0) });
        Assert.Equal(RoadKind.Random, road.Kind);
        Assert.Equal((0.0, 0.0), (road.Left.StartHeight, road.Left.Slope(0.0)));
        Assert.Equal(0.5 * plain.Height(10.0), road.Left.Height(10.0), 1e-12);
        Assert.Equal(plain.Height(20.05), road.Left.Height(20.05), 1e-15);
        Assert.Contains("class C", road.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void One_track_is_one_profile()
    {
        var (left, right) = (Kilometre with { Track = new(0.0), Length = new(20.0) }).Draw();
        Assert.Same(left, right);
    }

    [Fact]
    public void A_spacing_too_wide_for_the_waves_and_a_road_too_long_are_refused()
    {
        Assert.Contains(
            "quarter of its shortest wave",
            Assert.Throws<RefusedValueException>(() => (Kilometre with { Spacing = new(0.1) }).Draw()).Message,
            StringComparison.Ordinal);
        Assert.Throws<RefusedValueException>(() => (Kilometre with { Length = new(1e5), Spacing = new(0.01) }).Draw());
        Assert.Throws<RefusedValueException>(() => Kilometre with { Length = new(double.NaN) });
        Assert.Throws<RefusedValueException>(() => new SpatialBand(1.0, 1.0));
    }

    private static double MeanSquare(Profile profile)
    {
        var heights = EqualSamples.Of(profile, new(0.5));
        return heights.Average(h => h * h);
    }
}
