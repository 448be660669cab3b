using Heaveline.Cars;
using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Tests.Cars;

/// <summary>Moments about a wheel centre of a car turned as a whole: N_f·L·cos α = W·(p·cos α − h·sin α).</summary>
public class TiltSheetTests
{
    // 1200 kg, 2.5 m, 0.25 m above the axle line: W·h·tan t/L by hand.
    [Theory]
    [InlineData(5.0, 10.5, 37, 69)]
    [InlineData(10.0, 21.2, 18, 34)]
    [InlineData(15.0, 32.2, 12, 23)]
    [InlineData(20.0, 43.7, 9, 17)]
    public void A_tilt_moves_so_much_and_scales_of_1_or_2_kg_leave_so_many_millimetres(
        double degrees, double moved, double millimetres1, double millimetres2)
    {
        foreach (var (scale, millimetres) in new[] { (1.0, millimetres1), (2.0, millimetres2) })
        {
            var sheet = TiltSheet.Of(Like(degrees, 0.31, 0.31, AxleEnd.Front, scale, 0.3));
            Assert.Equal(moved, sheet.Moved, 0.05);
            Assert.Equal(0.25, sheet.AboveAxleLine.Si, 1e-9);
            Assert.Equal(0.56, sheet.AboveGround.Si, 1e-9);
            Assert.Equal(millimetres, 1e3 * sheet.AboveAxleLine.Doubt.HalfWidth, 0.8);
        }
    }

    [Theory]
    [InlineData(AxleEnd.Front, 0.34, 0.29)]
    [InlineData(AxleEnd.Rear, 0.34, 0.29)]
    [InlineData(AxleEnd.Rear, 0.28, 0.33)]
    public void Unequal_wheels_are_allowed_for_at_either_end(AxleEnd lifted, double front, double rear)
    {
        var sheet = TiltSheet.Of(Like(12.0, front, rear, lifted, 0.0, 0.0));
        Assert.Equal(0.25, sheet.AboveAxleLine.Si, 1e-9);
        // 1.15 m ahead of the rear axle along the line that leans by asin((R_f − R_r)/L).
        var lean = Math.Asin((front - rear) / 2.5);
        Assert.Equal(rear + (1.15 * Math.Sin(lean)) + (0.25 * Math.Cos(lean)), sheet.AboveGround.Si, 1e-9);
    }

    [Fact]
    public void The_budget_names_the_largest_part_first()
    {
        var sheet = TiltSheet.Of(Like(5.0, 0.31, 0.31, AxleEnd.Front, 2.0, 0.3));
        Assert.EndsWith("reading", sheet.Budget[0].What, StringComparison.Ordinal);
        Assert.Equal(sheet.AboveGround.Doubt.HalfWidth, Math.Sqrt(sheet.Budget.Sum(p => p.HalfWidth * p.HalfWidth)), 1e-12);
        Assert.Contains(sheet.Notes, n => n.Id == "small-tilt");
    }

    // (m·h − m_u·R)/(m − m_u).
    [Fact]
    public void The_bodys_height_leaves_the_wheels_out()
    {
        var sheet = TiltSheet.Of(Like(10.0, 0.31, 0.31, AxleEnd.Front, 1.0, 0.3));
        var body = sheet.BodyHeight(new(1200.0), new(150.0, new Doubt(10.0)), new(0.31));
        Assert.Equal(((1200.0 * 0.56) - (150.0 * 0.31)) / 1050.0, body.Si, 1e-9);
        Assert.True(body.Doubt.HalfWidth > sheet.AboveGround.Doubt.HalfWidth);
    }

    [Fact]
    public void A_lift_that_unloads_the_lower_axle_is_refused()
    {
        var tilt = Like(10.0, 0.31, 0.31, AxleEnd.Front, 1.0, 0.3);
        Assert.Throws<RefusedValueException>(() => TiltSheet.Of(tilt with { Lifted = tilt.Level, Level = tilt.Lifted }));
    }

    // A car of 1200 kg with its centre 1.15 m ahead of the rear axle and 0.25 m above the axle line.
    private static TiltReadings Like(double degrees, double frontRadius, double rearRadius, AxleEnd lifted, double scale, double angleDoubt)
    {
        const double Radian = Math.PI / 180.0;
        var level = Math.Asin((frontRadius - rearRadius) / 2.5);
        double OnFront(double alpha) => 1200.0 * ((1.15 / 2.5) - (0.25 / 2.5 * Math.Tan(alpha)));
        double Down(double alpha) => lifted == AxleEnd.Front ? 1200.0 - OnFront(alpha) : OnFront(alpha);
        var turned = level + (Radian * (lifted == AxleEnd.Front ? degrees : -degrees));
        return new TiltReadings
        {
            Total = new(1200.0),
            Level = new(Down(level), new Doubt(scale)),
            Lifted = new(Down(turned), new Doubt(scale)),
            Angle = new(degrees * Radian, new Doubt(angleDoubt * Radian)),
            Wheelbase = new(2.5),
            FrontRadius = new(frontRadius),
            RearRadius = new(rearRadius),
            LiftedEnd = lifted,
        };
    }
}
