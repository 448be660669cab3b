using Heaveline.Measures.Comfort;

namespace Heaveline.References.Iso2631;

/// <summary>Worked examples and plain arithmetic with the equations of ISO 2631-1; sources and status in source.md.</summary>
public class MeasureTests
{
    /// <summary>Comfort takes k = 1 at the seat, ISO 2631-1 clause 8.2.2: the plain root sum of squares (arithmetic).</summary>
    [Fact]
    public void The_comfort_total_of_the_seat_has_no_factor()
    {
        var total = VibrationTotal.ForComfort(Seat(0.3, 0.4, 1.2));
        Assert.Equal(1.3, total.Value, 1e-12);
        Assert.Equal(9, total.Absent.Count);
    }

    /// <summary>
    /// A sine of 1 m/s² for 60 s, taken as already weighted (arithmetic): r.m.s. 0.7071, VDV (3/8·60)^¼ = 2.1779, ratio 1.5^¼ = 1.1067.
    /// </summary>
    [Fact]
    public void A_weighted_sine_has_the_rms_and_doses_of_the_equations()
    {
        var weighted = new WeightedAcceleration(Weightings.Wk, Sine(1.0, 5.0, 60.0, 1000.0));
        Assert.Equal(0.7071, weighted.Rms, 5e-5);
        Assert.Equal(2.1779, weighted.VibrationDose, 5e-5);
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
