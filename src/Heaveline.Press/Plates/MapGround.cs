using Heaveline.Figures;
using Heaveline.Press.Curves;
using Heaveline.Press.Scales;

namespace Heaveline.Press.Plates;

/// <summary>The grid of a map cut to the range of its axes and placed on the sheet.</summary>
internal static class MapGround
{
    /// <summary>The field on the sheet.</summary>
    public static ContourField Of(MapGrid grid, MapScale scale, Scale x, Scale y)
    {
        var xs = Cut(grid.Xs, x.Span);
        var ys = Cut(grid.Ys, y.Span);
        var values = new double[xs.Length * ys.Length];
        for (var j = 0; j < ys.Length; j++)
        {
            for (var i = 0; i < xs.Length; i++)
            {
                values[(j * xs.Length) + i] = Value(grid, scale, xs[i], ys[j]);
            }
        }

        return new ContourField([.. xs.Select(x.At)], [.. ys.Select(y.At)], values);
    }

    // Nodes inside the range, and a new one at each end of the range that lies between nodes. A map wholly outside keeps its first cell,
    // pressed flat at the edge where it cannot be seen.
    private static double[] Cut(IReadOnlyList<double> places, Span span)
    {
        var (low, high) = (Math.Max(span.Low, places[0]), Math.Min(span.High, places[^1]));
        return low < high
            ? [low, .. places.Where(place => place > low && place < high), high]
            : [Math.Clamp(places[0], span.Low, span.High), Math.Clamp(places[0], span.Low, span.High)];
    }

    private static double Value(MapGrid grid, MapScale scale, double x, double y)
    {
        var ((i, u), (j, v)) = (Between(grid.Xs, x), Between(grid.Ys, y));

        // Weightless neighbours are left out, so that a missing value beside a node does not take the node away.
        double Along(int row) =>
            u == 0.0 ? scale.Inner(grid.At(row, i)) : ((1.0 - u) * scale.Inner(grid.At(row, i))) + (u * scale.Inner(grid.At(row, i + 1)));
        return v == 0.0 ? Along(j) : ((1.0 - v) * Along(j)) + (v * Along(j + 1));
    }

    private static (int Node, double Share) Between(IReadOnlyList<double> places, double at)
    {
        var node = 0;
        while (node < places.Count - 1 && places[node + 1] <= at)
        {
            node++;
        }

        return node == places.Count - 1 || at <= places[node] ? (node, 0.0) : (node, (at - places[node]) / (places[node + 1] - places[node]));
    }
}
