using Heaveline.Drives;
using Heaveline.Files.Drives;

namespace Heaveline.Tests.Files.Drives;

public class OverrulingTests
{
    [Theory]
    [InlineData("acceleration: mg")]
    [InlineData("turn-rate: deg/s")]
    [InlineData("speed: mph")]
    [InlineData("time: column 3")]
    [InlineData("time: ms")]
    [InlineData("acceleration: columns ax, ay, az of Accelerometer.csv")]
    [InlineData("separator: semicolon")]
    [InlineData("decimal: comma")]
    [InlineData("forward: 37° ± 3°")]
    [InlineData("lag: 0.8 s")]
    [InlineData("hand: turned")]
    [InlineData("moved: no")]
    public void What_can_be_said_is_read(string words)
    {
        var overruling = Overruling.Of(words, out var whyNot);
        Assert.Equal("", whyNot);
        Assert.Equal(words[..words.IndexOf(':', StringComparison.Ordinal)], overruling!.About);
    }

    [Theory]
    [InlineData("acceleration: furlongs", "acceleration: g, m/s²")]
    [InlineData("acceleration: columns 2, 3", "columns 2, 3, 4")]
    [InlineData("weather: fine", "nothing that can be taken otherwise")]
    [InlineData("forward: 37 kg", "forward: 37°")]
    [InlineData("lag: 80 s", "lag: 0.8 s")]
    [InlineData("speed", "speed: m/s")]
    public void What_cannot_is_refused_with_what_can(string words, string says)
    {
        Assert.Null(Overruling.Of(words, out var whyNot));
        Assert.Contains(says, whyNot, StringComparison.Ordinal);
    }

    // Every decision of the reading that has another side tells it.
    [Fact]
    public void Every_decision_of_a_story_says_what_may_be_taken_instead()
    {
        var drive = Drive.Of(Read(new LogWriter().Whole));
        foreach (var about in drive.Log.Story.Concat(drive.Story).Select(s => s.About).Distinct())
        {
            Assert.NotEmpty(Overruling.Instead(about));
        }
    }

    [Fact]
    public void A_unit_that_is_said_is_taken_whatever_header_and_numbers_say()
    {
        var plain = Read(new LogWriter().Whole);
        var mg = Read(new LogWriter().Whole, "acceleration: mg", "turn-rate: °/s", "speed: mph");
        Assert.Equal(9.80665e-3 * plain.Tracks[0].Values[0][5], mg.Tracks[0].Values[0][5], 1e-12);
        Assert.Equal(
            plain.Of(SensorKind.TurnRate)!.Values[1][7] * Math.PI / 180.0, mg.Of(SensorKind.TurnRate)!.Values[1][7], 1e-12);
        Assert.Equal(0.44704 * plain.Of(SensorKind.Speed)!.Values[0][2], mg.Of(SensorKind.Speed)!.Values[0][2], 1e-12);
        Assert.Contains(mg.Story, s => s.Text.EndsWith("in mg, as you say.", StringComparison.Ordinal));
        Assert.Null(Read(new LogWriter().Whole, "speed: none").Of(SensorKind.Speed));
    }

    // Three columns beside the accelerometer's own, in another order.
    [Fact]
    public void Columns_that_are_named_are_taken_by_number_and_by_name()
    {
        var plain = Read(new LogWriter().Whole);
        string[] names = [.. plain.Tracks[0].Columns];
        var number = Read(new LogWriter().Whole, "acceleration: columns 3, 4, 2");
        var name = Read(new LogWriter().Whole, $"acceleration: columns {names[1]}, {names[2]}, {names[0]}");
        Assert.Equal([names[1], names[2], names[0]], name.Tracks[0].Columns);
        Assert.Equal(name.Tracks[0].Columns, number.Tracks[0].Columns);
        Assert.Equal(plain.Tracks[0].Values[1], number.Tracks[0].Values[0]);
    }

    [Fact]
    public void A_time_unit_that_is_said_is_taken()
    {
        var (plain, slow) = (Read(new LogWriter().Whole), Read(new LogWriter().Whole, "time: ms"));
        Assert.Equal(1e-3 * (plain.Tracks[0].Times[9] - plain.Tracks[0].Times[0]), slow.Tracks[0].Times[9] - slow.Tracks[0].Times[0], 1e-9);
    }

    [Theory]
    [InlineData("time: column 99", "no column '99'")]
    [InlineData("time: column 1 of other.csv", "no file 'other.csv'")]
    public void What_fits_no_file_is_refused(string words, string says)
    {
        var reading = LogFile.Read([("log.csv", LogWriter.Bytes(new LogWriter().Whole))], [Overruling.Of(words, out _)!]);
        Assert.Null(reading.Log);
        Assert.Contains(says, reading.Refusals[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Forward_and_lag_that_are_said_are_taken()
    {
        var found = Drive.Of(Read(new LogWriter().Whole)).Mount;
        var said = Drive.Of(Read(new LogWriter().Whole, "forward: 37° ± 3°", "lag: 0.5 s")).Mount;
        Assert.Equal(37.0 * Math.PI / 180.0, said.ForwardAngle!.Value, 1e-9);
        Assert.Equal(3.0 * Math.PI / 180.0, said.HalfWidth!.Value, 1e-9);
        Assert.Equal(0.5, said.SpeedLag!.Value, 1e-9);
        // About up, counter-clockwise: between the two directions lies the difference of their angles.
        var turn = said.ForwardAngle.Value - found.ForwardAngle!.Value;
        Assert.Equal(Math.Cos(turn), said.Forward!.Value.Dot(found.Forward!.Value), 1e-6);
        Assert.Equal(Math.Sin(turn), found.Forward.Value.Cross(said.Forward.Value).Dot(found.Up), 1e-6);
    }

    private static Log Read(string text, params string[] overrulings)
    {
        var reading = LogFile.Read([("log.csv", LogWriter.Bytes(text))], [.. overrulings.Select(o => Overruling.Of(o, out _)!)]);
        Assert.Empty(reading.Refusals);
        return reading.Log!;
    }
}
