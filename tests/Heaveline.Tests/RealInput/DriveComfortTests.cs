using System.Globalization;
using Heaveline.Measures.Comfort;
using Heaveline.Quantities;
using Heaveline.Tests.Measures;

namespace Heaveline.Tests.RealInput;

/// <summary>
/// Comfort numbers of two measured drives: a paratransit shuttle (phone lying flat, 198.59 Hz, 420 s, z up, MIT licence, wdzhong/vehsense-backend)
/// and a car on a main road (dash camera, 104.26 Hz, 60 s, z down, MIT licence, Schafer and others, arXiv:1812.05752). Neither sensor is on a seat:
/// what is evaluated is the body where it was fixed. Gravity is taken off as the mean of the record; the scale errors (3.3 and 1.1 %, seen in
/// gravity) are left as they are.
/// </summary>
/// <remarks>
/// The expected numbers were computed apart from this program with NumPy and SciPy: zero-padded Fourier transform, the exact transfer function, the
/// drive's own mean rate, nothing left out at the start.
/// </remarks>
public class DriveComfortTests
{
    // The car's rate shows no more than 0.4 × 104.26 Hz; the standard's band asks for 63 Hz. Above it the filter is not held to the weighting.
    private const double CarReach = 41.7;

    // Drive; axis; sign of z up; the highest frequency; a_w, VDV, MTVV (linear), MTVV (exponential), peak; allowed share of each.
    public static TheoryData<string, string, double, double?, double[], double> Drives => new()
    {
        { "shuttle-200hz-a", "acc.csv", 1.0, null, [0.48568, 4.7460, 2.7470, 2.4163, 9.8430], 0.003 },
        // Above 41.7 Hz lies 1.6 % of the weighted power: the filter's own freedom there shows in the peak.
        { "car-highway-104hz", "imu.csv", -1.0, CarReach, [0.41328, 2.6649, 1.8967, 1.5637, 4.9018], 0.01 },
    };

    [Theory, MemberData(nameof(Drives))]
    public void Weighted_vertical_agrees_with_the_exact_transfer_function_by_fourier(
        string drive, string file, double up, double? reach, double[] expected, double share)
    {
        var weighted = WeightedAcceleration.From(DriveColumns.Of(drive, file).LessMean("az", up), Weightings.Wk, reach);
        var evaluation = Evaluation.From(weighted);
        double[] found = [weighted.Rms, weighted.VibrationDose, weighted.LinearMtvv, weighted.ExponentialMtvv, weighted.Peak];
        Write(string.Create(
            CultureInfo.InvariantCulture,
            $"{drive}: {weighted.Samples.SamplingRate:F3} Hz, a_w {found[0]:F5}, VDV {found[1]:F4}, MTVV {found[2]:F4} / {found[3]:F4}, "
            + $"peak {found[4]:F4}, crest {weighted.CrestFactor:F2}, VDV ratio {evaluation.DoseRatio:F3}, MTVV ratio "
            + $"{evaluation.RunningRatio:F3}. {evaluation.Words}"));
        Assert.All(found.Zip(expected), pair => Assert.InRange(pair.First / pair.Second, 1.0 - share, 1.0 + share));

        // Both ride over shocks that an r.m.s. hides.
        Assert.False(evaluation.RmsIsEnough);
        Assert.True(evaluation.ReportVibrationDose && evaluation.ReportRunningRms);
    }

