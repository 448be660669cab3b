namespace Heaveline.Camera.Tracks;

/// <summary>The sums of a least squares in four unknowns: gain and offset of the brightness, and the step to the hub.</summary>
internal sealed class Sums
{
    private readonly double[,] normal = new double[4, 4];
    private readonly double[] right = new double[4];
    private double square;
    private double total;
    private double mean;
    private int count;

    /// <summary>Adds a pixel.</summary>
    /// <param name="weight">How much it counts: 1 over its variance.</param>
    /// <param name="value">Brightness of the template there.</param>
    /// <param name="byX">How it changes when the hub moves to the right, a pixel.</param>
    /// <param name="byY">How it changes when the hub moves down, a pixel.</param>
    /// <param name="seen">Brightness of the frame there.</param>
    public void Add(double weight, double value, double byX, double byY, double seen)
    {
        ReadOnlySpan<double> row = [value, 1.0, byX, byY];
        for (var i = 0; i < 4; i++)
        {
            right[i] += weight * row[i] * seen;
            for (var j = 0; j < 4; j++)
            {
                normal[i, j] += weight * row[i] * row[j];
            }
        }

        (square, total, mean, count) = (square + (weight * seen * seen), total + weight, mean + (weight * seen), count + 1);
    }

    /// <summary>Gain, step to the hub, its doubt and how much of the frame's variance the template explains; null where nothing can be
    /// told.</summary>
    public (double Gain, double X, double Y, double Doubt, double Likeness)? Solved()
    {
        if (count < 30 || Inverse(normal) is not { } inverse)
        {
            return null;
        }

        var solution = new double[4];
        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                solution[i] += inverse[i, j] * right[j];
            }
        }

        var misses = square;
        for (var i = 0; i < 4; i++)
        {
            misses -= solution[i] * right[i];
        }

        var gain = solution[0];
        var variance = Math.Max(misses, 0.0) / (count - 4);
        var whole = square - (mean * mean / total);
        // The columns are of the template itself: its gain is that of the step too.
        var doubt = Math.Sqrt(Math.Max(variance * 0.5 * (inverse[2, 2] + inverse[3, 3]), 0.0)) / Math.Max(gain, 1e-9);
        return (gain, solution[2] / gain, solution[3] / gain, doubt, Math.Clamp(1.0 - (Math.Max(misses, 0.0) / Math.Max(whole, 1e-12)), 0.0, 1.0));
    }

    private static double[,]? Inverse(double[,] of)
    {
        var (a, b) = ((double[,])of.Clone(), new double[4, 4]);
        for (var i = 0; i < 4; i++)
        {
            b[i, i] = 1.0;
        }

        for (var i = 0; i < 4; i++)
        {
            var pivot = i;
            for (var k = i + 1; k < 4; k++)
            {
                pivot = Math.Abs(a[k, i]) > Math.Abs(a[pivot, i]) ? k : pivot;
            }

            if (Math.Abs(a[pivot, i]) < 1e-12)
            {
                return null;
            }

            for (var j = 0; j < 4; j++)
            {
                (a[i, j], a[pivot, j]) = (a[pivot, j], a[i, j]);
                (b[i, j], b[pivot, j]) = (b[pivot, j], b[i, j]);
            }

            for (var k = 0; k < 4; k++)
            {
                var share = a[k, i] / a[i, i];
                if (k != i)
                {
                    for (var j = 0; j < 4; j++)
                    {
                        (a[k, j], b[k, j]) = (a[k, j] - (share * a[i, j]), b[k, j] - (share * b[i, j]));
                    }
                }
            }
        }

        for (var i = 0; i < 4; i++)
        {
            for (var j = 0; j < 4; j++)
            {
                b[i, j] /= a[i, i];
            }
        }

        return b;
    }
}
