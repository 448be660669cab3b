using System.Globalization;
using System.IO.Compression;
using System.Text;
using Heaveline.Drives;
using Heaveline.Files.Drives;

namespace Heaveline.Tests.Files.Drives;

public class LogFileTests
{
    private static readonly DateTime Start = new(2024, 3, 30, 23, 59, 40, DateTimeKind.Utc);
    private static readonly Log Plain = Read(("log.csv", LogWriter.Bytes(new LogWriter().Whole)));

    /// <summary>The same drive in the ways that loggers have, each with its name.</summary>
    public static TheoryData<string> Ways => [.. Written.Keys];

    private static Dictionary<string, Func<LogWriter>> Written { get; } = new()
    {
        ["semicolons and decimal commas"] = () => new() { Separator = ';', HasDecimalComma = true },
        ["tabs and decimal commas"] = () => new() { Separator = '\t', HasDecimalComma = true },
        ["bars"] = () => new() { Separator = '|' },
        ["g"] = () => new() { ForceUnit = "(g)", ForceScale = 1.0 / 9.80665 },
        ["g without a word"] = () => new() { ForceUnit = "", ForceScale = 1.0 / 9.80665 },
        ["mg under a header of g"] = () => new() { ForceUnit = "(g)", ForceScale = 1000.0 / 9.80665 },
        ["degrees"] = () => new() { TurnUnit = "(deg/s)", TurnScale = 180.0 / Math.PI },
        ["degrees without a word"] = () => new() { TurnUnit = "", TurnScale = 180.0 / Math.PI },
        ["degrees under a header of radians"] = () => new() { TurnScale = 180.0 / Math.PI },
        ["km/h"] = () => new() { SpeedUnit = " (Kmh)", SpeedScale = 3.6 },
        ["mph"] = () => new() { SpeedUnit = " [mph]", SpeedScale = 1.0 / 0.44704 },
        ["ms"] = () => new() { TimeName = "timestamp", Time = t => (1000.0 * t).ToString("F3", CultureInfo.InvariantCulture) },
        ["ms under a header of s"] = () => new() { Time = t => (1000.0 * t).ToString("F3", CultureInfo.InvariantCulture) },
        ["ns since 1970"] = () =>
            new() { TimeName = "epoch", Time = t => (1711843180000000000L + (long)(1e9 * t)).ToString(CultureInfo.InvariantCulture) },
        ["s since 1970"] = () =>
            new() { TimeName = "epoch", Time = t => (1711843180m + (decimal)Math.Round(t, 7)).ToString("F7", CultureInfo.InvariantCulture) },
        ["µs"] = () => new() { TimeName = "t", Time = t => ((long)Math.Round(1e6 * t)).ToString(CultureInfo.InvariantCulture) },
        ["ISO 8601"] = () => new()
        {
            TimeName = "date",
            Time = t => Start.AddSeconds(t).ToString("yyyy-MM-dd'T'HH:mm:ss.fffffff'+02:00'", CultureInfo.InvariantCulture),
        },
        ["a date in words"] = () =>
            new() { TimeName = "Timestamp", Time = t => Start.AddSeconds(t).ToString("dd-MMM-yyyy HH:mm:ss.ffffff", CultureInfo.InvariantCulture) },
        ["a colon before the fraction"] = () =>
            new() { TimeName = "YYYY-MO-DD", Time = t => Start.AddSeconds(t).ToString("yyyy-MM-dd HH:mm:ss:ffffff", CultureInfo.InvariantCulture) },
        ["time of day over midnight"] = () =>
            new() { TimeName = "time", Time = t => Start.AddSeconds(t).ToString("HH:mm:ss.ffffff", CultureInfo.InvariantCulture) },
        ["fractions of a day"] = () => new()
        {
            TimeName = "time",
            Time = t => (45000L).ToString(CultureInfo.InvariantCulture) + (0.5 + (t / 86400.0)).ToString("F12", CultureInfo.InvariantCulture)[1..],
        },
    };

