using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Tests.Cars;

public class WheelRateSheetTests
{
    // Planted: 3200 N at rest (gap 0.38 m), 22.5 N/mm, half a loop of 55 N, a bump stop of 60 N/mm 52 mm up, a rebound stop of 40 N/mm 47 mm down.
    private const double Rest = 0.38;

    [Fact]
    public void A_planted_loop_gives_back_what_was_planted()
    {
        var sheet = Sheet(Both(Steps(-80, 80, 9), Planted(0.052, 0.047)), new(Rest));
        Assert.Equal(22500.0, sheet.Rate.Si, 1.0);
        Assert.Equal(55.0, sheet.Friction.Si, 0.1);
        Assert.Equal(0.052, sheet.BumpStop!.Clearance!.Value.Si, 1e-4);
        Assert.Equal(Rest - 0.052, sheet.BumpStop.Gap.Si, 1e-4);
        Assert.Equal(60000.0, sheet.BumpStop.Rate.Si, 300.0);
        Assert.Equal(0.047, sheet.ReboundStop!.Clearance!.Value.Si, 1e-4);
        Assert.Equal(40000.0, sheet.ReboundStop.Rate.Si, 300.0);
        Assert.Contains(sheet.Notes, n => n.Id == "bends");
        Assert.Contains(sheet.Notes, n => n.Id == "springs-store-energy");
    }

    // Least squares by hand for the straight loop: slopes of both branches are the same, half their difference is the friction.
    [Fact]
    public void A_straight_loop_has_a_rate_and_a_friction_and_no_stop()
    {
        var sheet = Sheet(Both(Steps(-30, 30, 7), Planted(null, null)), null);
        Assert.Equal(22500.0, sheet.Rate.Si, 1e-6);
        Assert.Equal(55.0, sheet.Friction.Si, 1e-6);
        Assert.Null(sheet.BumpStop);
        Assert.Null(sheet.ReboundStop);
        Assert.Contains(sheet.Notes, n => n.Id == "no-bend");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void One_stop_is_found_alone(bool bump)
    {
        var sheet = Sheet(Both(Steps(-80, 80, 9), Planted(bump ? 0.052 : null, bump ? null : 0.047)), new(Rest));
        Assert.Equal(bump, sheet.BumpStop is not null);
        Assert.Equal(!bump, sheet.ReboundStop is not null);
        Assert.Equal(bump ? 0.052 : 0.047, (sheet.BumpStop ?? sheet.ReboundStop)!.Clearance!.Value.Si, 1e-4);
        Assert.Equal(22500.0, sheet.Rate.Si, 1.0);
    }

    [Fact]
    public void Both_wheels_together_share_the_force()
    {
        var readings = Both(Steps(-30, 30, 7), Planted(null, null)).Select(r => r with { Force = new(2.0 * r.Force.Si) }).ToList();
        var sheet = WheelRateSheet.Of(readings, null, bothWheels: true);
        Assert.Equal(22500.0, sheet.Rate.Si, 1e-6);
        Assert.Equal(55.0, sheet.Friction.Si, 1e-6);
        Assert.Contains(sheet.Notes, n => n.Id == "both-wheels");
    }

    /// <summary>Loops misread at random (σ 12 N): 19 intervals out of 20 hold what was planted, within the chance of 300 loops.</summary>
    [Fact]
    public void Intervals_hold_what_was_planted()
    {
        const int Loops = 300;
        var chance = new Random(11);
        double Normal() => Math.Sqrt(-2.0 * Math.Log(1.0 - chance.NextDouble())) * Math.Cos(2.0 * Math.PI * chance.NextDouble());
        var (rate, friction, clearance, found) = (0, 0, 0, 0);
        for (var k = 0; k < Loops; k++)
        {
            var readings = Both(Steps(-40, 80, 9), Planted(0.052, null)).Select(r => r with { Force = new(r.Force.Si + (12.0 * Normal())) }).ToList();
            var sheet = Sheet(readings, new(Rest));
            rate += Math.Abs(sheet.Rate.Si - 22500.0) <= sheet.Rate.Doubt.HalfWidth ? 1 : 0;
            friction += Math.Abs(sheet.Friction.Si - 55.0) <= sheet.Friction.Doubt.HalfWidth ? 1 : 0;
            if (sheet.BumpStop?.Clearance is { } gap)
            {
                found++;
                clearance += Math.Abs(gap.Si - 0.052) <= gap.Doubt.HalfWidth ? 1 : 0;
            }
        }

        Assert.InRange(found, 0.98 * Loops, Loops);
        Assert.InRange(rate / (double)Loops, 0.90, 0.99);
        Assert.InRange(friction / (double)Loops, 0.90, 0.99);
        Assert.InRange(clearance / (double)found, 0.88, 0.995);
    }

    // Leaves rub harder under load: half the loop is 40 N at the least load and 120 N at the greatest.
    [Fact]
    public void A_loop_that_widens_is_said()
    {
        double Force(double x, bool down) => 3200.0 + (22500.0 * x) + ((80.0 + (1000.0 * x)) * (down ? -1.0 : 1.0)) + (2.0 * Math.Sin(1e4 * x));
        var sheet = Sheet(Both(Steps(-40, 40, 9), Force), null);
        Assert.Contains("is 40 N at the lowest load read and 120 N", sheet.Notes.Single(n => n.Id == "loop-widens").Text, StringComparison.Ordinal);
        Assert.Equal(80.0, sheet.Friction.Si, 2.0);
    }

    [Fact]
    public void Readings_of_no_suspension_are_refused_with_advice()
    {
        string Refused(Func<WheelRateSheet> of) => Assert.Throws<RefusedValueException>(of).Message;
        var loop = Both(Steps(-30, 30, 7), Planted(null, null));
        Assert.Contains("coming down", Refused(() => Sheet([.. loop.Where(r => !r.IsLowering)], null)), StringComparison.Ordinal);
        Assert.Contains(
            "which readings are which",
            Refused(() => Sheet([.. loop.Select(r => r with { IsLowering = !r.IsLowering })], null)),
            StringComparison.Ordinal);
        Assert.Contains(
            "as the gap shrinks", Refused(() => Sheet([.. loop.Select(r => r with { Gap = new(0.76 - r.Gap.Si) })], null)), StringComparison.Ordinal);
    }

    private static Func<double, bool, double> Planted(double? bump, double? rebound) => (x, down) =>
        3200.0 + (22500.0 * x) + (down ? -55.0 : 55.0)
        + (60000.0 * Math.Max(0.0, x - (bump ?? 9.0))) - (40000.0 * Math.Max(0.0, -x - (rebound ?? 9.0)));

    private static double[] Steps(double from, double to, int count) =>
        [.. Enumerable.Range(0, count).Select(k => 1e-3 * (from + ((to - from) * k / (count - 1))))];

    private static List<JackReading> Both(double[] travel, Func<double, bool, double> force) =>
        [.. new[] { false, true }.SelectMany(down => travel.Select(x => new JackReading(new(Rest - x), new(force(x, down)), down)))];

    private static WheelRateSheet Sheet(IReadOnlyList<JackReading> readings, Amount<Length>? rest) => WheelRateSheet.Of(readings, rest);
}
