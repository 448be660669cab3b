using Heaveline.Passes;
using Heaveline.Pieces;

namespace Heaveline.Studies;

/// <summary>Some speeds of one of the maps of a rule, and what came of them, as bytes.</summary>
/// <param name="Load">The load: 0 is that which was asked for, the others follow in the order of the car file.</param>
/// <param name="Values">How many values are tried.</param>
/// <param name="Speeds">How many speeds the map has.</param>
/// <param name="Group">Which measures: they come in groups that look about as long.</param>
/// <param name="First">The first of the speeds.</param>
/// <param name="Count">How many.</param>
internal readonly record struct RulePiece(int Load, int Values, int Speeds, int Group, int First, int Count)
{
    private const byte NoCar = 255;

    /// <summary>From bytes; whether the study has such a piece is not said.</summary>
    /// <exception cref="FormatException">They are those of no piece.</exception>
    public static RulePiece Of(byte[] bytes)
    {
        var reader = new PieceReader(bytes);
        var piece = new RulePiece(reader.Whole(), reader.Whole(), reader.Whole(), reader.Whole(), reader.Whole(), reader.Whole());
        reader.End();
        return piece;
    }

    /// <summary>As bytes.</summary>
    public byte[] ToBytes()
    {
        var writer = new PieceWriter();
        foreach (var number in new[] { Load, Values, Speeds, Group, First, Count })
        {
            writer.Whole(number);
        }

        return writer.ToArray();
    }

    /// <summary>An answer as bytes.</summary>
    public static byte[] Answer((double[][] Rows, PassOutcome?[] Outcomes) done)
    {
        var writer = new PieceWriter();
        writer.Whole(done.Rows.Length);
        foreach (var (row, outcome) in done.Rows.Zip(done.Outcomes))
        {
            writer.Byte(outcome is { } ended ? (byte)ended : NoCar);
            writer.Numbers(row);
        }

        return writer.ToArray();
    }

    /// <summary>An answer from bytes.</summary>
    /// <exception cref="FormatException">They are those of no answer.</exception>
    public static (double[][] Rows, PassOutcome?[] Outcomes) Answer(byte[] bytes)
    {
        var reader = new PieceReader(bytes);
        var rows = new double[reader.Count(1 + sizeof(int))][];
        var outcomes = new PassOutcome?[rows.Length];
        for (var k = 0; k < rows.Length; k++)
        {
            outcomes[k] = reader.Byte() is var ended && ended == NoCar ? null
                : Enum.IsDefined((PassOutcome)ended) ? (PassOutcome)ended
                : throw new FormatException("A pass cannot end so.");
            rows[k] = reader.Numbers();
        }

        reader.End();
        return (rows, outcomes);
    }
}
