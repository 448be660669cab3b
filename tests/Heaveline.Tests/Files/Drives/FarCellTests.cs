using System.Globalization;
using Heaveline.Drives;
using Heaveline.Files.Drives;
using Heaveline.Tests.Drives;

namespace Heaveline.Tests.Files.Drives;

public class FarCellTests
{
    // A column of three axes each: acceleration x is the second cell, turn rate x the fifth, speed the eighth.
    private const int Force = 1;
    private const int Turn = 4;
    private const int Speed = 7;

    private static readonly string[] Rows = new LogWriter { Drive = new PlantedDrive { Length = 30.0 } }.Whole.Split('\n');

    private static string Spoilt(int column, string cell, params IEnumerable<int> rows)
    {
        var lines = Rows.ToArray();
        foreach (var row in rows)
        {
            var cells = lines[row].Split(',');
            cells[column] = cell;
            lines[row] = string.Join(',', cells);
        }

        return string.Join('\n', lines);
    }

    private static LogReading Read(string text) => LogFile.Read([("log.csv", LogWriter.Bytes(text))]);

    [Theory]
    [InlineData(Force, "1e308", "accelX")]
    [InlineData(Force, "1e160", "accelX")]
    [InlineData(Force, "-4001", "accelX")]
    [InlineData(Turn, "1e308", "gyroX")]
    [InlineData(Turn, "1e9", "gyroX")]
    [InlineData(Turn, "201", "gyroX")]
    [InlineData(Speed, "1e308", "speed")]
    [InlineData(Speed, "201", "speed")]
    public void A_cell_that_no_sensor_means_is_left_out_and_said(int column, string cell, string name)
    {
        var log = Read(Spoilt(column, cell, 1234)).Log!;
        var line = Assert.Single(log.Story, s => s.About == "far-cells");
        Assert.True(line.IsDoubtful);
        Assert.Contains(name, line.Text, StringComparison.Ordinal);
        Assert.Contains("row 1234 ", line.Text, StringComparison.Ordinal);
        var (spoilt, whole) = (Drive.Of(log), Drive.Of(Read(string.Join('\n', Rows)).Log!));
        Assert.Equal(whole.Vertical.Length, spoilt.Vertical.Length);
        Assert.All(spoilt.Vertical.Zip(whole.Vertical), p => Assert.InRange(p.First - p.Second, -0.5, 0.5));
        Assert.All(spoilt.PitchRate.Concat(spoilt.Speed), v => Assert.True(double.IsFinite(v)));
    }

    [Theory]
    [InlineData(Force, "1e9", "4000 m/s²")]
    [InlineData(Turn, "1e9", "200 rad/s")]
    [InlineData(Speed, "1e9", "200 m/s")]
    public void More_than_one_in_a_thousand_is_refused_by_name(int column, string cell, string bound)
    {
        var refusal = Assert.Single(Read(Spoilt(column, cell, [100, 200, 300, 400])).Refusals);
        Assert.Contains("4 of the ", refusal.Message, StringComparison.Ordinal);
        Assert.Contains(bound, refusal.Message, StringComparison.Ordinal);
        Assert.Contains("row 100 ", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1e5")]
    [InlineData("1e15")]
    public void A_stamp_that_stands_alone_is_left_out_and_said(string stamp)
    {
        foreach (var row in new[] { 500, Rows.Length - 2 })
        {
            var log = Read(Spoilt(0, stamp, row)).Log!;
            Assert.Contains(
                string.Create(CultureInfo.InvariantCulture, $"row {row} "),
                Assert.Single(log.Story, s => s.About == "far-stamps").Text,
                StringComparison.Ordinal);
            var drive = Drive.Of(log);
            Assert.InRange(drive.Vertical.Length, 2900, 3001);
            Assert.Empty(drive.Clock.StepsBack);
        }
    }

    [Fact]
    public void A_car_that_never_moves_tells_no_forward()
    {
        var drive = Drive.Of(Read(Spoilt(Speed, "0", Enumerable.Range(1, Rows.Length - 2))).Log!);
        Assert.Contains(drive.Story, s => s.Text.Contains("never moves by the log's speed", StringComparison.Ordinal));
        Assert.Empty(drive.Speed);
        Assert.DoesNotContain(drive.Story, s => s.Text.Contains("± 0°", StringComparison.Ordinal));
    }

    [Fact]
    public void A_long_pause_cuts_the_log_and_costs_no_memory()
    {
        var log = new PlantedDrive { Length = 60.0 }.Log;
        var paused = log with
        {
            Tracks = [.. log.Tracks.Select(t => t with { Times = [.. t.Times.Select(at => at < 20.0 ? at : at + 140_000.0)] })],
        };
        var before = GC.GetAllocatedBytesForCurrentThread();
        var drive = Drive.Of(paused);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 100_000_000);
        Assert.InRange(drive.Start, 140_019.0, 140_021.0);
        Assert.InRange(drive.Vertical.Length / drive.Rate, 39.0, 40.1);
        Assert.Contains("140020 to 140060 s, is read", Assert.Single(drive.Story, s => s.About == "pause").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pause_of_ten_minutes_or_less_cuts_nothing()
    {
        var log = new PlantedDrive { Length = 60.0 }.Log;
        var drive = Drive.Of(log with
        {
            Tracks = [.. log.Tracks.Select(t => t with { Times = [.. t.Times.Select(at => at < 20.0 ? at : at + 590.0)] })],
        });
        Assert.DoesNotContain(drive.Story, s => s.About == "pause");
        Assert.Equal(2, drive.Covered.Length);
    }
}
