using Heaveline.Measures.Comfort;

namespace Heaveline.References.Iso2631;

/// <summary>Worked examples and plain arithmetic with the equations of ISO 2631-1; sources and status in source.md.</summary>
public class MeasureTests
{
    /// <summary>Worked example of a public library's documentation: 0.555 printed, 0.5546 recomputed.</summary>
    [Fact]
    public void Seven_bands_weighted_with_Wk_give_the_published_rms()
    {
        double[] frequencies = [1.0, 2.0, 4.0, 8.0, 16.0, 31.5, 63.0];
        double[] values = [0.20, 0.45, 0.42, 0.25, 0.12, 0.05, 0.02];
        var bands = frequencies.Zip(values, (f, a) => new BandValue { Frequency = f, Rms = a }).ToList();
        Assert.Equal(0.5546, BandValue.WeightedRms(Weightings.Wk, bands), 5e-5);
    }

    /// <summary>Worked example of the same library: 0.882 printed, 0.8821 recomputed.</summary>
    [Fact]
    public void The_health_total_of_three_axes_matches_the_published_one()
    {
        var axes = Seat(0.35, 0.28, 0.62);
        Assert.Equal(0.8821, VibrationTotal.ForHealth(axes).Value, 5e-5);
        var (at, value) = VibrationTotal.WorstForHealth(axes);
        Assert.Equal("seat z", at.Words);
        Assert.Equal(0.62, value);
    }

    /// <summary>Comfort takes k = 1 at the seat, ISO 2631-1 clause 8.2.2: the plain root sum of squares (arithmetic).</summary>
    [Fact]
    public void The_comfort_total_of_the_seat_has_no_factor()
    {
        var total = VibrationTotal.ForComfort(Seat(0.3, 0.4, 1.2));
        Assert.Equal(1.3, total.Value, 1e-12);
        Assert.Equal(9, total.Absent.Count);
    }

    /// <summary>
    /// A sine of 1 m/s² for 60 s, taken as already weighted (arithmetic): r.m.s. 0.7071, VDV (3/8·60)^¼ = 2.1779, eVDV 2.7552, ratio 1.5^¼ = 1.1067.
    /// </summary>
    [Fact]
    public void A_weighted_sine_has_the_rms_and_doses_of_the_equations()
    {
        var weighted = new WeightedAcceleration(Weightings.Wk, Sine(1.0, 5.0, 60.0, 1000.0));
        Assert.Equal(0.7071, weighted.Rms, 5e-5);
        Assert.Equal(2.1779, weighted.VibrationDose, 5e-5);
        Assert.Equal(2.7552, weighted.EstimatedVibrationDose!.Value, 5e-5);
        var evaluation = Evaluation.From(weighted);
        Assert.Equal(1.1067, evaluation.DoseRatio!.Value, 5e-5);
        Assert.Equal(Math.Sqrt(2.0), evaluation.CrestFactor!.Value, 1e-9);
        Assert.Equal(1.0, evaluation.RunningRatio!.Value, 1e-9);
        Assert.True(evaluation.RmsIsEnough);
    }

    /// <summary>Gaussian noise has VDV/(a_w T^¼) = 3^¼ = 1.3161 (fourth moment of the normal distribution).</summary>
    [Fact]
    public void Gaussian_noise_needs_no_dose_value_beside_its_rms()
    {
        var random = new Random(2631);
        var values = new double[400_000];
        for (var i = 0; i < values.Length; i++)
        {
            values[i] = Math.Sqrt(-2.0 * Math.Log(1.0 - random.NextDouble())) * Math.Cos(2.0 * Math.PI * random.NextDouble());
        }

        var evaluation = Evaluation.From(new WeightedAcceleration(Weightings.Wk, SampledAcceleration.Of(values, 1000.0)));
        Assert.Equal(1.3161, evaluation.DoseRatio!.Value, 0.005);
        Assert.True(evaluation.RmsIsEnough);
    }

    /// <summary>0.5 m/s² weighted with Wf for two hours (arithmetic; K_m read in a public script): 42.43 m/s^1.5, 14.1 %.</summary>
    [Fact]
    public void Two_hours_of_half_a_metre_per_second_squared_have_the_computed_sickness_dose()
    {
        var dose = MotionSickness.Dose(0.5, 7200.0);
        Assert.Equal(42.43, dose, 5e-3);
        Assert.Equal(14.1, MotionSickness.ShareWhoMayVomit(dose, 7200.0), 0.05);
    }

    private static List<AxisRms> Seat(double x, double y, double z) =>
    [
        new() { At = PointAxis.Of(MeasuringPoint.Seat, MotionAxis.X), Rms = x },
        new() { At = PointAxis.Of(MeasuringPoint.Seat, MotionAxis.Y), Rms = y },
        new() { At = PointAxis.Of(MeasuringPoint.Seat, MotionAxis.Z), Rms = z },
    ];

    private static SampledAcceleration Sine(double amplitude, double frequency, double duration, double rate) =>
        SampledAcceleration.Of(
            [.. Enumerable.Range(0, (int)(duration * rate)).Select(i => amplitude * Math.Sin(2.0 * Math.PI * frequency * i / rate))], rate);
}
