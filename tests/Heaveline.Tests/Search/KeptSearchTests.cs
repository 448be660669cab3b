using Heaveline.Files.Keeping;
using Heaveline.Numerics;
using Heaveline.Pieces;
using Heaveline.Search;
using Heaveline.Tests.Files;

namespace Heaveline.Tests.Search;

/// <summary>A search whose pieces are kept in a file, that dies again and again and is gone on with, finds the same to the bit.</summary>
public class KeptSearchTests
{
    public static TheoryData<ulong> Seeds => [.. Enumerable.Range(1, 40).Select(k => (ulong)k)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_search_that_dies_at_random_pieces_and_is_gone_on_with_finds_the_same_to_the_bit(ulong seed)
    {
        using var folder = new TemporaryFolder();
        var path = Path.Combine(folder.Root, "study.pieces");
        var whole = new MadeUpStudy(seed, 7, 6, 5, 4) { Doubt = 0.02, Refused = s => s % 11 == 3 };
        var expected = Told(whole, whole.Task);
        var study = new MadeUpStudy(seed, 7, 6, 5, 4) { Doubt = 0.02, Refused = s => s % 11 == 3 };
        for (var life = 0; ; life++)
        {
            Assert.True(life < 100, "It never comes to its end.");
            using var file = PieceFile.Open(path, "abc", "1");
            var before = file.Before;
            Assert.True(life == 0 || before > 0);
            // The later lives are longer, so that they come to the end.
            var pieces = 1 + life + (int)(SplitMix.At(seed, (ulong)life) % 5UL);
            try
            {
                var told = Told(study, study.Task with
                {
                    Doer = PiecesByBytes.Through(study, doer => new KeptPieces(new Dying(doer, pieces), file)),
                });
                Assert.Equal(expected, told);
                Assert.True(life > 0, "It never died.");
                break;
            }
            catch (EndOfLife)
            {
                Assert.Equal(before + pieces, file.Count);
            }

            // Every third time in the middle of a record.
            if (life % 3 == 1)
            {
                file.Dispose();
                using var torn = new FileStream(path, FileMode.Open);
                torn.SetLength(torn.Length - 1 - (long)(SplitMix.At(seed, 77UL + (ulong)life) % 40UL));
            }
        }

        // What is lost in the middle of a record is done again, and nothing else.
        Assert.InRange(study.Done, whole.Done, whole.Done + (40 * 32));
    }

    private static string Told(MadeUpStudy study, SearchTask task)
    {
        var found = SetupSearch.Of(task with { DrivenWhole = 400, Degree = 1 });
        var trial = SetupTrial.Of(found, found.Front, 16, null);
        return string.Join('\n', found.Driven.Select(one => $"{one.Setup} {one.Refusal} {Bits(one.Wishes)} {Bits(one.Row.Numbers)}")
            .Append($"front {string.Join(' ', found.Front.Select(one => one.Setup))} near {string.Join(' ', found.Near.Select(one => one.Setup))}")
            .Concat(trial.Tried.Select(one => $"{one.Stated.Setup} {one.IsDropped} {string.Join(' ', one.Wishes.Select(w => Bits(w)))}")))
            + study.Space.Count;
    }

    private static string Bits(IEnumerable<double> values) => string.Join(' ', values.Select(BitConverter.DoubleToInt64Bits));

    private sealed class EndOfLife : Exception;

    private sealed class Dying(IPieceDoer doer, int after) : IPieceDoer
    {
        private int left = after;

        public byte[] Do(byte[] piece, CancellationToken cancellation) => left-- > 0 ? doer.Do(piece, cancellation) : throw new EndOfLife();
    }
}
