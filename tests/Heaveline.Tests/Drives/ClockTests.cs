using Heaveline.Drives;

namespace Heaveline.Tests.Drives;

public class ClockTests
{
    private static double[] Even(int count, double rate) => [.. Enumerable.Range(0, count).Select(i => i / rate)];

    private static TimedTrack Timed(double[] times, double[]? values = null) =>
        TimedTrack.Of(PlantedDrive.Track(SensorKind.Speed, times, [values ?? [.. times.Select((_, i) => i * 0.37 % 1.0)]]))!;

    [Fact]
    public void An_even_clock_has_its_rate_and_no_fault()
    {
        var clock = Timed(Even(1000, 198.6)).Clock;
        Assert.Equal(198.6, clock.Rate, 6);
        Assert.InRange(clock.Jitter, 0.0, 1e-12);
        Assert.Empty(clock.Gaps);
        Assert.Empty(clock.StepsBack);
        Assert.False(clock.IsBatched);
    }

    [Fact]
    public void A_missing_second_is_a_gap()
    {
        double[] times = [.. Even(1000, 100).Where(t => t is < 4.0 or > 5.0)];
        var gap = Assert.Single(Timed(times).Clock.Gaps);
        Assert.Equal((3.99, 5.01), (gap.From, gap.To));
    }

    [Fact]
    public void A_clock_set_back_is_moved_on_and_said()
    {
        double[] times = [.. Even(1000, 100).Select(t => t < 4.995 ? t : t - 2.0)];
        var timed = Timed(times);
        Assert.Equal(1.99, Assert.Single(timed.Clock.StepsBack), 9);
        Assert.All(timed.Times.Select((t, i) => t - (i / 100.0)), off => Assert.InRange(off, -1e-9, 1e-9));
    }

    [Fact]
    public void A_row_written_twice_counts_once()
    {
        var times = Even(100, 100).ToList();
        var values = times.Select(t => t * t).ToList();
        times.Insert(40, times[40]);
        values.Insert(40, values[40]);
        var timed = Timed([.. times], [.. values]);
        Assert.Equal((1, 100), (timed.Clock.Repeats, timed.Times.Length));
    }

    [Fact]
    public void Two_samples_of_one_stamp_are_spread_evenly()
    {
        var times = Even(100, 100);
        times[41] = times[40];
        var timed = Timed(times);
        Assert.Equal(100, timed.Times.Length);
        Assert.Equal(0.41, timed.Times[41], 9);
    }

    [Theory]
    [InlineData(10)]
    [InlineData(25)]
    public void Batches_are_drawn_again_as_a_straight_line(int batch)
    {
        // Each sample bears the stamp of the last one of its batch.
        double[] times = [.. Enumerable.Range(0, 2000).Select(i => ((i / batch * batch) + batch - 1) / 100.0)];
        var timed = Timed(times);
        Assert.True(timed.Clock.IsBatched);
        Assert.Equal(100.0, timed.Clock.Rate, 3);
        Assert.All(timed.Times.Select((t, i) => t - (i / 100.0)), off => Assert.InRange(off, -1e-6, 1e-6));
    }

    [Fact]
    public void Bursts_of_tiny_steps_are_batches_too()
    {
        double[] times = [.. Enumerable.Range(0, 2000).Select(i => (((i / 20) + 1) * 0.2) + (i % 20 * 1e-4) - 2e-3)];
        var clock = Timed(times).Clock;
        Assert.True(clock.IsBatched);
        Assert.Equal(100.0, clock.Rate, 1);
    }

    [Fact]
    public void Batches_with_a_silence_between_keep_the_silence()
    {
        double[] even = [.. Even(4000, 100).Where(t => t is < 15.0 or >= 25.0)];
        double[] times = [.. even.Select((_, i) => even[Math.Min((i / 20 * 20) + 19, even.Length - 1)])];
        var timed = Timed(times);
        var gap = Assert.Single(timed.Clock.Gaps);
        Assert.InRange(gap.Length, 9.9, 10.1);
    }

    [Fact]
    public void Two_samples_tell_no_rate() =>
        Assert.Null(TimedTrack.Of(PlantedDrive.Track(SensorKind.Speed, [0.0, 0.01], [[1.0, 2.0]])));
}
