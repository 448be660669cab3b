using System.Text;
using Heaveline.Files.Keeping;
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
}
