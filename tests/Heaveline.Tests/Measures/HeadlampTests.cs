using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
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

    [Fact]
    public void Every_printed_range_says_how_it_is_known_and_holds_its_own_middle()
    {
        Assert.All(
            HeadlampRange.Printed,
            r => Assert.True(r.Known.Contains("memory", StringComparison.Ordinal) || r.Known.Contains("read", StringComparison.Ordinal)));
        Assert.All(HeadlampRange.Printed, r => Assert.True(r.Holds(0.5 * (r.LeastDrop + r.GreatestDrop)) && !r.Holds(r.GreatestDrop + 1e-4)));
        Assert.Contains(HeadlampRange.For(0.7), r => r.LeastDrop == 0.005 && r.GreatestDrop == 0.020);
        Assert.DoesNotContain(HeadlampRange.For(0.7), r => r.FromHeight > 0.7);
    }

    private static Car Lit => PlainCar.Saloon with { Headlamp = new Headlamp { Height = new(0.66), AheadOfFrontAxle = new(0.7), Drop = new(0.012) } };
}
