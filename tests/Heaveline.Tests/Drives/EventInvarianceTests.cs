using Heaveline.Drives;
using Heaveline.Drives.Events;
using Heaveline.Files.Drives;
using Heaveline.Tests.Cli;
using Heaveline.Tests.Files.Drives;

namespace Heaveline.Tests.Drives;

/// <summary>What may not change a drive's bumps: how the phone lies, when the log began, in which order its sensors stand.</summary>
public class EventInvarianceTests
{
    private static PlantedMotion Motion { get; } = new PlantedRoad
    {
        Bumps = [.. new[] { 5.0, 6.5, 8.0, 7.0 }.Select(v => (PlantedBump.Round, v))],
        Roughness = 32e-6,
    }.Driven().Motion;

    private static DriveEvent[] Of(Log log)
    {
        var drive = Drive.Of(log, TestContext.Current.CancellationToken);
        return [.. DriveEvents.Of(drive, Trust.Of(drive), new EventSettings { Wheelbase = 2.7 }).Events];
    }

    private static void AssertEqual(DriveEvent[] expected, DriveEvent[] actual, double relative, double shift = 0.0)
    {
        Assert.Equal(expected.Length, actual.Length);
        foreach (var (a, b) in expected.Zip(actual))
        {
            Assert.Equal((a.Site, a.Kind, a.IsKept), (b.Site, b.Kind, b.IsKept));
            Assert.Equal(a.Onset + shift, b.Onset, 5.0 * relative);
            Assert.Equal(a.Speed, b.Speed, relative * a.Speed);
            foreach (var (m, n) in a.Numbers.All.Zip(b.Numbers.All))
            {
                // A number moves with the onset too, by what its half-width says.
                Assert.Equal(m.Value, n.Value, (relative * Math.Abs(m.Value)) + (0.2 * Math.Sqrt(relative) * m.HalfWidth));
            }
        }
    }

    [Theory]
    [InlineData(2.1, 0.14)]
    [InlineData(-1.2, 0.5)]
    [InlineData(0.65, 3.0)]
    public void However_the_phone_lies_the_bumps_are_the_same_to_half_a_per_cent(double turned, double tipped) =>
        // Without noise, which would turn with the phone.
        AssertEqual(
            Of((Motion with { Noise = 0.0, TurnNoise = 0.0 }).Log),
            Of((Motion with { Noise = 0.0, TurnNoise = 0.0, Turned = turned, Tipped = tipped }).Log),
            5e-3);

    [Fact]
    public void Whenever_the_log_began_the_bumps_are_the_same() =>
        AssertEqual(Of(Motion.Log), Of((Motion with { Offset = 128.0 }).Log), 1e-6, 128.0);

    [Fact]
    public void In_whatever_order_the_sensors_stand_the_bumps_are_the_same() =>
        AssertEqual(Of(Motion.Log), Of(new Log { Tracks = [.. Motion.Log.Tracks.Reverse()] }), 1e-12);

    [Fact]
    public void In_whatever_units_it_is_written_the_bumps_are_the_same()
    {
        using var scratch = new Scratch();
        DriveEvent[] Read(string name, string text)
        {
            File.WriteAllText(scratch[name], text);
            return Of(LogFile.Load([scratch[name]], TestContext.Current.CancellationToken).Log!);
        }

        AssertEqual(
            Read("si.csv", WrittenLog.Of(Motion.Log)),
            Read("others.csv", WrittenLog.Of(Motion.Log, ("(g)", 1.0 / 9.80665), ("(deg/s)", 180.0 / Math.PI), ("(km/h)", 3.6))),
            1e-6);
    }

    [Fact]
    public void A_drive_read_twice_gives_the_same_bits()
    {
        var (a, b) = (Of(Motion.Log), Of(Motion.Log));
        Assert.Equal(a.Select(e => (e.Onset, e.HitUntil, e.Numbers.Headline)), b.Select(e => (e.Onset, e.HitUntil, e.Numbers.Headline)));
    }

    [Fact]
    public void It_can_be_stopped()
    {
        var drive = Drive.Of(Motion.Log, TestContext.Current.CancellationToken);
        var trust = Trust.Of(drive);
        Assert.Throws<OperationCanceledException>(() => DriveEvents.Of(drive, trust, null, new CancellationToken(true)));
    }
}
