using Heaveline.Drives;
using Heaveline.Measures.Comfort;
using Heaveline.Studies;

namespace Heaveline.Tests.Drives;

/// <summary>The floor's vibration in a planted drive against the weightings themselves, and what the rate forbids.</summary>
public class DriveComfortTests
{
    private static PlantedMotion Sine(double frequency, double amplitude, double rate = 200.0)
    {
        const double step = 0.001;
        var n = 90_000;
        double[] At(Func<double, double> of) => [.. Enumerable.Range(0, n).Select(i => of(i * step))];
        return new PlantedMotion
        {
            Step = step,
            Speed = At(t => 9.0 + (4.0 * Math.Sin(2.0 * Math.PI * t / 17.0)) + (2.0 * Math.Sin(2.0 * Math.PI * t / 7.3))),
            Yaw = At(t => (0.12 * Math.Sin(2.0 * Math.PI * t / 13.0)) + (0.05 * Math.Sin(2.0 * Math.PI * t / 5.1))),
            Vertical = At(t => amplitude * Math.Sin(2.0 * Math.PI * frequency * t)),
            Pitch = At(t => 0.004 / (2.0 * Math.PI * 1.25) * Math.Sin(2.0 * Math.PI * 1.25 * t)),
            PitchRate = At(t => 0.004 * Math.Cos(2.0 * Math.PI * 1.25 * t)),
            Rate = rate,
            Jitter = 0.0,
            Noise = 0.0,
            TurnNoise = 0.0,
            Hum = 0.0,
        };
    }

    private static DriveComfort? Of(PlantedMotion motion)
    {
        var drive = Drive.Of(motion.Log, TestContext.Current.CancellationToken);
        return DriveComfort.Of(drive, Trust.Of(drive), TestContext.Current.CancellationToken);
    }

    [Theory]
    [InlineData(2.0)]
    [InlineData(5.0)]
    [InlineData(12.5)]
    [InlineData(31.5)]
    public void A_sine_of_the_floor_comes_out_as_the_weighting_makes_it(double frequency)
    {
        var comfort = Of(Sine(frequency, 1.0))!;
        var vertical = comfort.Axes[0];
        // Closed forms of a sine that lasts: RMS, dose (∫a⁴dt)^¼ = (3/8·T)^¼ of its amplitude, crest √2.
        var amplitude = Weightings.Wk.At(frequency).Magnitude;
        Assert.Equal((MotionAxis.Z, "Wk"), (vertical.Axis, vertical.Weighting.Name));
        Assert.Equal(amplitude / Math.Sqrt(2.0), vertical.Rms, 5e-3 * amplitude);
        Assert.Equal(amplitude * Math.Pow(0.375 * comfort.Length, 0.25), vertical.Dose, 5e-3 * vertical.Dose);
        // The filter begins at rest: the first swing may be larger.
        Assert.InRange(vertical.Mtvv / vertical.Rms, 0.999, 1.06);
        Assert.InRange(vertical.CrestFactor!.Value / Math.Sqrt(2.0), 0.995, 1.3);
        // Pitch acceleration 2πf times the rate, by We.
        var pitch = comfort.Axes.Single(a => a.Axis == MotionAxis.Pitch);
        var turn = 0.004 * 2.0 * Math.PI * 1.25 * Weightings.We.At(1.25).Magnitude / Math.Sqrt(2.0);
        Assert.Equal(turn, pitch.Rms, 0.02 * turn);
    }

    [Theory]
    [InlineData(8.9, false)]
    [InlineData(9.1, true)]
    public void Above_a_crest_factor_of_nine_the_root_mean_square_alone_is_said_not_to_be_enough(double crest, bool isSaid)
    {
        var axis = new ComfortAxis { Axis = MotionAxis.Z, Weighting = Weightings.Wk, Rms = 0.5, Mtvv = 1.0, Dose = 2.0, Peak = crest * 0.5 };
        Assert.Equal(
            isSaid ? " Its crest factor is 9.1, above 9: the RMS alone is not enough then (ISO 2631-1, 6.2), MTVV and VDV belong beside it." : "",
            FloorTable.Shocks(axis));
    }

    [Fact]
    public void The_feets_total_has_all_three_axes_with_their_factors()
    {
        var comfort = Of(Sine(5.0, 2.0))!;
        // Fore-aft and lateral move slowly and gravity leans by the pitch: the vertical, times 0.4, is nearly all of it.
        Assert.InRange(comfort.Feet!.Value / (0.4 * comfort.Axes[0].Rms), 1.0, 1.05);
        Assert.Equal(5, comfort.Axes.Length);
    }

    [Fact]
    public void What_the_rate_cuts_off_is_bounded_and_a_slow_log_has_no_value()
    {
        // White vibration up to the end of the band: what is missing above is as strong.
        var comfort = Of(Sine(5.0, 1.0, 100.0) with { Noise = 0.5 })!;
        Assert.Equal(40.0, comfort.Top, 0.1);
        var density = 2.0 * 0.25 * 1.01 * 1.01 / 100.0;
        var lost = Enumerable.Range(0, 400).Sum(k => density * 0.1 * Math.Pow(Weightings.Wk.At(40.05 + (0.1 * k)).Magnitude, 2.0));
        Assert.Equal(Math.Sqrt(1.0 + (lost / Math.Pow(comfort.Axes[0].Rms, 2.0))) - 1.0, comfort.Lost, 0.1 * comfort.Lost);
        Assert.Equal(0.0, Of(Sine(5.0, 1.0, 220.0))!.Lost);
        Assert.Null(Of(Sine(5.0, 1.0, 50.0)));
    }
}
