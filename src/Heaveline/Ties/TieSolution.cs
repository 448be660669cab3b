using System.Collections.Immutable;
using Heaveline.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Ties;

/// <summary>
/// Gauss and Newton's steps with Levenberg's damping from the car file's own values to the likeliest car, and what is known of it there.
/// </summary>
internal sealed class TieSolution
{
    private const int MostSteps = 20;
    private const double Done = 2e-3;

    // Of a coordinate's standard deviation: long enough to stand above the sampling of a pass, short enough to be straight.
    private const double Reach = 0.1;

    private TieSolution()
    {
    }

    /// <summary>The coordinates of the likeliest car.</summary>
    public required double[] Point { get; init; }

    /// <summary>Covariance of all coordinates, the readings and what was known before together.</summary>
    public required Matrix<double> Covariance { get; init; }

    /// <summary>Inverse of the covariance.</summary>
    public required Matrix<double> Information { get; init; }

    /// <summary>Squares of misses and of coordinates, in standard deviations.</summary>
    public required double Misfit { get; init; }

    /// <summary>The readings beside the file's car and the fitted one.</summary>
    public required ImmutableArray<TieMatch> Matches { get; init; }

    /// <exception cref="RefusedValueException">A pass of the car file's car leaves the model's range.</exception>
    public static TieSolution Of(TieModel model)
    {
        var asked = TieNumbers.Of(model);
        var point = new double[model.Coordinates];
        var file = model.At([point])[0];
        RefuseUnknown(file, asked);
        var now = file;
        var cost = Cost(asked, point, now);
        var damping = 0.0;
        for (var step = 0; step < MostSteps; step++)
        {
            var slopes = Slopes(model, point, now, both: false);
            var (information, pull) = Normal(asked, slopes, point, now);
            var moved = false;
            for (var tries = 0; tries < 8 && !moved; tries++)
            {
                var damped = information + (damping * Matrix<double>.Build.DiagonalOfDiagonalVector(information.Diagonal()));
                var by = damped.Cholesky().Solve(pull);
                double[] next = [.. point.Zip(by, (p, d) => p + Math.Clamp(d, -2.0, 2.0))];
                var then = model.At([next])[0];
                var less = Cost(asked, next, then);
                if (less <= cost)
                {
                    moved = true;
                    var length = by.AbsoluteMaximum();
                    (point, now, cost, damping) = (next, then, less, damping < 1e-2 ? 0.0 : damping / 5.0);
                    if (length < Done)
                    {
                        step = MostSteps;
                    }
                }
                else
                {
                    damping = damping == 0.0 ? 1e-2 : 5.0 * damping;
                }
            }

            if (!moved)
            {
                break;
            }
        }

        var (known, _) = Normal(asked, Slopes(model, point, now, both: true), point, now);
        return new TieSolution
        {
            Point = point,
            Information = known,
            Covariance = known.Inverse(),
            Misfit = cost,
            Matches = [.. asked.Select((a, n) => a with { ByFile = file[n], ByFit = now[n] })],
        };
    }

    /// <summary>Slopes of numbers along every coordinate, shape (numbers, coordinates), by differences.</summary>
    /// <param name="coordinates">How many coordinates.</param>
    /// <param name="point">Where.</param>
    /// <param name="now">The numbers there.</param>
    /// <param name="both">Whether from both sides.</param>
    /// <param name="at">The numbers at points.</param>
    public static Matrix<double> Slopes(int coordinates, double[] point, double[] now, bool both, Func<IReadOnlyList<double[]>, double[][]> at)
    {
        double[] Beside(int k, double by)
        {
            var moved = (double[])point.Clone();
            moved[k] += by;
            return moved;
        }

        var up = at([.. Enumerable.Range(0, coordinates).Select(k => Beside(k, Reach))]);
        var down = both ? at([.. Enumerable.Range(0, coordinates).Select(k => Beside(k, -Reach))]) : null;
        return Matrix<double>.Build.Dense(now.Length, coordinates, (n, k) =>
        {
            var above = (up[k][n] - now[n]) / Reach;
            var below = down is null ? above : (now[n] - down[k][n]) / Reach;
            // A neighbour that leaves the model's range tells nothing; the other side does.
            return double.IsFinite(above) && double.IsFinite(below) ? 0.5 * (above + below)
                : double.IsFinite(above) ? above : double.IsFinite(below) ? below : 0.0;
        });
    }

    private static Matrix<double> Slopes(TieModel model, double[] point, double[] now, bool both) =>
        Slopes(model.Coordinates, point, now, both, model.At);

    private static double Cost(TieMatch[] asked, double[] point, double[] numbers)
    {
        var cost = point.Sum(p => p * p);
        for (var n = 0; n < asked.Length; n++)
        {
            var miss = (asked[n] with { ByFit = numbers[n] }).Miss;
            cost += miss * miss;
        }

        return double.IsFinite(cost) ? cost : double.PositiveInfinity;
    }

    private static (Matrix<double> Information, Vector<double> Pull) Normal(
        TieMatch[] asked, Matrix<double> slopes, double[] point, double[] numbers)
    {
        var misses = Vector<double>.Build.Dense(asked.Length, n => (asked[n] with { ByFit = numbers[n] }).Miss);
        // A least that the car passes says nothing about it.
        var weighed = Matrix<double>.Build.Dense(asked.Length, slopes.ColumnCount, (n, k) =>
            asked[n].IsAtLeast && numbers[n] >= asked[n].Read ? 0.0 : slopes[n, k] / asked[n].Spread);
        var information = weighed.TransposeThisAndMultiply(weighed) + Matrix<double>.Build.DenseIdentity(slopes.ColumnCount);
        return (information, weighed.TransposeThisAndMultiply(misses) - Vector<double>.Build.Dense(point));
    }

    private static void RefuseUnknown(double[] file, TieMatch[] asked)
    {
        for (var n = 0; n < file.Length; n++)
        {
            if (!double.IsFinite(file[n]))
            {
                throw new RefusedValueException(
                    $"{asked[n].Words}",
                    "beyond what the car file's car can be computed for",
                    "a crossing that the car of the file comes through",
                    "Drive the obstacle slower, or give the stop's hard end in the car file.");
            }
        }
    }
}
