using System.Reflection;
using Heaveline.Numerics;
using Heaveline.Search;

namespace Heaveline.Tests.Search;

public class PieceBytesTests
{
    [Theory]
    [InlineData(1UL)]
    [InlineData(2UL)]
    [InlineData(3UL)]
    public void Pieces_and_rows_come_out_of_their_bytes_with_every_bit(ulong seed)
    {
        var rows = Enumerable.Range(0, 40).Select(k => new SetupRow((int)(SplitMix.At(seed, (ulong)k) % 130UL), Odd(seed, k, 7))
        {
            Excesses = [.. Odd(seed + 9UL, k, 5)],
        }).ToArray();
        var back = PieceBytes.RowsOf(PieceBytes.Of(rows));
        Assert.Equal(rows.Select(Told), back.Select(Told));
        var piece = new Piece(PieceStage.Look, [.. Enumerable.Range(0, 33).Select(k => (long)SplitMix.At(seed, (ulong)k))], (int)seed - 2);
        var same = PieceBytes.PieceOf(PieceBytes.Of(piece));
        Assert.Equal((piece.Stage, piece.Draw), (same.Stage, same.Draw));
        Assert.Equal(piece.Setups, same.Setups);
    }

    [Fact]
    public void A_row_that_says_more_than_its_bytes_hold_is_noticed() => Assert.Equal(
        ["Excesses", "IsDriven", "Numbers", "Refusal"],
        typeof(SetupRow).GetProperties(BindingFlags.Instance | BindingFlags.Public).Select(p => p.Name).Order(StringComparer.Ordinal));

    [Fact]
    public void Bytes_cut_short_or_too_long_are_no_rows_and_no_piece()
    {
        var rows = PieceBytes.Of([new SetupRow(0, [1.0, 2.0]) { Excesses = [3.0] }, new SetupRow(7, [])]);
        var piece = PieceBytes.Of(new Piece(PieceStage.Drive, [4L, 5L], 2));
        for (var k = 0; k < rows.Length; k++)
        {
            Assert.Throws<FormatException>(() => PieceBytes.RowsOf(rows[..k]));
        }

        for (var k = 0; k < piece.Length; k++)
        {
            Assert.Throws<FormatException>(() => PieceBytes.PieceOf(piece[..k]));
        }

        Assert.Throws<FormatException>(() => PieceBytes.RowsOf([.. rows, 0]));
        Assert.Throws<FormatException>(() => PieceBytes.PieceOf([.. piece, 0]));
    }

    // Not a number comes with whatever bits, infinities and zeros with their signs.
    private static double[] Odd(ulong seed, int k, int most) =>
    [
        .. Enumerable.Range(0, (int)(SplitMix.At(seed, (ulong)(1000 + k)) % (ulong)(most + 1)))
            .Select(i => BitConverter.UInt64BitsToDouble(SplitMix.At(seed, (ulong)((50 * k) + i)))),
        -0.0, double.NegativeInfinity, double.NaN,
    ];

    private static string Told(SetupRow row) => string.Join(
        ' ', row.Numbers.Concat([0.5]).Concat(row.Excesses).Select(BitConverter.DoubleToInt64Bits).Prepend(row.Refusal));
}
