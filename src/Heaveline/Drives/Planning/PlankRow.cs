using System.Collections.Immutable;

namespace Heaveline.Drives.Planning;

/// <summary>
/// A row of planks in the search, per metre of its greatest height: lengths, heights over the greatest, clear gaps, one kind of edge.
/// </summary>
internal sealed record PlankRow
{
    /// <summary>Longest row, m.</summary>
    public const double Longest = 16.0;

    /// <summary>A board's end is sawn to a wedge over so much, m.</summary>
    public const double WedgeAlong = 0.45;

    /// <summary>Shortest place of boards along the track, m: both wedges.</summary>
    public const double ShortestAlong = 0.9;

    private PlankRow(double[] lengths, double[] heights, double[] gaps, double edge, bool isAlong)
    {
        (Lengths, Heights, Gaps, Edge, IsAlong) = (lengths, heights, gaps, edge, isAlong);
        var (edges, x) = (new (double, double)[2 * lengths.Length], 0.0);
        for (var k = 0; k < lengths.Length; k++)
        {
            x += k == 0 ? 0.0 : gaps[k - 1];
            edges[2 * k] = (x + (0.5 * edge), heights[k]);
            x += lengths[k];
            edges[(2 * k) + 1] = (x - (0.5 * edge), -heights[k]);
        }

        (Edges, End) = (edges, x);
    }

    public double[] Lengths { get; }

    public double[] Heights { get; }

    public double[] Gaps { get; }

    public double Edge { get; }

    public bool IsAlong { get; }

    /// <summary>Middle of each edge, m, and the step up there over the greatest height.</summary>
    public (double X, double Step)[] Edges { get; }

    public double End { get; }

    /// <summary>About how many metres of board both tracks take.</summary>
    public double Metres => 2.0 * Lengths.Zip(Heights, (l, h) => (IsAlong ? 3.0 * l : l / 0.15 * LaidBoards.PieceAcross) * h).Sum();

    /// <summary>What rows of one kind share: all but the gap and some of the length.</summary>
    public (double, int, int, double) Kind => (Edge, Lengths.Length, (int)Lengths[0], Heights[0] - Heights[^1]);

    /// <summary>Every row that is tried, before the purest are moved about.</summary>
    public static IEnumerable<PlankRow> All(ImmutableArray<BoardSize> boards)
    {
        (double Length, double Edge)[] across =
        [
            .. boards.SelectMany(b => Enumerable.Range(1, 6).Select(n => (Math.Round(n * b.Width, 4), n > 1 ? b.Width : b.Thickness))).Distinct(),
        ];
        double[] along = [.. Enumerable.Range(3, 14).Select(k => 0.3 * k).Where(l => l <= boards.Max(b => b.Length) + 1e-9)];
        double[] gaps = [.. Enumerable.Range(1, 30).Select(k => 0.2 * k)];
        double[][] patterns = [[1.0, 1.0], [1.0, 0.5], [0.5, 1.0], [1.0, 1.0, 1.0], [1.0, 1.0, 1.0, 1.0]];
        foreach (var (length, edge, isAlong) in across.Select(l => (l.Length, l.Edge, false)).Concat(along.Select(l => (l, WedgeAlong, true))))
        {
            yield return new([length], [1.0], [], edge, isAlong);
            foreach (var row in from gap in gaps
                                from heights in patterns
                                select new PlankRow(
                                    [.. heights.Select(_ => length)], heights, [.. Enumerable.Repeat(gap, heights.Length - 1)], edge, isAlong))
            {
                if (row.End <= Longest)
                {
                    yield return row;
                }
            }
        }

        foreach (var row in from first in along
                            from second in along
                            where first != second
                            from gap in gaps.Where((_, k) => k % 2 == 1)
                            select new PlankRow([first, second], [1.0, 1.0], [gap], WedgeAlong, isAlong: true))
        {
            yield return row;
        }
    }

    /// <summary>Rows like this one with one gap, or one length of boards along the track, a little other.</summary>
    public IEnumerable<PlankRow> Neighbours()
    {
        for (var k = 0; k < Gaps.Length; k++)
        {
            foreach (var by in (double[])[-0.3, -0.1, 0.1, 0.3])
            {
                double[] gaps = [.. Gaps.Select((g, i) => i == k ? Math.Round(g + by, 3) : g)];
                if (gaps[k] >= 0.2 - 1e-9 && gaps[k] <= 8.0)
                {
                    yield return new(Lengths, Heights, gaps, Edge, IsAlong);
                }
            }
        }

        for (var k = 0; IsAlong && k < Lengths.Length; k++)
        {
            foreach (var by in (double[])[-0.3, -0.1, 0.1, 0.3])
            {
                double[] lengths = [.. Lengths.Select((l, i) => i == k ? Math.Round(l + by, 3) : l)];
                if (lengths[k] >= ShortestAlong - 1e-9)
                {
                    yield return new(lengths, Heights, Gaps, Edge, IsAlong);
                }
            }
        }
    }

    /// <summary>The row in real boards, the highest first, none above the greatest height.</summary>
    public IEnumerable<PlankLayout> Layouts(ImmutableArray<BoardSize> boards) =>
        End > Longest
            ? []
            : from board in boards
              where IsAlong
                  ? Lengths.Max() <= board.Length + 1e-9 && IsWidest(board, boards)
                  : Math.Abs(Edge - (IsSingle(board) ? board.Thickness : board.Width)) < 1e-9
              from layers in new[] { 1, 2 }
              where layers * board.Thickness <= PlankWish.MostHeight + 1e-9
                  && Heights.All(h => Math.Abs((h * layers) - Math.Round(h * layers)) < 1e-9)
                  && (layers == 1 || (!IsSingle(board) && IsNoBoard(2.0 * board.Thickness, boards)))
              orderby layers * board.Thickness descending, layers
              select Laid(board, layers);

    // Along a track the widest boards of a thickness are the fewest.
    private static bool IsWidest(BoardSize board, ImmutableArray<BoardSize> boards) =>
        !boards.Any(b => b.Thickness == board.Thickness && b.Width > board.Width && b.Length >= board.Length);

    // Two boards on one another only where none is as thick, or where a lower place stands beside.
    private bool IsNoBoard(double thickness, ImmutableArray<BoardSize> boards) =>
        Heights.Any(h => h < 1.0) || !boards.Any(b => Math.Abs(b.Thickness - thickness) < 0.005);

    private bool IsSingle(BoardSize board) => !IsAlong && Math.Abs(Lengths[0] - board.Width) < 1e-9;

    private PlankLayout Laid(BoardSize board, int layers)
    {
        var (places, x) = (ImmutableArray.CreateBuilder<LaidBoards>(), 0.0);
        for (var k = 0; k < Lengths.Length; k++)
        {
            x += k == 0 ? 0.0 : Gaps[k - 1];
            places.Add(new LaidBoards
            {
                Start = x,
                Length = Lengths[k],
                Layers = (int)Math.Round(Heights[k] * layers),
                Size = board,
                IsAlong = IsAlong,
                Edge = Edge,
            });
            x += Lengths[k];
        }

        return new PlankLayout { Places = places.ToImmutable() };
    }
}
