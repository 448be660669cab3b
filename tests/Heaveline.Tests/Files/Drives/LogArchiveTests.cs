using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using Heaveline.Files.Drives;
using Heaveline.Tests.Drives;

namespace Heaveline.Tests.Files.Drives;

public class LogArchiveTests
{
    private static readonly byte[] Text = LogWriter.Bytes(new LogWriter { Drive = new PlantedDrive { Length = 20.0 } }.Whole);

    private static byte[] Packed(CompressionLevel level, params (string Name, byte[] Bytes)[] files)
    {
        using var archive = new MemoryStream();
        using (var zip = new ZipArchive(archive, ZipArchiveMode.Create))
        {
            foreach (var (name, bytes) in files)
            {
                using var entry = zip.CreateEntry(name, level).Open();
                entry.Write(bytes);
            }
        }

        return archive.ToArray();
    }

    private static LogReading Load(byte[] archive)
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Root, "log.zip");
        File.WriteAllBytes(path, archive);
        return LogFile.Load([path]);
    }

    // The check value of the polynomial's usual form: the sum of the digits 1 to 9 as text.
    [Fact]
    public void The_check_sum_is_the_published_one()
    {
        Assert.Equal(0xCBF43926u, Crc32.Of("123456789"u8));
        Assert.Equal(0u, Crc32.Of([]));
    }

    [Theory]
    [InlineData(CompressionLevel.NoCompression)]
    [InlineData(CompressionLevel.Optimal)]
    public void A_sound_archive_is_read(CompressionLevel level) => Assert.NotNull(Load(Packed(level, ("a.csv", Text))).Log);

    [Fact]
    public void An_archive_in_which_one_digit_changed_is_damaged()
    {
        var archive = Packed(CompressionLevel.NoCompression, ("a.csv", Text));
        archive[archive.Length / 2] ^= 1;
        Assert.Contains("damaged", Assert.Single(Load(archive).Refusals).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_changed_bit_of_what_is_packed_is_found()
    {
        var sound = Packed(CompressionLevel.Optimal, ("a.csv", Text));
        for (var k = 0; k < 40; k++)
        {
            var archive = sound.ToArray();
            archive[200 + ((archive.Length - 400) / 40 * k)] ^= (byte)(1 << (k % 8));
            Assert.Contains("damaged", Assert.Single(Load(archive).Refusals).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_bomb_that_lies_about_its_length_is_given_up_at_its_beginning()
    {
        var archive = Packed(CompressionLevel.Optimal, ("a.csv", new byte[128 << 20]));
        var central = archive.AsSpan().LastIndexOf("PK\u0001\u0002"u8);
        BinaryPrimitives.WriteUInt32LittleEndian(archive.AsSpan(central + 24), 1000);
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Root, "bomb.zip");
        File.WriteAllBytes(path, archive);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Assert.Single(LogFile.Load([path]).Refusals);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 48 << 20);
    }

    [Fact]
    public void An_archive_with_nothing_in_it_is_called_empty() =>
        Assert.Contains("archive is empty", Assert.Single(Load(Packed(CompressionLevel.Optimal)).Refusals).Message, StringComparison.Ordinal);

    [Fact]
    public void The_same_bytes_twice_are_read_once_and_said()
    {
        var log = Load(Packed(CompressionLevel.Optimal, ("a.csv", Text), ("b.csv", Text))).Log!;
        var line = Assert.Single(log.Story, s => s.About == "left-out");
        Assert.Contains("b.csv is left out", line.Text, StringComparison.Ordinal);
        Assert.Contains("byte for byte", line.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5000, 4)]
    [InlineData(40_000, 4)]
    public void Too_many_columns_are_named(int columns, int rows)
    {
        var text = new StringBuilder().AppendJoin(',', Enumerable.Range(0, columns).Select(k => "a" + k)).Append('\n');
        for (var i = 0; i < rows; i++)
        {
            text.AppendJoin(',', Enumerable.Repeat("0.5", columns)).Append('\n');
        }

        var message = Assert.Single(LogFile.Read([("log.csv", LogWriter.Bytes(text.ToString()))]).Refusals).Message;
        Assert.Contains(FormattableString.Invariant($"{columns} columns; 4096 at the most"), message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("time,ax,ay,az\n0.00,,0.2,9.8\n0.01,,0.2,9.8\n0.02,,0.2,9.8\n", "'ax'")]
    [InlineData("time,ax,ay,az\n,0.1,0.2,9.8\n,0.1,0.2,9.8\n,0.1,0.2,9.8\n", "'time'")]
    public void A_blank_column_is_named(string text, string name)
    {
        var message = Assert.Single(LogFile.Read([("log.csv", LogWriter.Bytes(text))]).Refusals).Message;
        Assert.Contains(name, message, StringComparison.Ordinal);
    }
}
