using System.Collections.Immutable;

namespace Heaveline.Drives.Planning;

/// <summary>What to saw for a row of planks, and what to buy for it.</summary>
public sealed record CuttingList
{
    /// <summary>Saw blade, m. Common practice, no source.</summary>
    public const double Kerf = 0.004;

    /// <summary>Pieces: board, length in metres, how many of it.</summary>
    public required ImmutableArray<(BoardSize Size, double Length, int Count)> Pieces { get; init; }

    /// <summary>Whole boards to buy, by size.</summary>
    public required ImmutableArray<(BoardSize Size, int Count)> Boards { get; init; }

    /// <summary>The list for a row.</summary>
    /// <param name="layout">The row.</param>
    /// <param name="tracks">Wheel tracks, 1 or 2.</param>
    public static CuttingList Of(PlankLayout layout, int tracks)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ImmutableArray<(BoardSize Size, double Length, int Count)> pieces =
        [
            .. layout.Places.GroupBy(p => (p.Size, Piece: Math.Round(p.Piece, 4)))
                .Select(g => (g.Key.Size, g.Key.Piece, tracks * g.Sum(p => p.Pieces)))
                .OrderByDescending(p => p.Piece),
        ];
        return new CuttingList
        {
            Pieces = pieces,
            Boards = [.. pieces.GroupBy(p => p.Size).Select(g => (g.Key, Whole(g.Key, [.. g])))],
        };
    }

    /// <summary>Metres of board that a row takes.</summary>
    internal static double Metres(PlankLayout layout, int tracks) => tracks * layout.Places.Sum(p => p.Piece * p.Pieces);

    // The longest pieces first, each into the first board with room for it.
    private static int Whole(BoardSize size, IReadOnlyList<(BoardSize Size, double Length, int Count)> pieces)
    {
        var left = new List<double>();
        foreach (var (_, length, count) in pieces.OrderByDescending(p => p.Length))
        {
            for (var n = 0; n < count; n++)
            {
                var at = left.FindIndex(room => room >= length - 1e-9);
                if (at < 0)
                {
                    left.Add(size.Length);
                    at = left.Count - 1;
                }

                left[at] -= length + Kerf;
            }
        }

        return left.Count;
    }
}
