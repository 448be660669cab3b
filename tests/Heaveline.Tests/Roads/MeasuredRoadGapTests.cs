using CsCheck;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

public class MeasuredRoadGapTests
{
    private static readonly double[] Sparse = [0.0, 0.1, 0.2, 0.3, 1.2, 1.3, 1.4, 1.5];

    /// <summary>Random points, some far from their neighbours, and heights of a few centimetres.</summary>
    private static readonly Gen<(double[] X, double[] H)> Uneven = Gen.Select(
        Gen.Frequency((4, Gen.Double[0.05, 0.15]), (1, Gen.Double[0.15, 0.9])).Array[5, 30], Gen.Double[-0.05, 0.05].Array[31]).Select((steps, h) =>
        {
            var x = new double[steps.Length + 1];
            for (var i = 0; i < steps.Length; i++)
            {
                x[i + 1] = x[i] + steps[i];
            }

            return (x, h[..x.Length]);
        });

    [Fact]
    public void Across_a_piece_much_longer_than_its_neighbour_the_road_stays_between_its_two_points() => Uneven.Sample(drawn =>
    {
        var (x, h) = drawn;
        var profile = Road.FromMeasured("rough", x, h, null).Left;
        for (var i = 0; i < x.Length - 1; i++)
        {
            var width = x[i + 1] - x[i];
            var shorter = Math.Min(i > 0 ? x[i] - x[i - 1] : width, i + 2 < x.Length ? x[i + 2] - x[i + 1] : width);
            if (width > 2.0 * shorter)
            {
                var (low, high) = (Math.Min(h[i], h[i + 1]) - h[0], Math.Max(h[i], h[i + 1]) - h[0]);
                for (var k = 0; k <= 20; k++)
                {
                    Assert.InRange(profile.Height(x[i] + (k * width / 20.0)), low - 1e-12, high + 1e-12);
                }
            }
        }
    });

    [Fact]
    public void A_gap_is_found_by_the_usual_spacing_and_told_with_the_waves_it_hides()
    {
        var gap = Assert.Single(RoadGap.Among(Sparse));
        Assert.Equal((0.3, 1.2), (gap.From, gap.To));
        Assert.Equal(0.1, gap.Usual, 1e-12);
        Assert.False(gap.IsTooWide);
        Assert.Equal(
            "nothing was measured from 0.3 to 1.2 m, 9 times the usual spacing of 100 mm; waves shorter than 1.8 m cannot be seen there", gap.Words);
        Assert.Contains(
            ", no point from 0.3 to 1.2 m", Road.FromMeasured("yard", Sparse, new double[8], null).Caption, StringComparison.Ordinal);
        Assert.Empty(RoadGap.Among([0.0, 1.0, 2.5, 3.0]));
        Assert.Empty(RoadGap.Among([0.0, 0.01, 0.02, 0.03, 0.2]));
    }

    [Fact]
    public void No_road_is_made_of_a_gap_in_which_a_bump_may_lie_unseen()
    {
        double[] x = [0.0, 0.1, 0.2, 0.3, 4.9, 5.0, 5.1, 5.2];
        double[] h = [0.0, 0.0, 0.0, 0.002, 0.0, 0.0, 0.0, 0.0];
        var refused = Assert.Throws<RefusedValueException>(() => Road.FromMeasured("yard", x, h, null));
        Assert.Contains("4.6 m, from 0.3 to 4.9 m", refused.Message, StringComparison.Ordinal);
        double[] near = [.. x.Select((d, i) => i < 4 ? d : d - 3.7)];
        var road = Road.FromMeasured("yard", near, h, null).Left;
        Assert.InRange(Enumerable.Range(0, 151).Max(i => road.Height(0.01 * i)), 0.002, 0.0021);
    }

    [Fact]
    public void A_hill_is_taken_off_a_long_road_and_said_and_its_unevenness_stays()
    {
        double[] x = [.. Enumerable.Range(0, 6681).Select(i => 0.05 * i)];
        double Bumps(double d) => 0.01 * Math.Sin(2.0 * Math.PI * d / 3.34);
        var hill = Road.FromMeasured("hill", x, Array.ConvertAll(x, d => 250.0 + (0.03 * d) + Bumps(d)), null);
        var level = Road.FromMeasured("level", x, Array.ConvertAll(x, Bumps), null);
        Assert.EndsWith("left and right alike, less its slope of 3 %", hill.Caption, StringComparison.Ordinal);
        Assert.EndsWith("left and right alike", level.Caption, StringComparison.Ordinal);
        for (var d = 0.0; d < 334.0; d += 0.37)
        {
            Assert.Equal(level.Left.Height(d), hill.Left.Height(d), 1e-9);
        }
    }

    [Fact]
    public void The_tracks_of_a_hill_lose_one_slope_and_keep_their_difference()
    {
        double[] x = [.. Enumerable.Range(0, 601).Select(i => 0.1 * i)];
        var road = Road.FromMeasured("hill", x, Array.ConvertAll(x, d => -0.05 * d), Array.ConvertAll(x, d => 0.02 - (0.048 * d)));
        for (var d = 0.0; d < 60.0; d += 0.7)
        {
            Assert.Equal(0.02 + (0.002 * d), road.Right.Height(d) - road.Left.Height(d), 1e-12);
        }

        Assert.Equal(0.0, road.Left.Height(30.0) + road.Right.Height(30.0), 1e-12);
    }

    [Fact]
    public void A_short_measured_ramp_keeps_its_rise()
    {
        double[] x = [.. Enumerable.Range(0, 101).Select(i => 0.1 * i)];
        var ramp = Road.FromMeasured("ramp", x, Array.ConvertAll(x, d => 0.05 * d), null);
        Assert.Equal(0.5, ramp.Left.EndHeight, 1e-12);
        Assert.DoesNotContain("slope", ramp.Caption, StringComparison.Ordinal);
    }
}