    [Fact]
    public void The_cars_rate_is_refused_until_its_reach_is_stated()
    {
        var record = DriveColumns.Of("car-highway-104hz", "imu.csv").LessMean("az", -1.0);
        Assert.Equal(104.264, record.SamplingRate, 1e-3);
        var refused = Assert.Throws<RefusedValueException>(() => WeightedAcceleration.From(record, Weightings.Wk));
        Assert.Equal("sampling rate", refused.What);
        Assert.Contains("157.7", refused.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// Two figures go about for these records, 0.474 and 0.412 m/s², with neither method nor author. The car's is the plain one (0.3 % off). The
    /// shuttle's is 2.4 % below the plain one and is met, to three digits, when its samples are joined by straight lines and read at 200 Hz. At a
    /// drifting place between samples that leaves √((2 + cos 2πf/f_s)/3) of a wave, 2 % less at 16 Hz and 8 % at 31.5 Hz, and three quarters of this
    /// ride's weighted power lie above 8 Hz. The plain figure is the right one. A bilinear filter at the drive's own rate gives the shuttle 0.4737
    /// too (SciPy), but the car then 0.396.
    /// </summary>
    [Fact]
    public void The_figures_that_go_about_are_met_and_the_difference_has_a_reason()
    {
        var car = WeightedAcceleration.From(DriveColumns.Of("car-highway-104hz", "imu.csv").LessMean("az", -1.0), Weightings.Wk, CarReach).Rms;
        var shuttle = DriveColumns.Of("shuttle-200hz-a", "acc.csv");
        var plain = WeightedAcceleration.From(shuttle.LessMean("az"), Weightings.Wk).Rms;
        var alongLines = WeightedAcceleration.From(shuttle.ReadAlongLines("az", 200.0), Weightings.Wk).Rms;
        Write($"car {car:F5}; shuttle {plain:F5}, along straight lines at 200 Hz {alongLines:F5}");
        Assert.Equal(1.0, car / 0.412, 0.02);
        Assert.Equal(0.474, alongLines, 5e-4);
        Assert.InRange(plain / 0.474, 1.02, 1.03);
    }

    [Theory, MemberData(nameof(Drives))]
    public void The_first_seconds_and_a_drifting_mean_hardly_count(
        string drive, string file, double up, double? reach, double[] expected, double share)
    {
        Assert.True(expected[0] * share > 0.0);
        var record = DriveColumns.Of(drive, file).LessMean("az", up);
        var weighted = WeightedAcceleration.From(record, Weightings.Wk, reach);
        var later = weighted.Samples.Values[(int)(5.0 * record.SamplingRate)..];
        Assert.Equal(1.0, Math.Sqrt(later.ToArray().Average(a => a * a)) / weighted.Rms, 0.005);

        // With gravity left in, the filter gets a step of 9.5 m/s² at its start.
        double[] withGravity = [.. record.Values.ToArray().Select(value => value + 9.6)];
        Assert.True(
            WeightedAcceleration.From(SampledAcceleration.Of(withGravity, record.SamplingRate), Weightings.Wk, reach).Rms > weighted.Rms * 1.01);
    }

    // r.m.s. in 0.5-3, 3-8, 8-20 and 20-40 Hz by scipy.signal.welch, 4 s pieces; the same by Welch and the factor.
    [Theory]
    [InlineData("shuttle-200hz-a", "acc.csv", 0.27035, 0.17942, 0.45846, 0.29840, 0.48672)]
    [InlineData("car-highway-104hz", "imu.csv", 0.24519, 0.15849, 0.40545, 0.22761, 0.42992)]
    public void Spectra_have_the_level_of_an_independent_program(
        string drive, string file, double body, double between, double wheel, double above, double weighted)
    {
        var record = DriveColumns.Of(drive, file).LessMean("az");
        var spectrum = AccelerationSpectrum.Of(record);
        double Band(double from, double to) => Math.Sqrt(spectrum.MeanSquare(from, to));
        Assert.Equal(
            [body, between, wheel, above],
            [Band(0.5, 3.0), Band(3.0, 8.0), Band(8.0, 20.0), Band(20.0, 40.0)],
            (a, b) => Math.Abs(a / b - 1.0) < 2e-3);
        Assert.Equal(1.0, spectrum.WeightedRms(Weightings.Wk) / weighted, 2e-3);

        // All the pieces together hold the record: its mean square, to what half a piece at either end and the pieces' own means take.
        Assert.Equal(1.0, spectrum.MeanSquare(0.0, double.PositiveInfinity) / record.Values.ToArray().Average(a => a * a), 0.07);
        var (low, high) = spectrum.IntervalFactors(0.95);
        Write(string.Create(
            CultureInfo.InvariantCulture,
            $"{drive}: {spectrum.Pieces} pieces, ν {spectrum.DegreesOfFreedom:F0}, 95 %: {low:F2} to {high:F2}; "
            + $"0.5-3 Hz {Band(0.5, 3.0):F3}, 3-8 {Band(3.0, 8.0):F3}, 8-20 {Band(8.0, 20.0):F3}, 20-40 {Band(20.0, 40.0):F3} m/s²"));
    }

    /// <summary>
    /// Pitch from the gyro, differentiated. Between 0.5 and 3 Hz it is the body's (0.142 rad/s² by SciPy, ω²·G of the rate); above, the rest of the
    /// phone's own motion, growing with ω², hides it. That is why pitch acceleration from a phone needs an upper limit,
    /// and why no We value is asked of it here.
    /// </summary>
    [Fact]
    public void The_shuttle_pitches_at_about_five_quarters_of_a_hertz()
    {
        var rate = DriveColumns.Of("shuttle-200hz-a", "gyro.csv").LessMean("gy");
        var values = rate.Values.ToArray();
        double[] change = [.. values.Skip(2).Zip(values, (later, earlier) => 0.5 * rate.SamplingRate * (later - earlier))];
        var pitch = AccelerationSpectrum.Of(SampledAcceleration.Of(change, rate.SamplingRate));
        var body = Math.Sqrt(pitch.MeanSquare(0.5, 3.0));
        var all = Math.Sqrt(pitch.MeanSquare(0.5, 20.0));
        var rates = AccelerationSpectrum.Of(rate);
        var peak = rates.FrequencyOf(Enumerable.Range(2, 18).MaxBy(k => rates.Density[k]));
        Write($"pitch acceleration r.m.s. 0.5-3 Hz {body:F4}, 0.5-20 Hz {all:F3} rad/s²; pitch rate peaks at {peak:F2} Hz");
        Assert.Equal(0.1417, body, 0.0015);
        Assert.Equal(1.25, peak, 0.26);
        Assert.True(all > 10.0 * body);
    }

    private static void Write(string line) => TestContext.Current.TestOutputHelper?.WriteLine(line);
}