    private static Log Read(params (string, byte[])[] texts)
    {
        var reading = LogFile.Read(texts);
        Assert.Empty(reading.Refusals);
        return reading.Log!;
    }

    // Both drives on the car's axes, where it counts.
    private static void Same(Log one, Log other, double most = 1e-6)
    {
        var (a, b) = (Drive.Of(one), Drive.Of(other));
        Assert.Equal(a.Vertical.Length, b.Vertical.Length, 1.0);
        Assert.True(a.Vertical.Zip(b.Vertical).Max(p => Math.Abs(p.First - p.Second)) < 100.0 * most);
        Assert.True(a.PitchRate.Zip(b.PitchRate).Max(p => Math.Abs(p.First - p.Second)) < 10.0 * most);
        Assert.Equal(a.Mount.SpeedLag!.Value, b.Mount.SpeedLag!.Value, 6);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void However_a_drive_is_written_it_is_the_same_drive(string way) =>
        Same(Plain, Read(("log.csv", LogWriter.Bytes(Written[way]().Whole))), 1e-5);

    [Theory]
    [InlineData("UTF-16")]
    [InlineData("utf-16BE")]
    [InlineData("windows-1252")]
    public void The_encoding_does_not_matter(string name)
    {
        var encoding = CodePagesEncodingProvider.Instance.GetEncoding(name) ?? Encoding.GetEncoding(name);
        Same(Plain, Read(("log.csv", [.. encoding.GetPreamble(), .. encoding.GetBytes(new LogWriter().Whole)])));
    }

    [Theory]
    [InlineData(0.02)]
    [InlineData(0.1)]
    [InlineData(1.0)]
    public void Stamps_coarser_than_the_samples_are_drawn_apart(double stamp)
    {
        var writer = new LogWriter { Time = t => (stamp * Math.Floor(t / stamp)).ToString("F2", CultureInfo.InvariantCulture) };
        var clock = Drive.Of(Read(("log.csv", LogWriter.Bytes(writer.Whole)))).Clock;
        Assert.Equal(100.0, clock.Rate, 0.2);
        Assert.Empty(clock.Gaps);
    }

    [Fact]
    public void Lines_above_the_header_a_separator_line_and_line_ends_of_any_kind_do_no_harm()
    {
        var text = new LogWriter { Separator = ';' }.Whole;
        Same(Plain, Read(("log.csv", LogWriter.Bytes("sep=;\n" + text))));
        Same(Plain, Read(("log.csv", LogWriter.Bytes("Logger 3\nA phone, flat\n\n" + text.Replace("\r\n", "\r", StringComparison.Ordinal)))));
    }

    [Fact]
    public void Quotes_blank_cells_a_torn_last_line_and_a_header_met_again_do_no_harm()
    {
        var rows = new LogWriter().Whole.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).ToList();
        var quoted = rows.Select(r => string.Join(',', r.Split(',').Select(c => $"\"{c}\""))).ToList();
        quoted.Insert(2000, quoted[0]);
        quoted.Add("\"45.1\",\"0.3");
        var log = Read(("log.csv", LogWriter.Bytes(string.Join('\n', quoted))));
        Same(Plain, log);
        Assert.Contains(log.Story, s => s.Text.Contains("rows", StringComparison.Ordinal) && s.IsDoubtful);
    }

    [Fact]
    public void An_accuracy_is_never_taken_for_an_acceleration()
    {
        var rows = new LogWriter().Whole.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Same(Plain, Read((
            "log.csv",
            LogWriter.Bytes(string.Join('\n', rows.Select((r, i) => (i == 0 ? "HorizontalAccuracyX(m),speedAccuracy," : "5.0,0.2,") + r))))));
    }

    [Fact]
    public void Of_three_accelerations_the_one_as_long_as_gravity_is_taken()
    {
        var rows = new LogWriter().Whole.Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Same(Plain, Read(("log.csv", LogWriter.Bytes(string.Join('\n', rows.Select(
            (r, i) => (i == 0 ? "accelUserX,accelUserY,accelUserZ,accX filtered,accY filtered,accZ filtered," : "0.1,0.2,0.3,31,22,40,") + r))))));
    }

