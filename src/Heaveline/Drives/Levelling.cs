using Heaveline.Elements;
using Heaveline.Numerics;

namespace Heaveline.Drives;

/// <summary>Which way is up, from gravity, and by how much the accelerometer's scale is off.</summary>
/// <param name="Up">Up along the phone's axes, of length 1.</param>
/// <param name="Gain">By what the accelerometer's values are multiplied so that gravity comes out right.</param>
internal readonly record struct Levelling(Direction Up, double Gain)
{
    // Rows farther from the mean than this many median distances are hits or hard braking.
    private const double Far = 2.5;
    private const int Sorted = 20_000;

    /// <summary>The robust mean of the specific force.</summary>
    /// <param name="force">The specific force on the grid, three columns, m/s².</param>
    /// <param name="rows">The samples to read.</param>
    public static Levelling Of(double[][] force, ReadOnlySpan<int> rows)
    {
        var mean = Mean(force, rows);
        // The median of some ten thousand rows is that of all to a hundredth of itself.
        var every = Math.Max(1, rows.Length / Sorted);
        var distances = new double[((rows.Length - 1) / every) + 1];
        for (var round = 0; round < 5; round++)
        {
            for (var i = 0; i < distances.Length; i++)
            {
                distances[i] = (At(force, rows[i * every]) - mean).Length;
            }

            var most = Far * Middle.Ranked(distances, distances.Length / 2);
            var (sum, count) = (default(Direction), 0);
            foreach (var row in rows)
            {
                var one = At(force, row);
                if ((one - mean).Length <= most)
                {
                    sum += one;
                    count++;
                }
            }

            mean = count > 0 ? sum * (1.0 / count) : mean;
        }

        return new Levelling(mean.Unit, Gravity.Standard / mean.Length);
    }

    /// <summary>
    /// Half-width of up's 90 % interval, rad: from the means over sixteenths of the drive, which differ by slopes, leaning and bumps.
    /// </summary>
    /// <param name="force">The specific force on the grid, three columns, m/s².</param>
    /// <param name="rows">The samples to read.</param>
    public double HalfWidth(double[][] force, ReadOnlySpan<int> rows)
    {
        const int parts = 16;
        // Student's at 95 % with 15 degrees of freedom.
        const double reach = 1.753;
        var square = 0.0;
        for (var k = 0; k < parts; k++)
        {
            var (from, to) = ((int)((long)rows.Length * k / parts), (int)((long)rows.Length * (k + 1) / parts));
            var off = to > from ? Up.AngleTo(Mean(force, rows[from..to])) : 0.0;
            square += off * off;
        }

        return reach * Math.Sqrt(square / parts / (parts - 1));
    }

    /// <summary>A row as a direction.</summary>
    public static Direction At(double[][] columns, int row) => new(columns[0][row], columns[1][row], columns[2][row]);

    private static Direction Mean(double[][] force, ReadOnlySpan<int> rows)
    {
        var sum = default(Direction);
        foreach (var row in rows)
        {
            sum += At(force, row);
        }

        return sum * (1.0 / rows.Length);
    }
}
