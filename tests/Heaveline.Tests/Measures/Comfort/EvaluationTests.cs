using Heaveline.Measures.Comfort;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures.Comfort;

/// <summary>Which evaluation applies, totals and reactions; factors and limits as in ISO 2631-1, partly recalled (see the types).</summary>
public class EvaluationTests
{
    /// <summary>One hit of 0.1 s in 60 s: crest factor √600, MTVV/a_w √60, VDV ratio 600^¼.</summary>
    [Fact]
    public void A_single_hit_asks_for_both_other_measures_and_says_why()
    {
        var values = new double[60_000];
        values.AsSpan(30_000, 100).Fill(2.0);
        var evaluation = Evaluation.From(new WeightedAcceleration(Weightings.Wk, SampledAcceleration.Of(values, 1000.0)));
        Assert.Equal(Math.Sqrt(600.0), evaluation.CrestFactor!.Value, 1e-9);
        Assert.Equal(Math.Sqrt(60.0), evaluation.RunningRatio!.Value, 1e-9);
        Assert.Equal(Math.Pow(600.0, 0.25), evaluation.DoseRatio!.Value, 1e-9);
        Assert.Equal([EvaluationReason.CrestFactor, EvaluationReason.RunningRms, EvaluationReason.VibrationDose], evaluation.Reasons);
        Assert.Equal(
            "The weighted r.m.s. hides shocks (crest factor 24.5, above 9, MTVV 7.75 times the r.m.s., above 1.5, VDV 4.95 times a_w·T^¼, "
            + "above 1.75): report MTVV and VDV beside it.",
            evaluation.Words);
    }

    /// <summary>Twice as strong for one of three seconds: MTVV asks, crest factor and dose do not.</summary>
    [Fact]
    public void A_rough_second_asks_for_the_running_rms_only()
    {
        var values = Enumerable.Range(0, 6000).Select(i => Math.Sin(2.0 * Math.PI * 5.0 * i / 1000.0) * (i / 1000 == 3 ? 2.5 : 1.0)).ToArray();
        var evaluation = Evaluation.From(new WeightedAcceleration(Weightings.Wk, SampledAcceleration.Of(values, 1000.0)));
        Assert.Equal([EvaluationReason.RunningRms], evaluation.Reasons);
        Assert.True(evaluation.ReportRunningRms);
        Assert.False(evaluation.ReportVibrationDose);
    }

    [Theory]
    [InlineData(0.0, "not uncomfortable")]
    [InlineData(0.3149, "not uncomfortable")]
    [InlineData(0.315, "a little uncomfortable")]
    [InlineData(0.55, "a little uncomfortable, fairly uncomfortable")]
    [InlineData(0.9, "fairly uncomfortable, uncomfortable")]
    [InlineData(1.3, "uncomfortable, very uncomfortable")]
    [InlineData(2.0, "very uncomfortable")]
    [InlineData(2.2, "very uncomfortable, extremely uncomfortable")]
    [InlineData(9.0, "extremely uncomfortable")]
    public void Several_reactions_may_apply_at_once(double total, string words) =>
        Assert.Equal(words, string.Join(", ", ComfortReaction.Of(total).Select(reaction => reaction.Words)));

    [Fact]
    public void Every_total_has_at_least_one_reaction()
    {
        for (var total = 0.0; total < 4.0; total += 0.001)
        {
            Assert.InRange(ComfortReaction.Of(total).Count, 1, 3);
        }

        Assert.Throws<RefusedValueException>(() => ComfortReaction.Of(double.NaN));
    }

    /// <summary>Arithmetic with k: seat 1, backrest x 0.8, feet z 0.4, pitch 0.4 m/rad.</summary>
    [Fact]
    public void The_comfort_total_joins_points_and_rotations_with_their_factors()
    {
        var total = VibrationTotal.ForComfort(
        [
            Rms(MeasuringPoint.Seat, MotionAxis.Z, 0.5),
            Rms(MeasuringPoint.Seat, MotionAxis.Pitch, 0.5),
            Rms(MeasuringPoint.Backrest, MotionAxis.X, 0.3),
            Rms(MeasuringPoint.Feet, MotionAxis.Z, 0.8),
        ]);
        Assert.Equal([0.5, 0.2, 0.24, 0.32], total.Points.Select(point => Math.Round(point.Value, 12)));
        Assert.Equal(Math.Sqrt(0.25 + 0.04 + 0.0576 + 0.1024), total.Value, 1e-12);
        Assert.Equal(8, total.Absent.Count);
        Assert.DoesNotContain(total.Absent, at => at.Words == "seat pitch");
    }

    [Fact]
    public void Totals_refuse_an_axis_given_twice_and_none_at_all()
    {
        var z = Rms(MeasuringPoint.Seat, MotionAxis.Z, 0.5);
        Assert.Throws<RefusedValueException>(() => VibrationTotal.ForComfort([z, z]));
        Assert.Throws<RefusedValueException>(() => VibrationTotal.ForComfort([]));
        Assert.Throws<RefusedValueException>(() => PointAxis.Of(MeasuringPoint.Feet, MotionAxis.Yaw));
        Assert.Throws<RefusedValueException>(() => z with { Rms = -1.0 });
    }

    [Fact]
    public void The_twelve_axes_are_each_found_by_point_and_axis()
    {
        Assert.Equal(12, PointAxis.All.Distinct().Count());
        foreach (var at in PointAxis.All)
        {
            Assert.Same(at, PointAxis.Of(at.Point, at.Axis));
            Assert.Equal(at.IsRotation, at.Weighting == Weightings.We);
        }
    }

    private static AxisRms Rms(MeasuringPoint point, MotionAxis axis, double rms) => new() { At = PointAxis.Of(point, axis), Rms = rms };
}
