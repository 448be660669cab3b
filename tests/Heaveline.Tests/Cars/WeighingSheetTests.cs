using Heaveline.Cars.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Tests.Cars;

public class WeighingSheetTests
{
    private static readonly Amount<Length> Wheelbase = new(2.6);
    private static readonly Amount<Length> Track = new(1.5);

    // Moments by hand: 2.6·560/1200 m behind the front axle; ½·1.5·(330 − 310 + 290 − 270)/1200 m to the left.
    [Fact]
    public void The_centre_of_gravity_follows_from_moments()
    {
        var sheet = WeighingSheet.Of([Round(330, 310, 290, 270)], Wheelbase, Track, Track);
        Assert.Equal(1200.0, sheet.Total.Si, 1e-9);
        Assert.Equal(2.6 * 560.0 / 1200.0, sheet.BehindFrontAxle.Si, 1e-12);
        Assert.Equal(0.75 * 40.0 / 1200.0, sheet.LeftOfMiddle.Si, 1e-12);
        Assert.Equal(0.5, sheet.CrossShare.Si, 1e-12);
        Assert.Null(sheet.TurnChange);
        Assert.Contains(sheet.Notes, n => n.Id == "not-turned");
    }

    // A floor that loads one diagonal by 6 kg at each wheel does so to the other one when the car stands the other way round.
    [Fact]
    public void Turning_the_car_takes_the_floor_out()
    {
        var sheet = WeighingSheet.Of([Round(336, 304, 284, 276), Round(324, 316, 296, 264) with { Turned = true }], Wheelbase, Track, Track);
        Assert.Equal(330.0, sheet.Weighing.FrontLeft.Si, 1e-9);
        Assert.Equal(270.0, sheet.Weighing.RearRight.Si, 1e-9);
        Assert.Equal(12.0, sheet.TurnChange!.Value, 1e-9);
    }

    // Three readings 330, 331, 332: standard deviation 1 kg; the other wheels do not scatter. Student's t for 2 degrees of freedom, 95 %: 4.303
    // (printed in every table of it); half-width 4.303/√3.
    [Fact]
    public void Repeats_give_the_doubt_of_their_mean()
    {
        var sheet = WeighingSheet.Of([Round(330, 310, 290, 270), Round(331, 310, 290, 270), Round(332, 310, 290, 270)], Wheelbase, Track, Track);
        Assert.Equal(4.303 / Math.Sqrt(3.0), sheet.Weighing.FrontLeft.Doubt.HalfWidth, 1e-3);
        Assert.Equal(2.0, sheet.Spread, 1e-12);
        Assert.Equal(sheet.Weighing.FrontLeft.Doubt.HalfWidth, sheet.Total.Doubt.HalfWidth, 1e-9);
    }

    [Fact]
    public void The_scales_own_doubt_is_not_averaged_away()
    {
        WheelReadings Scaled() => new(new(330.0, new Doubt(1.5)), new(310.0, new Doubt(1.5)), new(290.0, new Doubt(1.5)), new(270.0, new Doubt(1.5)));
        var sheet = WeighingSheet.Of([Scaled(), Scaled(), Scaled()], Wheelbase, Track, Track);
        Assert.Equal(1.5, sheet.Weighing.FrontLeft.Doubt.HalfWidth, 1e-12);
        Assert.Equal(3.0, sheet.Total.Doubt.HalfWidth, 1e-9);
        // ∂/∂N of L·R/W: front wheels −L·R/W², rear wheels L·F/W².
        var byHand = 1.5 * 2.6 / (1200.0 * 1200.0) * Math.Sqrt((2.0 * 560.0 * 560.0) + (2.0 * 640.0 * 640.0));
        Assert.Equal(byHand, sheet.BehindFrontAxle.Doubt.HalfWidth, 1e-6);
    }

    private static WheelReadings Round(double fl, double fr, double rl, double rr) => new(new(fl), new(fr), new(rl), new(rr));
}
