using System.Collections.Immutable;
using Heaveline.Pieces;

namespace Heaveline.Search;

/// <summary>Pieces of a search and their rows as bytes, every bit as it was.</summary>
internal static class PieceBytes
{
    // A row without a number: reason and two counts.
    private const int LeastRow = 3 * sizeof(int);

    /// <summary>A piece as bytes.</summary>
    public static byte[] Of(Piece piece)
    {
        var writer = new PieceWriter();
        writer.Byte((byte)piece.Stage);
        writer.Whole(piece.Draw);
        writer.Whole(piece.Setups.Length);
        foreach (var setup in piece.Setups)
        {
            writer.Long(setup);
        }

        return writer.ToArray();
    }

    /// <summary>The piece of some bytes.</summary>
    /// <exception cref="FormatException">They are none.</exception>
    public static Piece PieceOf(byte[] bytes)
    {
        var reader = new PieceReader(bytes);
        var (stage, draw) = ((PieceStage)reader.Byte(), reader.Whole());
        var setups = new long[reader.Count(sizeof(long))];
        for (var k = 0; k < setups.Length; k++)
        {
            setups[k] = reader.Long();
        }

        reader.End();
        return new Piece(stage, [.. setups], draw);
    }

    /// <summary>Rows as bytes.</summary>
    public static byte[] Of(IReadOnlyList<SetupRow> rows)
    {
        var writer = new PieceWriter();
        writer.Whole(rows.Count);
        foreach (var row in rows)
        {
            writer.Whole(row.Refusal);
            writer.Numbers(row.Numbers);
            writer.Numbers(row.Excesses.AsSpan());
        }

        return writer.ToArray();
    }

    /// <summary>The rows of some bytes.</summary>
    /// <exception cref="FormatException">They are none.</exception>
    public static SetupRow[] RowsOf(byte[] bytes)
    {
        var reader = new PieceReader(bytes);
        var rows = new SetupRow[reader.Count(LeastRow)];
        for (var k = 0; k < rows.Length; k++)
        {
            var (refusal, numbers) = (reader.Whole(), reader.Numbers());
            rows[k] = new SetupRow(refusal, numbers) { Excesses = ImmutableArray.Create(reader.Numbers()) };
        }

        reader.End();
        return rows;
    }
}
