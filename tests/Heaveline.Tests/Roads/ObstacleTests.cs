using CsCheck;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Roads;

public class ObstacleTests
{
    public static TheoryData<Obstacle> All =>
    [
        new Step { Height = M(0.06), Edge = M(0.02) },
        new Ramp { Height = M(-0.3), Length = M(2.5) },
        new HalfSine { Height = M(0.08), Length = M(0.6) },
        new Versine { Height = M(-0.05), Length = M(3.7) },
        new RoundTopHump { Height = M(0.1), Length = M(3.7) },
        new RoundTopHump { Height = M(0.1), Length = M(0.4) },
        new FlatTopHump { Height = M(0.075), Plateau = M(7.0), RampUp = M(0.975), RampDown = M(1.125) },
        new Pothole { Depth = M(0.06), Length = M(0.5), Edge = M(0.05) },
        new Plank { Height = M(0.04), Length = M(0.1), Edge = M(0.05) },
    ];

    [Fact]
    public void Every_kind_of_obstacle_is_among_them() => Assert.Equal(
        typeof(Obstacle).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Obstacle))).Select(t => t.Name).Order(StringComparer.Ordinal),
        All.Select(row => row.Data.GetType().Name).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void No_obstacle_is_as_long_as_a_road()
    {
        foreach (var length in new[] { 1001.0, 1e6, 1e9 })
        {
            foreach (var draw in new Func<Obstacle>[]
            {
                () => new Step { Height = M(0.06), Edge = M(length) },
                () => new Ramp { Height = M(-0.3), Length = M(length) },
                () => new HalfSine { Height = M(0.08), Length = M(length) },
                () => new Versine { Height = M(-0.05), Length = M(length) },
                () => new RoundTopHump { Height = M(0.1), Length = M(length) },
                () => new FlatTopHump { Height = M(0.075), Plateau = M(length), RampUp = M(1.0), RampDown = M(1.0) },
                () => new FlatTopHump { Height = M(0.075), Plateau = M(7.0), RampUp = M(length), RampDown = M(1.0) },
                () => new FlatTopHump { Height = M(0.075), Plateau = M(7.0), RampUp = M(1.0), RampDown = M(length) },
                () => new Pothole { Depth = M(0.06), Length = M(length), Edge = M(0.05) },
                () => new Plank { Height = M(0.04), Length = M(length), Edge = M(0.05) },
            })
            {
                Assert.Equal("between 0 and 1000 m", Assert.Throws<RefusedValueException>(draw).Limit);
            }
        }

        var waves = new SineRoad { Amplitude = M(0.01), Wavelength = M(1000.0), Waves = 100.0 };
        Assert.Equal("at most 100000 m", Assert.Throws<RefusedValueException>(() => Road.From(waves)).Limit);
    }

    [Theory, MemberData(nameof(All))]
    public void An_obstacle_lies_between_zero_and_its_length(Obstacle obstacle)
    {
        var profile = obstacle.Draw();
        Assert.Equal(0.0, profile.Start);
        Assert.Equal(obstacle.OverallLength, profile.End, 1e-15);
        Assert.Equal(0.0, profile.StartHeight);
        Assert.False(profile.HasJump);
        var road = Road.From(obstacle, Tracks.Right);
        Assert.Equal(0.0, road.EventStart);
        Assert.Equal(obstacle.OverallLength, road.EventEnd);
        Assert.Same(Profile.Flat, road.Left);
        Assert.StartsWith(obstacle.Shape, road.Caption, StringComparison.Ordinal);
        Assert.EndsWith("right track", road.Caption, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.08, 0.6)]
    [InlineData(-0.3, 0.2)]
    [InlineData(0.1, 12.0)]
    public void Curved_bumps_follow_their_formula_within_a_nanometre(double height, double length)
    {
        var half = new HalfSine { Height = M(height), Length = M(length) }.Draw();
        var whole = new Versine { Height = M(height), Length = M(length) }.Draw();
        for (var i = 0; i <= 5000; i++)
        {
            var x = length * i / 5000.0;
            Assert.Equal(height * Math.Sin(Math.PI * x / length), half.Height(x), 1.01e-9);
            Assert.Equal(height / 2.0 * (1.0 - Math.Cos(2.0 * Math.PI * x / length)), whole.Height(x), 1.01e-9);
        }
    }

    [Fact]
    public void A_round_top_hump_is_an_arc_of_its_radius_within_a_nanometre() =>
        Gen.Select(Gen.Double[0.01, 0.25], Gen.Double[1.0, 10.0], Gen.Double[0.0, 1.0]).Sample((height, length, share) =>
        {
            var hump = new RoundTopHump { Height = M(height), Length = M(length) };
            var x = share * length;
            var z = hump.Draw().Height(x);
            var toCentre = Math.Sqrt(Math.Pow(x - (length / 2.0), 2.0) + Math.Pow(z + hump.Radius - height, 2.0));
            Assert.Equal(hump.Radius, toCentre, 1.1e-9);
        });

    [Fact]
    public void A_pothole_is_level_at_its_bottom_and_straight_at_its_edges()
    {
        var hole = new Pothole { Depth = M(0.06), Length = M(0.5), Edge = M(0.05) }.Draw();
        Assert.Equal(-0.03, hole.Height(0.025), 1e-15);
        Assert.Equal(-0.06, hole.Height(0.25), 1e-15);
        Assert.Equal(-0.03, hole.Height(0.475), 1e-15);
        Assert.Equal(-1.2, hole.Slope(0.01), 1e-12);
        Assert.True(new Pothole { Depth = M(0.06), Length = M(0.5), Edge = M(0.0) }.Draw().HasJump);
    }

    [Fact]
    public void Sizes_out_of_their_limits_are_refused_where_they_are_set()
    {
        Refused("height", () => new Step { Height = M(75.0) });
        Refused("edge", () => new Step { Height = M(0.05), Edge = M(-0.01) });
        Refused("length", () => new Ramp { Height = M(0.1), Length = M(0.0) });
        Refused("length", () => new HalfSine { Height = M(0.1), Length = M(double.PositiveInfinity) });
        Refused("height", () => new Versine { Height = M(double.NaN), Length = M(1.0) });
        Refused("height", () => new RoundTopHump { Height = M(0.0), Length = M(3.7) });
        Refused("plateau", () => new FlatTopHump { Height = M(0.1), Plateau = M(-1.0), RampUp = M(1.0), RampDown = M(1.0) });
        Refused("ramp down", () => new FlatTopHump { Height = M(0.1), Plateau = M(1.0), RampUp = M(1.0), RampDown = M(0.0) });
        Refused("depth", () => new Pothole { Depth = M(-0.05), Length = M(0.5), Edge = M(0.0) });
        var plank = new Plank { Height = M(0.04), Length = M(0.1), Edge = M(0.02) };
        Refused("height", () => plank with { Height = M(2.0) });
    }

    [Fact]
    public void Sizes_that_do_not_fit_one_another_are_refused_when_drawn()
    {
        Refused("edge of the plank", () => new Plank { Height = M(0.04), Length = M(0.1), Edge = M(0.06) }.Draw());
        Refused("edge of the pothole", () => Road.From(new Pothole { Depth = M(0.04), Length = M(0.1), Edge = M(0.06) }));
        Refused("height of the round-top hump", () => new RoundTopHump { Height = M(0.3), Length = M(1.0) }.Draw());
    }

    private static Amount<Length> M(double value) => RandomRoads.Metres(value);

    private static void Refused(string what, Func<object> make)
    {
        var error = Assert.Throws<RefusedValueException>(make);
        Assert.Equal(what, error.What);
        Assert.NotEmpty(error.Advice);
    }
}
