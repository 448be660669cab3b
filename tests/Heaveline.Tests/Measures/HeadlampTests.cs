using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Measures;

/// <summary>Straight rays: the cut-off's height at d is h − d·drop. The degrees follow by hand; the eye heights are assumptions.</summary>
public class HeadlampTests
{
    private static readonly HeadlampAim Aim = new() { Height = 0.65, Drop = 0.01, ReferenceHeight = 0.65, ReferenceDrop = 0.01 };

    [Theory]
    [InlineData(1.20, 25.0, 1.833)]
    [InlineData(1.20, 50.0, 1.203)]
    [InlineData(1.20, 75.0, 0.993)]
    [InlineData(1.20, 100.0, 0.888)]
    [InlineData(1.10, 20.0, 1.862)]
    [InlineData(1.10, 50.0, 1.089)]
    public void The_nose_must_rise_by_so_much_to_reach_an_eye(double eye, double distance, double degrees) =>
        Assert.Equal(degrees, Aim.NoseUpToReach(distance, eye) * 180.0 / Math.PI, 5e-4);

    [Fact]
    public void A_drop_of_1_percent_from_65_cm_meets_the_road_at_65_m()
    {
        Assert.Equal(65.0, Aim.MeetsRoad!.Value, 1e-9);
        Assert.Equal(0.0, Aim.CutOffHeight(65.0), 1e-9);
        Assert.Null((Aim with { Drop = -0.001 }).MeetsRoad);
    }

    [Fact]
    public void A_loaded_boot_lifts_the_beam_by_the_pitch_and_moves_the_lamp_with_the_body()
    {
        var model = RideModel.Of(Lit, PlainCar.With(150.0, 3.2));
        var aim = HeadlampAim.Of(model)!;
        Assert.True(aim.Drop < 0.012);
        Assert.Equal(0.012 + model.Trim.Pitch, aim.Drop, 1e-12);
        // The lamp is 0.7 m ahead of the front axle: along the straight line through both axles' heights.
        Assert.Equal(0.66 + model.Trim.FrontHeight + ((model.Trim.FrontHeight - model.Trim.RearHeight) * 0.7 / 2.6), aim.Height, 1e-12);
    }

    [Fact]
    public void Flashes_are_counted_where_the_cut_off_comes_up_to_the_eye()
    {
        var hump = Road.From(new Versine { Height = new(0.10), Length = new(3.0) });
        var pass = Pass.Of(RideModel.Of(Lit, PlainCar.With(150.0, 3.2)), hump, 10.0);
        var low = Assert.Single(HeadlampFlash.Of(pass, [50.0], 0.3));
        var high = Assert.Single(HeadlampFlash.Of(pass, [50.0], 4.0));
        Assert.Equal((0.0, 0), (high.Share, high.Flashes));
        Assert.True(low.Share > 0.5);

        // An eye just below the highest cut-off is reached for a moment; just above it, never.
        var nearly = Assert.Single(HeadlampFlash.Of(pass, [50.0], low.Highest - 1e-3));
        Assert.InRange(nearly.Share, 1e-4, 0.2);
        Assert.True(nearly.Flashes >= 1);
        Assert.Equal(0, Assert.Single(HeadlampFlash.Of(pass, [50.0], low.Highest + 1e-6)).Flashes);
    }

    // UN Regulation 48, 09 series, 6.2.6.1.2, worked out by hand from its two straight limits: of a lamp at 0.5 to 1.2 m.
    [Theory]
    [InlineData(0.50, 0.50, 1.70)]
    [InlineData(0.65, 0.50, 1.85)]
    [InlineData(0.80, 0.50, 2.00)]
    [InlineData(0.90, 0.50, 2.10)]
    [InlineData(1.00, 0.72, 2.32)]
    [InlineData(1.20, 1.154, 2.754)]
    public void The_newer_rule_moves_with_the_height_of_the_lamp(double height, double least, double greatest)
    {
        var range = HeadlampRange.Of(HeadlampRule.UnRegulation48Series09, height)!;
        Assert.Equal((least, greatest), (100.0 * range.LeastDrop, 100.0 * range.GreatestDrop), Near);
        Assert.True(range.Holds(0.5 * (range.LeastDrop + range.GreatestDrop)) && !range.Holds(range.GreatestDrop + 1e-4));
    }

    [Fact]
    public void A_rule_without_a_range_for_a_height_has_none_and_a_lamp_without_a_rule_neither()
    {
        Assert.Null(HeadlampRange.Of(HeadlampRule.UnRegulation48Series09, 1.3));
        Assert.Null(HeadlampRange.Of(HeadlampRule.UnRegulation48Series09, 0.45));
        Assert.Null(HeadlampRange.Of(Lit.Headlamp!));
        var own = HeadlampRange.Of(Lit.Headlamp! with { LeastDrop = new Amount<Plain>(0.006), GreatestDrop = new Amount<Plain>(0.021) })!;
        Assert.Equal((0.006, 0.021), (own.LeastDrop, own.GreatestDrop));
        // DVSA, The MOT headlamp aim test is changing, 2016: 0.5 to 2.75 % for lamps up to 850 mm.
        Assert.True(HeadlampRange.Of(HeadlampRule.BritishInspection, 0.85)!.Holds(0.0275));
    }

    private static bool Near((double, double) a, (double, double) b) => Math.Abs(a.Item1 - b.Item1) < 1e-9 && Math.Abs(a.Item2 - b.Item2) < 1e-9;

    private static Car Lit => PlainCar.Saloon with { Headlamp = new Headlamp { Height = new(0.66), AheadOfFrontAxle = new(0.7), Drop = new(0.012) } };
}
