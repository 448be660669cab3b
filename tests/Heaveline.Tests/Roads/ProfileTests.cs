using CsCheck;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

public class ProfileTests
{
    [Fact]
    public void A_reader_gives_the_same_bits_as_Height_and_Slope_forwards_and_backwards() =>
        Gen.Select(RandomRoads.WithJumps, Gen.Double[-1.5, 1.5].Array[1, 40]).Sample((profile, steps) =>
        {
            var reader = profile.Reader();
            var x = profile.Start - 1.0;
            foreach (var step in steps)
            {
                // Mostly forwards, sometimes back, sometimes across the whole road and exactly onto a knot.
                x = step > 1.4 ? profile.End + 1.0 : step < -1.4 ? profile.Start : x + step + 0.3;
                reader.At(x, out var height, out var slope);
                Assert.Equal(profile.Height(x), height);
                Assert.Equal(profile.Slope(x), slope);
            }
        });

    [Fact]
    public void The_height_after_a_jump_holds_at_its_knot()
    {
        var step = new Step { Height = RandomRoads.Metres(0.05) }.Draw();
        Assert.True(step.HasJump);
        Assert.Equal(0.0, step.Height(-1e-12));
        Assert.Equal(0.05, step.Height(0.0));
        Assert.Equal(0.0, step.Slope(0.0));
        step.Reader().At(0.0, out var height, out _);
        Assert.Equal(0.05, height);
    }

    [Fact]
    public void The_road_is_level_outside_its_knots() => RandomRoads.WithJumps.Sample(profile =>
    {
        Assert.Equal(profile.StartHeight, profile.Height(profile.Start - 3.0));
        Assert.Equal(profile.EndHeight, profile.Height(profile.End + 3.0));
        Assert.Equal(0.0, profile.Slope(profile.Start - 3.0));
        Assert.Equal(0.0, profile.Slope(profile.End + 3.0));
    });

    [Fact]
    public void Slope_is_the_derivative_of_Height() => Gen.Select(RandomRoads.Smooth, Gen.Double[0.0, 1.0]).Sample((profile, share) =>
    {
        var x = profile.Start + (share * (profile.End - profile.Start));
        const double d = 1e-7;
        if (profile.Knots.ToArray().All(k => Math.Abs(k - x) > 2.0 * d))
        {
            Assert.Equal((profile.Height(x + d) - profile.Height(x - d)) / (2.0 * d), profile.Slope(x), 1e-4 * (1.0 + Math.Abs(profile.Slope(x))));
        }
    });

    [Fact]
    public void Scaling_and_shifting_change_heights_and_distances_only() =>
        Gen.Select(RandomRoads.WithJumps, Gen.Double[-3.0, 3.0], Gen.Int[-4, 4], Gen.Double[-7.0, 7.0]).Sample((profile, factor, shift, x) =>
        {
            Assert.Equal(factor * profile.Height(x), profile.Scaled(factor).Height(x), 1e-12);
            var shifted = profile.Shifted(shift);
            if (profile.Knots.ToArray().All(k => Math.Abs(k - x) > 1e-9))
            {
                Assert.Equal(profile.Height(x), shifted.Height(x + shift), 1e-9);
            }
        });

    [Fact]
    public void Detrending_takes_away_the_line_between_the_ends() =>
        Gen.Select(RandomRoads.WithJumps, Gen.Double[0.0, 1.0]).Sample((profile, share) =>
        {
            var flat = profile.Detrended();
            Assert.Equal(0.0, flat.StartHeight, 1e-15);
            var length = profile.End - profile.Start;
            Assert.Equal(length > 0.0 ? 0.0 : profile.EndHeight - profile.StartHeight, flat.EndHeight);
            var x = profile.Start + (share * length);
            if (length > 0.0 && x < profile.End)
            {
                var line = profile.StartHeight + ((profile.EndHeight - profile.StartHeight) * share);
                Assert.Equal(profile.Height(x) - line, flat.Height(x), 1e-12);
            }
        });

    [Fact]
    public void A_profile_with_a_break_between_pieces_is_refused()
    {
        var error = Assert.Throws<RefusedValueException>(() => Profile.FromCubics([0.0, 1.0], [0.0, 0.0, 0.0, 0.0, 0.1, 0.0, 0.0, 0.0]));
        Assert.Contains("broken by 0.1 m at 1 m", error.Message, StringComparison.Ordinal);
        Assert.False(Profile.FromCubics([0.0, 1.0], [0.0, 0.1, 0.0, 0.0, 0.1, 0.0, 0.0, 0.0]).HasJump);
    }

    [Theory]
    [InlineData(new[] { 1.0, 0.0 }, new[] { 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0 })]
    [InlineData(new[] { 0.0 }, new[] { 0.0, 0.1, 0.0, 0.0 })]
    [InlineData(new[] { 0.0 }, new[] { double.NaN, 0.0, 0.0, 0.0 })]
    [InlineData(new[] { double.NaN }, new[] { 0.0, 0.0, 0.0, 0.0 })]
    [InlineData(new[] { 0.0, 1.0 }, new[] { 0.0, 0.0, 0.0, 0.0 })]
    [InlineData(new double[0], new double[0])]
    public void Pieces_that_make_no_road_are_refused(double[] knots, double[] coefficients) =>
        Assert.Throws<RefusedValueException>(() => Profile.FromCubics(knots, coefficients));
}
