using System.Numerics;
using Heaveline.Measures.Comfort;
using Heaveline.Quantities;

namespace Heaveline.Tests.Measures.Comfort;

/// <summary>The digital filters against the transfer function they stand for (ISO 8041-1).</summary>
public class WeightingFilterTests
{
    public static TheoryData<string, double> NamesAndRates
    {
        get
        {
            var data = new TheoryData<string, double>();
            foreach (var weighting in Weightings.All)
            {
                foreach (var rate in new[] { WeightingFilter.LowestRate(weighting.MustReach), 160.0, 200.0, 400.0, 1000.0, 1200.0, 5000.0, 20_000.0 })
                {
                    data.Add(weighting.Name, rate);
                }
            }

            return data;
        }
    }

    /// <summary>0.05 % is what the filter's own text claims; measured 0.032 % at the worst.</summary>
    [Theory, MemberData(nameof(NamesAndRates))]
    public void The_filter_keeps_to_the_weighting_in_magnitude_and_phase(string name, double rate)
    {
        var filter = WeightingFilter.Of(Named(name), rate);
        TestContext.Current.SendDiagnosticMessage(
            $"{name} {rate:G5} Hz: {100.0 * filter.WorstError.Relative:G3} % at {filter.WorstError.Frequency:G4} Hz");
        Assert.InRange(filter.WorstError.Relative, 0.0, 5e-4);
        for (var f = filter.Weighting.CheckedFrom; f < filter.UpTo; f *= 1.01)
        {
            var error = (filter.At(f) - filter.Weighting.At(f)).Magnitude / filter.Weighting.Factor(f);
            // The slack is rounding: at 20 kHz a corner at 0.06 Hz stands 2e-5 from z = 1.
            Assert.True(error <= (1.01 * filter.WorstError.Relative) + 1e-5, $"{f} Hz: {error}");
        }
    }

    /// <summary>A long sine through the samples has the amplitude and phase of the transfer function once the start has died out.</summary>
    [Theory]
    [InlineData("Wk", 200.0, 79.0)]
    [InlineData("Wk", 1000.0, 80.0)]
    [InlineData("Wd", 400.0, 1.0)]
    [InlineData("Wc", 1000.0, 5.0)]
    [InlineData("We", 160.0, 30.0)]
    [InlineData("Wj", 1000.0, 60.0)]
    [InlineData("Wb", 250.0, 6.0)]
    [InlineData("Wf", 100.0, 0.2)]
    public void A_sampled_sine_comes_out_as_the_transfer_function_says(string name, double rate, double frequency)
    {
        var weighting = Named(name);
        var settle = 30.0 / weighting.F1;
        var samples = new double[(int)(rate * settle * 1.2)];
        var rotation = 2.0 * Math.PI * frequency / rate;
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = Math.Sin(rotation * i);
        }

        var weighted = WeightingFilter.Of(weighting, rate).Weigh(SampledAcceleration.Of(samples, rate)).Samples.Values;
        var exact = weighting.At(frequency);
        for (var i = (int)(rate * settle); i < samples.Length - 13; i++)
        {
            var expected = (exact * Complex.FromPolarCoordinates(1.0, rotation * i)).Imaginary;
            Assert.Equal(expected, weighted[i], 5e-4 * exact.Magnitude);
        }
    }

    [Fact]
    public void A_rate_that_cannot_show_the_narrow_band_is_refused_with_the_lowest_that_serves()
    {
        var refused = Assert.Throws<RefusedValueException>(() => WeightingFilter.Of(Weightings.Wk, 100.0));
        Assert.Equal("sampling rate", refused.What);
        Assert.Contains("157.739", refused.Limit, StringComparison.Ordinal);
        var filter = WeightingFilter.Of(Weightings.Wk, 157.74);
        Assert.Equal(0.4 * 157.74, filter.UpTo, 1e-9);
    }

    [Fact]
    public void A_slow_log_is_taken_when_the_caller_states_how_far_it_has_to_reach()
    {
        var filter = WeightingFilter.Of(Weightings.Wk, 100.0, 40.0);
        Assert.Equal(40.0, filter.UpTo, 1e-9);
        Assert.InRange(filter.WorstError.Relative, 0.0, 5e-4);
        Assert.Throws<RefusedValueException>(() => WeightingFilter.Of(Weightings.Wk, 99.0, 40.0));
        Assert.Throws<RefusedValueException>(() => WeightingFilter.Of(Weightings.Wk, 1000.0, 81.0));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1000.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void An_impossible_rate_is_refused(double rate) =>
        Assert.Throws<RefusedValueException>(() => WeightingFilter.Of(Weightings.Wd, rate));

    [Fact]
    public void A_record_at_another_rate_than_the_filters_is_refused() =>
        Assert.Throws<RefusedValueException>(() => WeightingFilter.Of(Weightings.Wk, 1000.0).Weigh(SampledAcceleration.Of(new double[10], 500.0)));

    /// <summary>The same smooth motion logged at two rates has the same doses: the filter depends on the rate no more than its error says.</summary>
    [Fact]
    public void A_smooth_bump_has_the_same_doses_at_every_rate()
    {
        var slow = Bump(200.0);
        var fast = Bump(4000.0);
        Assert.Equal(fast.Rms, slow.Rms, 1e-4 * fast.Rms);
        Assert.Equal(fast.VibrationDose, slow.VibrationDose, 1e-4 * fast.VibrationDose);

        static WeightedAcceleration Bump(double rate)
        {
            // 3 m/s² at 8 Hz in a Gaussian envelope of 0.15 s around 2 s: nothing of weight above 20 Hz.
            var samples = Enumerable.Range(0, (int)(8.0 * rate)).Select(i =>
            {
                var t = (i / rate) - 2.0;
                return 3.0 * Math.Sin(2.0 * Math.PI * 8.0 * t) * Math.Exp(-t * t / (2.0 * 0.15 * 0.15));
            });
            return WeightedAcceleration.From(SampledAcceleration.Of([.. samples], rate), Weightings.Wk);
        }
    }

    /// <summary>A filter from rest gives nothing more than a few look-ahead taps before the motion begins.</summary>
    [Fact]
    public void Nothing_comes_out_before_the_taps_can_see_the_motion()
    {
        var samples = new double[200];
        samples.AsSpan(100).Fill(1.0);
        var weighted = WeightingFilter.Of(Weightings.Wk, 1000.0).Weigh(SampledAcceleration.Of(samples, 1000.0)).Samples.Values;
        Assert.Equal(0.0, weighted[87]);
        Assert.NotEqual(0.0, weighted[88]);
    }

    [Fact]
    public void Filtering_in_place_gives_the_same_samples()
    {
        var random = new Random(7);
        var samples = Enumerable.Range(0, 500).Select(_ => random.NextDouble() - 0.5).ToArray();
        var filter = WeightingFilter.Of(Weightings.Wj, 1000.0);
        var apart = new double[500];
        filter.Run(samples, apart);
        filter.Run(samples, samples);
        Assert.Equal(apart, samples);
    }

    private static Weighting Named(string name) => Weightings.All.Single(w => w.Name == name);

    [Fact]
    public void A_filter_reaches_the_end_of_its_band_at_any_rate()
    {
        var random = new Random(5);
        for (var n = 0; n < 1000; n++)
        {
            var rate = 60.0 + (60.0 * random.NextDouble());
            Assert.Equal(
                WeightingFilter.UsableBand * rate, WeightingFilter.Of(Weightings.Wd, rate, WeightingFilter.UsableBand * rate).UpTo, 9);
        }
    }
}
