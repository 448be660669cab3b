using Heaveline.Drives;

namespace Heaveline.Tests.Drives;

public class EvenGridTests
{
    private static double[] Read(double logRate, double frequency, double offset = 0.0)
    {
        double[] times = [.. Enumerable.Range(0, (int)(10.0 * logRate)).Select(i => (i + offset) / logRate)];
        var track = TimedTrack.Of(PlantedDrive.Track(
            SensorKind.Speed, times, [[.. times.Select(t => Math.Sin(2.0 * Math.PI * frequency * t))]]))!;
        var grid = EvenGrid.Over(track);
        return [.. grid.Read(track)[0].Select((v, i) => v - Math.Sin(2.0 * Math.PI * frequency * grid.Time(i))).Skip(50).SkipLast(50)];
    }

    [Theory]
    [InlineData(200.0, 1.5)]
    [InlineData(200.0, 5.0)]
    [InlineData(104.3, 1.5)]
    public void Slow_motion_passes_unchanged(double rate, double frequency) =>
        Assert.All(Read(rate, frequency), off => Assert.InRange(off, -0.01, 0.01));

    [Fact]
    public void Two_sensors_whose_samples_share_no_instants_come_out_together()
    {
        var (one, other) = (Read(200.0, 7.0), Read(200.0, 7.0, 0.4));
        Assert.True(one.Zip(other).Take(800).Max(p => Math.Abs(p.First - p.Second)) < 0.02);
    }

    [Fact]
    public void What_lies_above_half_the_grids_rate_is_taken_out()
    {
        double[] times = [.. Enumerable.Range(0, 4000).Select(i => i / 400.0)];
        var track = TimedTrack.Of(PlantedDrive.Track(SensorKind.Speed, times, [[.. times.Select(t => Math.Sin(2.0 * Math.PI * 63.0 * t))]]))!;
        var grid = EvenGrid.Over(track);
        Assert.Equal(100.0, grid.Rate, 9);
        Assert.All(grid.Read(track)[0].Skip(20).SkipLast(20), v => Assert.InRange(v, -0.01, 0.01));
    }

    [Fact]
    public void A_gap_is_never_bridged()
    {
        double[] times = [.. Enumerable.Range(0, 2000).Select(i => i / 100.0).Where(t => t is < 8.0 or > 9.0)];
        var track = TimedTrack.Of(PlantedDrive.Track(SensorKind.Speed, times, [[.. times.Select(_ => 1.0)]]))!;
        var grid = EvenGrid.Over(track);
        var read = grid.Read(track)[0];
        Assert.Equal(2, grid.Covered.Length);
        Assert.Equal(0.0, read[850]);
        Assert.Equal(1.0, read[790], 9);
    }

    // The squared amplitude of a Butterworth filter of second order, 1/(1 + (f/corner)^4), met twice; its corner is prewarped.
    [Theory]
    [InlineData(0.5)]
    [InlineData(1.0)]
    [InlineData(2.0)]
    public void The_zero_phase_filter_is_its_closed_form(double ratio)
    {
        const double rate = 100.0;
        const double corner = 3.0;
        var frequency = Math.Atan(Math.Tan(Math.PI * corner / rate) * ratio) * rate / Math.PI;
        double[] wave = [.. Enumerable.Range(0, 6000).Select(i => Math.Sin(2.0 * Math.PI * frequency * i / rate))];
        var low = ZeroPhase.Low(wave, rate, corner);
        var gain = 1.0 / (1.0 + Math.Pow(ratio, 4.0));
        Assert.All(Enumerable.Range(2000, 2000), i => Assert.Equal(gain * wave[i], low[i], 6));
    }
}
