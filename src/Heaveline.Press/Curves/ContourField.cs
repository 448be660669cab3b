using Heaveline.Press.Paper;

namespace Heaveline.Press.Curves;

/// <summary>
/// Values at the nodes of a rectangular grid on the sheet, cut at a level by marching squares. Along an edge the value runs straight; a cell
/// whose diagonals lie on different sides is joined or parted by the saddle value of the bilinear surface [Nielson and Hamann, The asymptotic
/// decider, IEEE Visualization 1991]. A cell with a missing corner is no part of the field.
/// </summary>
/// <param name="xs">Places of the columns, shape (nx), points, in one direction.</param>
/// <param name="ys">Places of the rows, shape (ny), points, in one direction.</param>
/// <param name="values">Values, shape (ny, nx), x running fastest; NaN where there is none.</param>
internal sealed class ContourField(double[] xs, double[] ys, double[] values)
{
    private readonly int nx = xs.Length, ny = ys.Length;

    /// <summary>The outlines of the region at or above a level; minus infinity asks for the whole field.</summary>
    public List<ContourLoop> Regions(double level)
    {
        var steps = new ContourSteps();
        ForEachCell((i, j) =>
        {
            Cut(i, j, level, steps);
            Rim(i, j, level, steps);
        });
        var flipped = (xs[^1] - xs[0]) * (ys[^1] - ys[0]) < 0.0 ? -1.0 : 1.0;
        return [.. steps.Chains().Select(chain => ContourLoop.Of([.. chain.Select(key => PlaceOf(key, level))], flipped))];
    }

    /// <summary>The contour lines of a level, the region above on one side throughout; a closed line ends on its first point.</summary>
    public List<Spot[]> Lines(double level)
    {
        var steps = new ContourSteps();
        ForEachCell((i, j) => Cut(i, j, level, steps));
        return [.. steps.Chains().Select(chain => chain.Select(key => PlaceOf(key, level)).ToArray())];
    }

    /// <summary>The value at a place, bilinear in its cell; NaN outside the field.</summary>
    public double At(double x, double y)
    {
        var (i, j) = (CellOf(xs, x), CellOf(ys, y));
        if (i < 0 || j < 0)
        {
            return double.NaN;
        }

        var (u, v, n) = ((x - xs[i]) / (xs[i + 1] - xs[i]), (y - ys[j]) / (ys[j + 1] - ys[j]), (j * nx) + i);
        return ((1.0 - v) * (((1.0 - u) * values[n]) + (u * values[n + 1]))) + (v * (((1.0 - u) * values[n + nx]) + (u * values[n + nx + 1])));
    }

    private static int CellOf(double[] places, double at)
    {
        var (low, high) = (0, places.Length - 1);
        var rising = places[high] > places[0];
        if (rising ? at < places[0] || at > places[high] : at > places[0] || at < places[high])
        {
            return -1;
        }

        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = (places[middle] <= at) == rising ? (middle, high) : (low, middle);
        }

        return low;
    }

    private void ForEachCell(Action<int, int> work)
    {
        for (var j = 0; j < ny - 1; j++)
        {
            for (var i = 0; i < nx - 1; i++)
            {
                if (Whole(i, j))
                {
                    work(i, j);
                }
            }
        }
    }

    private bool Whole(int i, int j)
    {
        var n = (j * nx) + i;
        return i >= 0 && j >= 0 && i < nx - 1 && j < ny - 1
            && !double.IsNaN(values[n]) && !double.IsNaN(values[n + 1]) && !double.IsNaN(values[n + nx]) && !double.IsNaN(values[n + nx + 1]);
    }

    // Going round a cell (rows and columns counted rightwards and up: anticlockwise), the region's outline leaves the edge where the value
    // falls below the level and comes back where it rises above it again.
    private void Cut(int i, int j, double level, ContourSteps steps)
    {
        Span<int> corners = [(j * nx) + i, (j * nx) + i + 1, ((j + 1) * nx) + i + 1, ((j + 1) * nx) + i];
        Span<(int Key, bool Leaves)> crossings = stackalloc (int, bool)[4];
        var count = 0;
        for (var k = 0; k < 4; k++)
        {
            var (from, to) = (corners[k], corners[(k + 1) % 4]);
            if (values[from] >= level != values[to] >= level)
            {
                crossings[count++] = (EdgeKey(from, to), values[from] >= level);
            }
        }

        var forward = count == 4 && Saddle(corners) >= level ? 1 : count - 1;
        for (var k = 0; k < count; k++)
        {
            if (crossings[k].Leaves)
            {
                steps.Add(crossings[k].Key, crossings[(k + forward) % count].Key);
            }
        }
    }

    // Where no cell lies beyond an edge, the outline runs along it.
    private void Rim(int i, int j, double level, ContourSteps steps)
    {
        var n = (j * nx) + i;
        if (!Whole(i, j - 1))
        {
            RimStep(n, n + 1, level, steps);
        }

        if (!Whole(i + 1, j))
        {
            RimStep(n + 1, n + nx + 1, level, steps);
        }

        if (!Whole(i, j + 1))
        {
            RimStep(n + nx + 1, n + nx, level, steps);
        }

        if (!Whole(i - 1, j))
        {
            RimStep(n + nx, n, level, steps);
        }
    }

    private void RimStep(int from, int to, double level, ContourSteps steps)
    {
        var (starts, ends) = (values[from] >= level, values[to] >= level);
        if (starts || ends)
        {
            steps.Add(starts ? 3 * from : EdgeKey(from, to), ends ? 3 * to : EdgeKey(from, to));
        }
    }

    private double Saddle(ReadOnlySpan<int> corners)
    {
        var (a, b, c, d) = (values[corners[0]], values[corners[1]], values[corners[2]], values[corners[3]]);
        return ((a * c) - (b * d)) / (a + c - b - d);
    }

    // A node is 3n; the crossing on the edge from node n rightwards 3n + 1, upwards 3n + 2.
    private static int EdgeKey(int from, int to) => (3 * Math.Min(from, to)) + (Math.Abs(from - to) == 1 ? 1 : 2);

    private Spot PlaceOf(int key, double level)
    {
        var (n, kind) = (key / 3, key % 3);
        var here = new Spot(xs[n % nx], ys[n / nx]);
        if (kind == 0)
        {
            return here;
        }

        var next = kind == 1 ? n + 1 : n + nx;
        var share = (level - values[n]) / (values[next] - values[n]);
        return new Spot(here.X + (share * (xs[next % nx] - here.X)), here.Y + (share * (ys[next / nx] - here.Y)));
    }
}
