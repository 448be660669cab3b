using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.References.HumpGeometry;

/// <summary>
/// Sections of speed humps against values worked out apart from this program; sizes and sources in source.md.
/// Tolerance: half of the last printed digit.
/// </summary>
public class HumpGeometryTests
{
    private const double Foot = 0.3048;
    private const double Inch = 0.0254;

    /// <summary>Watts profile, 3.7 m [TRL Report 377]: height, radius, toe angle, height at L/4.</summary>
    [Theory]
    [InlineData(0.075, 22.854, 5e-4, 4.64, 0.05627)]
    [InlineData(0.100, 17.1625, 5e-5, 6.19, 0.07505)]
    public void The_round_top_hump_has_the_radius_slope_and_quarter_height_of_its_arc(
        double height, double radius, double radiusDigit, double toeDegrees, double quarter)
    {
        var hump = new RoundTopHump { Height = M(height), Length = M(3.7) };
        var profile = hump.Draw();
        Assert.Equal(radius, hump.Radius, radiusDigit);
        Assert.Equal(toeDegrees, Math.Atan(profile.Slope(0.0)) * 180.0 / Math.PI, 5e-3);
        Assert.Equal(quarter, profile.Height(3.7 / 4.0), 5e-6);
        Assert.Equal(height, profile.Height(3.7 / 2.0), 1e-9);
    }

    /// <summary>12 ft by 3 in, circular: radius 72.125 ft, heights in inches at 1 to 6 ft.</summary>
    [Fact]
    public void The_twelve_foot_hump_has_the_heights_of_its_arc()
    {
        var hump = new RoundTopHump { Height = M(3.0 * Inch), Length = M(12.0 * Foot) };
        var profile = hump.Draw();
        Assert.Equal(72.125, hump.Radius / Foot, 5e-4);
        double[] inches = [0.918, 1.668, 2.251, 2.667, 2.917, 3.000];
        for (var foot = 1; foot <= 6; foot++)
        {
            Assert.Equal(inches[foot - 1], profile.Height(foot * Foot) / Inch, 5e-4);
        }
    }

    /// <summary>Sinusoidal hump, 3.7 m: height, greatest slope (at L/4), height at L/4.</summary>
    [Theory]
    [InlineData(0.075, 0.0637, 0.0375)]
    [InlineData(0.100, 0.0849, 0.0500)]
    public void The_sinusoidal_hump_begins_level_and_is_steepest_at_a_quarter(double height, double steepest, double quarter)
    {
        var profile = new Versine { Height = M(height), Length = M(3.7) }.Draw();
        Assert.Equal(0.0, profile.Slope(0.0), 1e-12);
        Assert.Equal(steepest, profile.Slope(3.7 / 4.0), 5e-5);
        Assert.Equal(quarter, profile.Height(3.7 / 4.0), 1e-9);
    }

    /// <summary>Ramps of 75 mm at 1:10, 1:13 and 1:15 are 0.750, 0.975 and 1.125 m long [TRL Report 186, county guide].</summary>
    [Theory]
    [InlineData(10.0, 0.750)]
    [InlineData(13.0, 0.975)]
    [InlineData(15.0, 1.125)]
    public void The_flat_top_hump_climbs_at_its_gradient(double gradient, double ramp)
    {
        var profile = new FlatTopHump { Height = M(0.075), Plateau = M(7.0), RampUp = M(ramp), RampDown = M(ramp) }.Draw();
        Assert.Equal(1.0 / gradient, profile.Slope(ramp / 2.0), 1e-12);
        Assert.Equal(-1.0 / gradient, profile.Slope(ramp + 7.0 + (ramp / 2.0)), 1e-12);
        Assert.Equal(0.075, profile.Height(ramp + 3.5), 1e-12);
        Assert.Equal(0.0, profile.EndHeight);
    }

    private static Amount<Length> M(double value) => new(value);
}
