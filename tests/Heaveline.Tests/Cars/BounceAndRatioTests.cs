using Heaveline.Worksheets;
using Heaveline.Quantities;

namespace Heaveline.Tests.Cars;

public class BounceAndRatioTests
{
    [Fact]
    public void Counted_swings_over_time_make_a_frequency_with_its_doubt()
    {
        var sheet = BounceSheet.Of(new(10.0), new(8.0));
        Assert.Equal(1.25, sheet.Frequency.Si, 1e-12);
        // A quarter of a swing in 10 is 2.5 %, 0.3 s in 8 s 3.75 %.
        Assert.Equal(1.25 * Math.Sqrt((0.025 * 0.025) + (0.0375 * 0.0375)), sheet.Frequency.Doubt.HalfWidth, 1e-12);
        Assert.False(sheet.LooksLocked);
    }

    // Four tyres of 200 N/mm under 1330 kg: √(800 000/1330)/2π = 3.90 Hz.
    [Fact]
    public void A_locked_suspension_bounces_on_its_tyres_at_nearly_4_hertz()
    {
        var sheet = BounceSheet.Of(new(10.0), new(2.6), new Amount<Mass>(1330.0), new Amount<Stiffness>(800e3));
        Assert.Equal(3.90, sheet.Locked!.Value, 0.005);
        Assert.True(sheet.LooksLocked);
        Assert.Contains(sheet.Notes, n => n.Id == "locked" && n.Text.Contains("3.9 Hz", StringComparison.Ordinal));
        Assert.True(BounceSheet.Of(new(10.0), new(2.6)).LooksLocked);
    }

    [Fact]
    public void A_sweep_gives_the_ratio_inside_the_interval_of_its_fit()
    {
        double[] wheel = [-0.06, -0.04, -0.02, 0.0, 0.02, 0.04, 0.06];
        double[] slips = [0.4e-3, -0.3e-3, 0.1e-3, 0.0, -0.2e-3, 0.5e-3, -0.3e-3];
        var sheet = Sheet(wheel, [.. wheel.Select((s, k) => (0.62 * s) + (0.5 * 0.8 * s * s) + slips[k])]);
        var ratio = sheet.Ratio.AtReference;
        Assert.InRange(ratio.Doubt.HalfWidth, 1e-3, 0.05);
        Assert.Equal(0.62, ratio.Si, ratio.Doubt.HalfWidth);
        Assert.Equal(0.8, sheet.Ratio.PerTravel.Si, sheet.Ratio.PerTravel.Doubt.HalfWidth);
        Assert.True(sheet.WorstMiss < 0.7e-3);
    }

    // Five stops exactly on 0.6·s + 3 mm: the ratio is 0.6 and the scale stood 3 mm off.
    [Fact]
    public void A_scale_that_was_not_at_zero_is_taken_off_and_said()
    {
        double[] wheel = [-0.04, -0.02, 0.0, 0.02, 0.04];
        var sheet = Sheet(wheel, [.. wheel.Select(s => (0.6 * s) + 0.003)]);
        Assert.Equal(0.6, sheet.Ratio.AtReference.Si, 1e-9);
        Assert.Equal(0.003, sheet.Offset, 1e-12);
        Assert.Equal(0.0, sheet.WorstMiss, 1e-9);
        Assert.Contains("would read 3.0 mm", sheet.Notes.Single(n => n.Id == "offset").Text);
        // A tenth of a millimetre is a reading's own doubt.
        Assert.Equal(0.0, Sheet(wheel, [.. wheel.Select(s => (0.6 * s) + 0.0001)]).Offset);
    }

    [Fact]
    public void A_ratio_upside_down_is_named()
    {
        var sheet = Sheet([-0.03, 0.0, 0.03], [-0.05, 0.0, 0.05]);
        Assert.Contains(sheet.Notes, n => n.Id == "upside-down");
    }

    // Two millimetres of doubt at ± 40 mm, no scatter: U(r) = 2/√Σs², Σ 2·1600 mm² + 2·400 mm².
    [Fact]
    public void A_tapes_doubt_counts_where_the_sweep_lies_on_a_line()
    {
        double[] wheel = [-0.04, -0.02, 0.02, 0.04];
        var sheet = RatioSheet.Of(
            [.. wheel.Select(s => new Amount<Length>(s))], [.. wheel.Select(s => new Amount<Length>(0.6 * s, new Doubt(0.002)))]);
        Assert.Equal(0.002 / Math.Sqrt(4e-3), sheet.Ratio.AtReference.Doubt.HalfWidth, 1e-9);
    }

    // Two unknowns and stops even about rest: Σ x·S²/2 over Σ S⁴/4, so that U(r₁) = 2·2 mm·√ΣS⁴/ΣS⁴ = 4 mm/√ΣS⁴.
    [Fact]
    public void A_tapes_doubt_counts_in_the_change_per_travel_too()
    {
        double[] wheel = [-0.04, -0.02, 0.02, 0.04];
        var sheet = RatioSheet.Of(
            [.. wheel.Select(s => new Amount<Length>(s))], [.. wheel.Select(s => new Amount<Length>(0.6 * s, new Doubt(0.002)))]);
        Assert.Equal(0.004 / Math.Sqrt(wheel.Sum(s => Math.Pow(s, 4))), sheet.Ratio.PerTravel.Doubt.HalfWidth, 1e-9);
    }

    private static RatioSheet Sheet(double[] wheel, double[] element) =>
        RatioSheet.Of([.. wheel.Select(s => new Amount<Length>(s))], [.. element.Select(x => new Amount<Length>(x))]);
}
