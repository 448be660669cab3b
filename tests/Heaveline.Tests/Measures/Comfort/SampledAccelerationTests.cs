using Heaveline.Measures.Comfort;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures.Comfort;

/// <summary>Records and running r.m.s.; plain arithmetic, no source.</summary>
public class SampledAccelerationTests
{
    [Fact]
    public void Regular_times_with_rounded_print_give_their_rate()
    {
        double[] times = [.. Enumerable.Range(0, 500).Select(i => Math.Round(10.0 + (i / 104.0), 4))];
        var record = SampledAcceleration.From(times, new double[500]);
        Assert.Equal(104.0, record.SamplingRate, 1e-3);
        Assert.Equal(500.0 / record.SamplingRate, record.Duration);
    }

    [Fact]
    public void A_gap_is_refused_by_the_sample_where_it_shows()
    {
        double[] times = [0.0, 0.01, 0.02, 0.04, 0.05, 0.06];
        var refused = Assert.Throws<RefusedValueException>(() => SampledAcceleration.From(times, new double[6]));
        Assert.Equal("time of sample 1", refused.What);
    }

    [Theory]
    [InlineData(new[] { 0.0, 0.0, 0.0 })]
    [InlineData(new[] { 0.02, 0.01, 0.0 })]
    [InlineData(new[] { 0.0, 0.01 })]
    [InlineData(new[] { 0.0, double.NaN, 0.02 })]
    public void Times_that_stand_run_backwards_or_are_too_few_are_refused(double[] times) =>
        Assert.Throws<RefusedValueException>(() => SampledAcceleration.From(times, new double[3]));

    [Fact]
    public void A_sample_that_is_no_number_is_named()
    {
        var refused = Assert.Throws<RefusedValueException>(() => SampledAcceleration.Of([0.0, 1.0, double.NaN], 100.0));
        Assert.Equal("sample 2", refused.What);
    }

    [Fact]
    public void The_record_keeps_its_own_copy()
    {
        double[] values = [1.0, 2.0];
        var record = SampledAcceleration.Of(values, 100.0);
        values[0] = 5.0;
        Assert.Equal(1.0, record.Values[0]);
    }

    /// <summary>A constant 2 from rest: the window fills as √(t/τ), the average as √(1 − e^(−t/τ)).</summary>
    [Theory]
    [InlineData(100.0)]
    [InlineData(99.7)]
    public void The_running_rms_of_a_constant_fills_from_rest(double rate)
    {
        var record = SampledAcceleration.Of([.. Enumerable.Repeat(2.0, 300)], rate);
        var linear = RunningRms.Linear(record);
        var exponential = RunningRms.Exponential(record);
        Assert.Equal(2.0 * Math.Sqrt(50.0 / rate), linear[49], 1e-12);
        Assert.Equal(2.0, linear[150], 1e-12);
        Assert.Equal(2.0 * Math.Sqrt(1.0 - Math.Exp(-50.0 / rate)), exponential[49], 1e-12);
    }

    [Fact]
    public void A_record_at_rest_has_no_crest_factor_and_nothing_to_evaluate()
    {
        var weighted = WeightedAcceleration.From(SampledAcceleration.Of(new double[1000], 1000.0), Weightings.Wk);
        Assert.Null(weighted.CrestFactor);
        Assert.Equal(0.0, weighted.VibrationDose);
        var evaluation = Evaluation.From(weighted);
        Assert.True(evaluation.RmsIsEnough);
        Assert.StartsWith("Nothing moved", evaluation.Words, StringComparison.Ordinal);
    }
}
