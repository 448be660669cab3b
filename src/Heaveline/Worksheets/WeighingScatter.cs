using Heaveline.Numerics;

namespace Heaveline.Worksheets;

/// <summary>
/// What the repeats of a weighing say of its means: half-widths by their scatter alone, kg; all zero without repeats. Of the four sums of the wheels'
/// readings (car, front less rear, left less right, one diagonal less the other) statics fixes three as long as the centre of gravity stays;
/// friction and tyres move the fourth.
/// </summary>
/// <param name="Wheel">Of one wheel: pooled over the four, which scatter alike.</param>
/// <param name="Sum">Of half of each sum that statics fixes: pooled over the three.</param>
/// <param name="Cross">Of half the difference of the diagonals: as if the whole scatter of a wheel were a shift along them.</param>
internal sealed record WeighingScatter(double Wheel, double Sum, double Cross)
{
    /// <summary>The scatter within each way round.</summary>
    /// <param name="ways">
    /// Readings of the four wheels (front left, front right, rear left, rear right), kg, round by round for each way round.
    /// </param>
    public static WeighingScatter Of(IReadOnlyList<double[][]> ways)
    {
        var freedom = ways.Sum(rounds => rounds.Length - 1);
        if (freedom == 0)
        {
            return new(0.0, 0.0, 0.0);
        }

        var wheels = ways.Sum(rounds => Enumerable.Range(0, 4).Sum(i => Squares(rounds, w => w[i])));
        var sums = ways.Sum(rounds => Squares(rounds, w => 0.5 * (w[0] + w[1] + w[2] + w[3]))
            + Squares(rounds, w => 0.5 * (w[0] + w[1] - w[2] - w[3]))
            + Squares(rounds, w => 0.5 * (w[0] - w[1] + w[2] - w[3])));
        var perMean = Math.Sqrt(ways.Sum(rounds => 1.0 / rounds.Length)) / ways.Count;
        double HalfWidth(double squares, int count) =>
            LeastSquares.Student(count * freedom) * Math.Sqrt(squares / (count * freedom)) * perMean;
        var wheel = HalfWidth(wheels, 4);
        return new(wheel, HalfWidth(sums, 3), 2.0 * wheel);
    }

    /// <summary>The wheels with half of each sum moved, in the order car, front, left, diagonal of front left and rear right.</summary>
    public static double[] Moved(double[] wheels, double[] by) =>
    [
        wheels[0] + (0.5 * (by[0] + by[1] + by[2] + by[3])),
        wheels[1] + (0.5 * (by[0] + by[1] - by[2] - by[3])),
        wheels[2] + (0.5 * (by[0] - by[1] + by[2] - by[3])),
        wheels[3] + (0.5 * (by[0] - by[1] - by[2] + by[3])),
    ];

    private static double Squares(double[][] rounds, Func<double[], double> of)
    {
        var mean = rounds.Average(of);
        return rounds.Sum(w => Math.Pow(of(w) - mean, 2));
    }
}
