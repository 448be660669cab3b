using System.Text;
using Heaveline.Files.Keeping;
using Heaveline.Pieces;
using Heaveline.Quantities;

namespace Heaveline.Tests.Files.Keeping;

public sealed class PieceFileTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private string At => Path.Combine(folder.Root, "studies", "a.pieces");

    public void Dispose() => folder.Dispose();

    [Fact]
    public void What_is_kept_is_there_when_the_file_is_opened_again()
    {
        Written(3);
        using var file = Open();
        Assert.Equal((3, 3), (file.Before, file.Count));
        Assert.Equal(Answer(1), file.Of(Piece(1)));
        Assert.Null(file.Of(Piece(3)));
        file.Keep(Piece(3), Answer(3));
        Assert.Equal((3, 4), (file.Before, file.Count));
    }

    [Fact]
    public void Wherever_a_file_is_torn_the_records_before_are_kept_and_the_next_one_is_added_soundly()
    {
        Written(3);
        var whole = File.ReadAllBytes(At);
        for (var length = 0; length < whole.Length; length++)
        {
            File.WriteAllBytes(At, whole[..length]);
            using (var file = Open())
            {
                Assert.InRange(file.Before, 0, 2);
                Assert.All(Enumerable.Range(0, file.Before), k => Assert.Equal(Answer(k), file.Of(Piece(k))));
                file.Keep(Piece(9), Answer(9));
            }

            using var again = Open();
            Assert.Equal(Answer(9), again.Of(Piece(9)));
        }
    }

    [Theory]
    [InlineData("rest")]
    [InlineData("a longer rest than any head of a record, of a power cut that left it half written")]
    public void Rubbish_behind_the_last_record_is_cut_off(string rubbish)
    {
        Written(2);
        var length = new FileInfo(At).Length;
        File.AppendAllText(At, rubbish);
        using (var file = Open())
        {
            Assert.Equal(2, file.Before);
        }

        Assert.Equal(length, new FileInfo(At).Length);
    }

    [Fact]
    public void A_damaged_record_with_sound_ones_behind_it_is_refused_with_its_place_and_the_file_is_left_as_it_is()
    {
        Written(1);
        var first = (int)new FileInfo(At).Length;
        File.Delete(At);
        Written(4);
        var whole = File.ReadAllBytes(At);
        // In the second record: its lengths, its piece, its answer, its sum.
        for (var at = first; at < first + 12 + Piece(1).Length + Answer(1).Length + 4; at++)
        {
            var damaged = (byte[])whole.Clone();
            damaged[at] ^= 0x10;
            File.WriteAllBytes(At, damaged);
            var refused = Assert.Throws<RefusedValueException>(() => Open());
            Assert.Contains($"record at byte {first} is damaged", refused.Message, StringComparison.Ordinal);
            Assert.Contains("delete it", refused.Message, StringComparison.Ordinal);
            Assert.Equal(damaged, File.ReadAllBytes(At));
        }
    }

    [Fact]
    public void Another_study_is_refused_with_both_hashes_and_another_program_with_both_versions()
    {
        Written(1);
        var study = Assert.Throws<RefusedValueException>(() => PieceFile.Open(At, "other-study", "0.1.0 (aa)"));
        Assert.Contains("of the study this-study;", study.Message, StringComparison.Ordinal);
        Assert.Contains("other-study", study.Message, StringComparison.Ordinal);
        var program = Assert.Throws<RefusedValueException>(() => PieceFile.Open(At, "this-study", "0.2.0 (bb)"));
        Assert.Contains("0.1.0 (aa)", program.Message, StringComparison.Ordinal);
        Assert.Contains("0.2.0 (bb)", program.Message, StringComparison.Ordinal);
        Assert.Contains("delete the file", program.Message, StringComparison.Ordinal);
        File.WriteAllText(At, "a letter to somebody, which nobody wants to lose\n");
        Assert.Contains("begins otherwise", Assert.Throws<RefusedValueException>(() => Open()).Message, StringComparison.Ordinal);
        Assert.StartsWith("a letter", File.ReadAllText(At), StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_writer_is_refused_by_name_until_the_first_has_closed()
    {
        using (Open())
        {
            var refused = Assert.Throws<RefusedValueException>(() => Open());
            Assert.Contains("which another run is writing", refused.Message, StringComparison.Ordinal);
        }

        Open().Dispose();
    }

    [Fact]
    public void A_second_answer_must_be_the_first_one_again()
    {
        using (var file = Open())
        {
            file.Keep(Piece(1), Answer(1));
            file.Keep(Piece(1), Answer(1));
            Assert.Equal(1, file.Count);
            Assert.Throws<InvalidOperationException>(() => file.Keep(Piece(1), Answer(2)));
        }

        var whole = File.ReadAllBytes(At);
        File.WriteAllBytes(At, [.. whole, .. PieceRecord.Of(Piece(1), Answer(2))]);
        Assert.Contains("a second time", Assert.Throws<RefusedValueException>(() => Open()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_study_of_a_file_is_told_from_its_head()
    {
        Written(2);
        Assert.Equal("this-study", PieceFile.StudyOf(At));
        File.WriteAllText(At, "anything\n");
        Assert.Null(PieceFile.StudyOf(At));
    }

    [Fact]
    public void What_was_taken_back_is_not_there_any_more_and_is_kept_again_only_by_the_next_run()
    {
        using (var file = Open())
        {
            file.Keep(Piece(1), Answer(7));
            file.Keep(Piece(2), Answer(2));
            file.Withdraw([Piece(1), Piece(3)]);
            Assert.Null(file.Of(Piece(1)));
            // On their way when they were taken back.
            file.Keep(Piece(1), Answer(7));
            file.Keep(Piece(3), Answer(7));
            Assert.Equal(1, file.Count);
        }

        using (var file = Open())
        {
            Assert.Equal(1, file.Before);
            Assert.Equal(Answer(2), file.Of(Piece(2)));
            Assert.Null(file.Of(Piece(1)));
            Assert.Null(file.Of(Piece(3)));
            file.Keep(Piece(1), Answer(1));
        }

        using var again = Open();
        Assert.Equal(2, again.Before);
        Assert.Equal(Answer(1), again.Of(Piece(1)));
        Assert.Throws<ArgumentOutOfRangeException>(() => again.Keep(Piece(4), []));
    }

    [Fact]
    public void Where_the_disk_does_not_take_the_last_of_it_that_is_thrown()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At)!);
        FullDisk? disk = null;
        using var file = PieceFile.Open(At, "this-study", "0.1.0 (aa)", () => disk = new FullDisk(At));
        file.Keep(Piece(1), Answer(1));
        file.Flush();
        file.Keep(Piece(2), Answer(2));
        disk!.IsFull = true;
        Assert.Contains("No space left", Assert.Throws<IOException>(file.Flush).Message, StringComparison.Ordinal);
        Assert.Throws<IOException>(() => file.Keep(Piece(3), Answer(3)));
    }

    [Fact]
    public void A_disk_that_is_full_ends_the_keeping_and_not_the_study()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At)!);
        FullDisk? disk = null;
        var told = new List<string>();
        using (var file = PieceFile.Open(At, "this-study", "0.1.0 (aa)", () => disk = new FullDisk(At)))
        {
            var doer = new KeptPieces(new Answering(), file, why => told.Add(why.Message));
            Assert.Equal(Answer(1), doer.Do(Piece(1), CancellationToken.None));
            disk!.IsFull = true;
            Assert.Equal(Answer(2), doer.Do(Piece(2), CancellationToken.None));
            disk.IsFull = false;
            // Behind what may stand there in part nothing is written any more.
            Assert.Equal(Answer(3), doer.Do(Piece(3), CancellationToken.None));
            Assert.Contains("No space left", Assert.Single(told), StringComparison.Ordinal);
            Assert.Throws<IOException>(() => new KeptPieces(new Answering(), file).Do(Piece(4), CancellationToken.None));
        }

        using var again = Open();
        Assert.Equal(1, again.Before);
        Assert.Equal(Answer(1), again.Of(Piece(1)));
    }

    [Fact]
    public void What_is_no_file_in_its_place_is_refused_and_not_waited_for()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "It has no such pipes in folders.");
        Directory.CreateDirectory(At);
        Assert.Contains("which is a folder", Assert.Throws<RefusedValueException>(() => Open()).Message, StringComparison.Ordinal);
        Directory.Delete(At);
        File.CreateSymbolicLink(At, Path.Combine(folder.Root, "gone"));
        Assert.Contains("where nothing is", Assert.Throws<RefusedValueException>(() => Open()).Message, StringComparison.Ordinal);
        File.Delete(At);
        using (var made = System.Diagnostics.Process.Start("mkfifo", [At]))
        {
            made.WaitForExit();
        }

        Assert.Contains("a pipe", Assert.Throws<RefusedValueException>(() => Open()).Message, StringComparison.Ordinal);
        Assert.Null(PieceFile.StudyOf(At));
    }

    [Fact]
    public void A_file_without_an_end_of_its_first_line_is_of_no_study_and_is_not_read_whole()
    {
        Directory.CreateDirectory(Path.GetDirectoryName(At)!);
        using (var sparse = new FileStream(At, FileMode.Create))
        {
            // More than a row of bytes can hold; it takes no room on the disk.
            sparse.SetLength(5L << 30);
        }

        Assert.Null(PieceFile.StudyOf(At));
        Assert.Contains("begins otherwise", Assert.Throws<RefusedValueException>(() => Open()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sound_record_far_behind_a_damaged_one_is_found_over_the_seams_of_what_is_looked_through_at_once()
    {
        Written(1);
        var head = File.ReadAllBytes(At);
        var sound = PieceRecord.Of(Piece(2), Answer(2));
        // Record by record around the end of the first part that is looked through.
        foreach (var gap in Enumerable.Range(-20, 40).Select(k => (1 << 20) + k).Append(3))
        {
            File.WriteAllBytes(At, [.. head, 1, .. new byte[gap].Select((_, k) => (byte)(1 + (k % 7))), .. sound]);
            Assert.Contains("though sound ones follow", Assert.Throws<RefusedValueException>(() => Open()).Message, StringComparison.Ordinal);
        }
    }

    private PieceFile Open() => PieceFile.Open(At, "this-study", "0.1.0 (aa)");

    private void Written(int count)
    {
        using var file = Open();
        for (var k = 0; k < count; k++)
        {
            file.Keep(Piece(k), Answer(k));
        }
    }

    private static byte[] Piece(int k) => Encoding.UTF8.GetBytes($"piece {k}");

    private static byte[] Answer(int k) => [.. Enumerable.Range(0, 20 + k).Select(i => (byte)((31 * i) + k))];

    private sealed class Answering : IPieceDoer
    {
        public byte[] Do(byte[] piece, CancellationToken cancellation) => Answer(piece[^1] - '0');
    }

    private sealed class FullDisk(string path) : FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0)
    {
        public bool IsFull { get; set; }

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            if (IsFull)
            {
                base.Write(buffer[..(buffer.Length / 2)]);
                throw new IOException("No space left on device");
            }

            base.Write(buffer);
        }

        public override void Flush(bool flushToDisk)
        {
            if (IsFull)
            {
                throw new IOException("No space left on device");
            }

            base.Flush(flushToDisk);
        }
    }
}
