using Heaveline.Worksheets;
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

    // Three readings 330, 331, 332 at one wheel: Σ of squares 2 kg² over 4·2 degrees of freedom; Student's t for 8, 95 %: 2.306 (printed in every
    // table of it). A quarter of the squares falls on each sum: 1.5 kg² over 3·2 in the three that statics fixes, t 2.447, and the car is twice
    // its half.
    [Fact]
    public void Repeats_give_the_doubt_of_their_mean()
    {
        var sheet = WeighingSheet.Of([Round(330, 310, 290, 270), Round(331, 310, 290, 270), Round(332, 310, 290, 270)], Wheelbase, Track, Track);
        Assert.Equal(2.306 * 0.5 / Math.Sqrt(3.0), sheet.Weighing.FrontLeft.Doubt.HalfWidth, 1e-3);
        Assert.Equal(2.0, sheet.Spread, 1e-12);
        Assert.Equal(2.447 * 0.5 / Math.Sqrt(3.0) * 2.0, sheet.Total.Doubt.HalfWidth, 1e-3);
        Assert.Equal(sheet.Total.Doubt.HalfWidth / Math.Sqrt(2.0), sheet.FrontAxle.Doubt.HalfWidth, 1e-9);
    }

    // Friction shifts 1 kg along the diagonals between two rounds: the wheels know it (t 2.776 for 4 degrees of freedom, s² = 2·4·½²/4), the car and
    // its axles carry what they carried.
    [Fact]
    public void A_second_round_whose_totals_agree_leaves_the_car_as_sure_as_its_scales()
    {
        WheelReadings Round(double fl, double fr, double rl, double rr) =>
            new(new(fl, new Doubt(1.0)), new(fr, new Doubt(1.0)), new(rl, new Doubt(1.0)), new(rr, new Doubt(1.0)));
        var once = WeighingSheet.Of([Round(381, 362, 311, 306)], Wheelbase, Track, Track);
        var twice = WeighingSheet.Of([Round(381, 362, 311, 306), Round(380, 363, 312, 305)], Wheelbase, Track, Track);
        Assert.Equal(2.0, once.Total.Doubt.HalfWidth, 1e-9);
        Assert.Equal(2.0, twice.Total.Doubt.HalfWidth, 1e-9);
        Assert.Equal(Math.Sqrt(2.0), twice.FrontAxle.Doubt.HalfWidth, 1e-9);
        Assert.Equal(once.BehindFrontAxle.Doubt.HalfWidth, twice.BehindFrontAxle.Doubt.HalfWidth, 1e-6);
        Assert.Equal(Math.Sqrt(1.0 + Math.Pow(2.776 * Math.Sqrt(0.5) / Math.Sqrt(2.0), 2)), twice.Weighing.FrontLeft.Doubt.HalfWidth, 1e-3);
        Assert.Equal(["few-rounds", "not-turned"], twice.Notes.Select(n => n.Id));
    }

    /// <summary>
    /// A known car weighed again and again: scales that scatter by themselves (σ 0.5 kg) and friction that shifts load along the diagonals (σ 1.5 kg
    /// a wheel). 95 % of the intervals of car and axles hold what the car weighs, by Student's t; those of the wheels hold no fewer than the
    /// 78 % that pooling leaves at one repeat when all scatter lies along the diagonals (P(|t₁| &lt; 2.776) = 2/π·atan 2.776 = 0.78).
    /// </summary>
    [Theory]
    [InlineData(2, 0.75)]
    [InlineData(3, 0.82)]
    [InlineData(6, 0.87)]
    public void Intervals_of_repeats_hold_a_known_car(int rounds, double ofWheels)
    {
        const int Weighings = 2000;
        var chance = new Random(20);
        double Normal(double sigma) => sigma * Math.Sqrt(-2.0 * Math.Log(1.0 - chance.NextDouble())) * Math.Cos(2.0 * Math.PI * chance.NextDouble());
        var (total, axle, wheel) = (0, 0, 0);
        for (var k = 0; k < Weighings; k++)
        {
            WheelReadings[] readings = [.. Enumerable.Range(0, rounds).Select(_ =>
            {
                var shift = Normal(1.5);
                return Round(330 + shift + Normal(0.5), 310 - shift + Normal(0.5), 290 - shift + Normal(0.5), 270 + shift + Normal(0.5));
            })];
            var sheet = WeighingSheet.Of(readings, Wheelbase, Track, Track);
            total += Math.Abs(sheet.Total.Si - 1200.0) <= sheet.Total.Doubt.HalfWidth ? 1 : 0;
            axle += Math.Abs(sheet.FrontAxle.Si - 640.0) <= sheet.FrontAxle.Doubt.HalfWidth ? 1 : 0;
            wheel += Math.Abs(sheet.Weighing.FrontLeft.Si - 330.0) <= sheet.Weighing.FrontLeft.Doubt.HalfWidth ? 1 : 0;
        }

        Assert.InRange(total / (double)Weighings, 0.935, 0.965);
        Assert.InRange(axle / (double)Weighings, 0.935, 0.965);
        Assert.InRange(wheel / (double)Weighings, ofWheels, 0.98);
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

    [Theory]
    [InlineData(362.0, 2.55, new string[0])]
    [InlineData(3620.0, 2.55, new[] { "unlike-neighbours" })]
    [InlineData(362.0, 2550.0, new[] { "odd-wheelbase" })]
    [InlineData(362.0, 0.255, new[] { "odd-wheelbase" })]
    public void Likely_slips_are_remarked(double frontRight, double wheelbase, string[] ids)
    {
        var sheet = WeighingSheet.Of([new WheelReadings(new(381.0), new(frontRight), new(311.0), new(306.0))], new(wheelbase), new(1.52), new(1.51));
        string[] rounds = ["one-round", "not-turned", "no-scale-doubt"];
        Assert.Equal([.. ids, .. rounds], sheet.Notes.Select(n => n.Id));
    }
}