    [Fact]
    public void Without_a_header_columns_are_told_by_their_numbers_and_that_is_doubtful()
    {
        var log = Read(("log.csv", LogWriter.Bytes(new LogWriter { HasHeader = false }.Whole)));
        Assert.Equal([SensorKind.Acceleration, SensorKind.TurnRate], log.Tracks.Select(t => t.Kind));
        Assert.Contains(log.Story, s => s is { About: "header", IsDoubtful: true });
        var (one, other) = (Drive.Of(Plain), Drive.Of(log));
        Assert.True(one.Vertical.Zip(other.Vertical).Max(p => Math.Abs(p.First - p.Second)) < 1e-6);
    }

    [Fact]
    public void Names_above_units_are_read_together()
    {
        var rows = new LogWriter { ForceUnit = "", TurnUnit = "", SpeedUnit = "", SpeedScale = 3.6, TimeName = "time" }.Whole
            .Split("\r\n", StringSplitOptions.RemoveEmptyEntries).ToList();
        rows.Insert(1, "[s],[m/s2],[m/s2],[m/s2],[rad/s],[rad/s],[rad/s],[km/h]");
        Same(Plain, Read(("log.csv", LogWriter.Bytes(string.Join('\n', rows)))));
    }

    [Fact]
    public void A_file_for_each_sensor_in_any_order_in_a_folder_or_in_an_archive_is_one_drive()
    {
        (string Name, byte[] Bytes)[] apart = [.. new LogWriter().Apart.Select(t => (t.Name, LogWriter.Bytes(t.Text)))];
        var one = Read(apart);
        Same(one, Read([.. apart.Reverse()]), 1e-12);
        using var folder = new TemporaryFolder();
        foreach (var (name, bytes) in apart)
        {
            File.WriteAllBytes(Path.Combine(folder.Root, name), bytes);
        }

        Same(one, LogFile.Load([folder.Root]).Log!, 1e-12);
        var archive = Path.Combine(folder.Root, "drive.zip");
        using (var zip = ZipFile.Open(archive, ZipArchiveMode.Create))
        {
            foreach (var (name, bytes) in apart)
            {
                using var entry = zip.CreateEntry("a folder/" + name).Open();
                entry.Write(bytes);
            }
        }

        Same(one, LogFile.Load([archive]).Log!, 1e-12);
    }

    [Fact]
    public void Clocks_of_two_zones_are_joined_and_clocks_that_share_nothing_are_not()
    {
        var force = new LogWriter
        {
            TimeName = "time",
            Time = t => Start.AddSeconds(t).ToString("yyyy-MM-dd HH:mm:ss.ffffff", CultureInfo.InvariantCulture),
        }.Apart[0];
        var zone = new LogWriter
        {
            TimeName = "time",
            Time = t => Start.AddHours(2).AddSeconds(t).ToString("yyyy-MM-dd HH:mm:ss.ffffff", CultureInfo.InvariantCulture),
        }.Apart;
        (string, byte[]) Of((string Name, string Text) t) => (t.Name, LogWriter.Bytes(t.Text));
        var joined = Read(Of(force), Of(zone[1]), Of(zone[2]));
        Assert.Equal(3, joined.Tracks.Length);
        Assert.Contains(joined.Story, s => s.Text.Contains("zone", StringComparison.Ordinal));
        var alone = Read(Of(force), Of(new LogWriter().Apart[1]));
        Assert.Single(alone.Tracks);
        Assert.Contains(alone.Story, s => s is { About: "left-out", IsDoubtful: true });
    }

    [Fact]
    public void A_second_log_or_a_note_beside_the_log_is_passed_over_and_said()
    {
        var text = LogWriter.Bytes(new LogWriter().Whole);
        var log = Read(("a.csv", text), ("b.csv", text), ("note.txt", LogWriter.Bytes("The phone lay on the tunnel.\n")));
        Assert.Equal("a.csv", log.Tracks[0].File);
        Assert.Equal(2, log.Story.Count(s => s.About == "left-out"));
    }
}
