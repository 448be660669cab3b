using System.IO.Compression;
using System.Text;
using Heaveline.Drives;
using Heaveline.Files.Drives;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Tests.Drives;

namespace Heaveline.Tests.Files.Drives;

public class LogRefusalTests
{
    private static LogRefusal Refused(string text, string name = "log.csv") =>
        Assert.Single(LogFile.Read([(name, Encoding.UTF8.GetBytes(text))]).Refusals);

    [Theory]
    [InlineData("", "empty")]
    [InlineData("sep=;\n", "nothing below")]
    [InlineData("a line\nand another\nand a third\n", "separator")]
    [InlineData("a,b\nc,d\ne,f\ng,h\n", "row of numbers")]
    [InlineData("time,lat,lon\n0.0,1,2\n0.1,1,2\n0.2,1,2\n", "acceleration")]
    [InlineData("accx,accy,accz\n0.1,0.2,9.8\n0.1,0.2,9.8\n0.1,0.2,9.8\n", "instants")]
    [InlineData("time,accx,accy,accz\n0.00,70,80,30\n0.01,70,80,31\n0.02,70,80,30\n0.03,70,80,30\n", "gravity in none of")]
    [InlineData("time,accx,accy,accz\n0.00,x,0.2,9.8\n0.01,0.1,y,9.8\n0.02,z,0.2,9.8\n0.03,z,0.2,9.8\n", "no numbers")]
    public void What_is_no_log_is_refused_by_name(string text, string word)
    {
        var refusal = Refused(text);
        Assert.Equal("log.csv", refusal.File);
        Assert.Contains(word, refusal.Message, StringComparison.Ordinal);
        Assert.StartsWith("log.csv: refused: ", refusal.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Bytes_that_are_no_text_are_refused() =>
        Assert.Contains("no text", Assert.Single(LogFile.Read([("a.bin", [1, 0, 2, 0, 0, 3])]).Refusals).Message, StringComparison.Ordinal);

    [Fact]
    public void Half_the_rows_of_another_shape_are_refused()
    {
        var rows = Enumerable.Range(0, 400).Select(i => i < 100 ? $"{i / 100.0:F2},0.1,0.2,9.8" : i % 2 == 0 ? $"{i / 100.0:F2},0.1,0.2,9.8" : "1,2");
        Assert.Contains("another number of columns", Refused("time,ax,ay,az\n" + string.Join('\n', rows)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Paths_that_lead_nowhere_are_refused_all_at_once()
    {
        using var folder = new TemporaryFolder();
        var reading = LogFile.Load([Path.Combine(folder.Root, "none.csv"), folder.Root, "/dev/zero"]);
        Assert.Null(reading.Log);
        Assert.Equal(3, reading.Refusals.Length);
    }

    [Fact]
    public void An_archive_that_swells_too_much_is_refused()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Root, "bomb.zip");
        using (var zip = ZipFile.Open(path, ZipArchiveMode.Create))
        {
            using var entry = zip.CreateEntry("a.csv").Open();
            var blanks = new byte[1 << 20];
            blanks.AsSpan().Fill((byte)' ');
            for (var k = 0; k < 16; k++)
            {
                entry.Write(blanks);
            }
        }

        Assert.Contains("unpacked", Assert.Single(LogFile.Load([path]).Refusals).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_archive_is_refused()
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Root, "torn.zip");
        File.WriteAllBytes(path, [.. "PK\u0003\u0004"u8, 1, 2, 3, 4, 5]);
        Assert.Contains("damaged", Assert.Single(LogFile.Load([path]).Refusals).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Reading_can_be_stopped()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        Assert.Throws<OperationCanceledException>(() => LogFile.Read([("log.csv", LogWriter.Bytes(new LogWriter().Whole))], stop.Token));
    }

    [Fact]
    public void A_thousand_damaged_logs_give_a_refusal_by_name_or_the_right_answer()
    {
        var planted = new PlantedDrive { Length = 12.0, Rate = 50.0 };
        var good = LogWriter.Bytes(new LogWriter { Drive = planted }.Whole);
        var whole = Drive.Of(LogFile.Read([("log.csv", good)]).Log!);
        var (read, refused) = (0, 0);
        for (ulong k = 0; k < 1000; k++)
        {
            var reading = LogFile.Read([("log.csv", Damaged(good, k))]);
            Assert.True(reading.Log is not null ^ reading.Refusals.Length > 0);
            if (reading.Log is not { } log)
            {
                Assert.All(reading.Refusals, r => Assert.StartsWith("log.csv", r.File, StringComparison.Ordinal));
                refused++;
                continue;
            }

            try
            {
                var drive = Drive.Of(log);
                // What is left is the same drive: gravity stays, and nothing is endless.
                Assert.InRange(drive.Mount.Gain, 0.97 * whole.Mount.Gain, 1.03 * whole.Mount.Gain);
                Assert.True(drive.Mount.Up.AngleTo(whole.Mount.Up) < 0.1);
                Assert.All(drive.Vertical, v => Assert.True(double.IsFinite(v)));
                Assert.Equal(3, Trust.Of(drive).Verdicts.Length);
                read++;
            }
            catch (RefusedValueException refusal)
            {
                Assert.NotEmpty(refusal.Message);
                refused++;
            }
        }

        Assert.True(read > 300 && refused > 50, $"{read} read, {refused} refused");
    }

    // Bytes changed, a piece cut out, written twice or put elsewhere, the end torn off.
    private static byte[] Damaged(byte[] good, ulong seed)
    {
        var draw = 0UL;
        int Below(int n) => (int)(SplitMix.Uniform(seed, draw++) * n);
        var (from, length) = (Below(good.Length), Below(2000) + 1);
        var to = Math.Min(from + length, good.Length);
        switch (Below(6))
        {
            case 0:
                var changed = good.ToArray();
                for (var k = Below(60); k >= 0; k--)
                {
                    changed[Below(changed.Length)] = (byte)(Below(255) + 1);
                }

                return changed;
            case 1:
                return [.. good[..from], .. good[to..]];
            case 2:
                return [.. good[..to], .. good[from..]];
            case 3:
                return [.. good[from..], .. good[..from]];
            case 4:
                return good[..from];
            default:
                var header = good.ToArray();
                for (var k = Below(12); k >= 0; k--)
                {
                    header[Below(120)] = (byte)(Below(255) + 1);
                }

                return header;
        }
    }
}
