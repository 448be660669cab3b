using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>
/// Fisher scoring with Levenberg's damping (Nocedal and Wright, Numerical Optimization, ch. 10), in stages: slow waves first, or the onset locks a
/// whole hop wave off; the roughness held at first, or all is taken for road.
/// </summary>
internal sealed class CarFit
{
    private const double LongestStep = 0.5;

    private readonly CarLikelihood likelihood;
    private readonly CancellationToken stop;
    private readonly double[] information, score, damped;

    /// <summary>A fit.</summary>
    public CarFit(CarLikelihood likelihood, CancellationToken stop)
    {
        (this.likelihood, this.stop) = (likelihood, stop);
        var n = likelihood.Count;
        (information, damped, score) = (new double[n * n], new double[n * n], new double[n]);
    }

    /// <summary>Scorings so far.</summary>
    public int Scorings { get; private set; }

    /// <summary>From a start of the two ride frequencies, Hz, through all stages. The last one's value is −ln of the posterior density.</summary>
    public (double[] At, double Value) From(double front, double rear)
    {
        var x = likelihood.Centre.ToArray();
        (x[CarParameter.FrontFrequency], x[CarParameter.RearFrequency]) = (Math.Log(front), Math.Log(rear));
        if (likelihood.Splines.Count > 0)
        {
            x[CarParameter.Roughness] = Math.Log(32e-6);
            bool Car(int i) => i <= CarParameter.Roughness;
            foreach (var limit in (double[])[3.0, 6.0])
            {
                (x, _) = Solve(x, limit, 8, Car);
                likelihood.SearchOnsets(x, limit, stop);
                likelihood.Centred(x);
            }

            bool Wheels(int i) => i is > CarParameter.PitchIndex and <= CarParameter.Roughness;
            (x, _) = Solve(x, double.PositiveInfinity, 10, Wheels);
            // An onset found at first with a car far off may lie a whole wave beside.
            if (likelihood.SearchOnsets(x, double.PositiveInfinity, stop))
            {
                (x, _) = Solve(x, double.PositiveInfinity, 10, Wheels);
            }

            (x, _) = Solve(x, double.PositiveInfinity, 10, i => i == CarParameter.Roughness);
        }

        return Solve(x, double.PositiveInfinity, 150, _ => false);
    }

    /// <summary>Steps until the value falls by less than 1e-5.</summary>
    /// <param name="from">Where it begins.</param>
    /// <param name="limit">Frequencies above it are left out, Hz.</param>
    /// <param name="most">Most steps.</param>
    /// <param name="isHeld">Which parameters stay.</param>
    public (double[] At, double Value) Solve(double[] from, double limit, int most, Func<int, bool> isHeld)
    {
        var (n, x, damping) = (likelihood.Count, from.ToArray(), 1e-2);
        var free = Enumerable.Range(0, n).Where(i => !isHeld(i)).ToArray();
        var value = double.NaN;
        for (var step = 0; step < most; step++)
        {
            value = likelihood.Score(x, limit, information, score, stop);
            Scorings++;
            var right = free.Select(i => score[i] - (likelihood.Precision[i] * (x[i] - likelihood.Centre[i]))).ToArray();
            for (var i = 0; i < free.Length; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    damped[(i * free.Length) + j] = information[(free[i] * n) + free[j]];
                }

                damped[(i * free.Length) + i] += likelihood.Precision[free[i]];
            }

            var fall = double.NaN;
            for (var attempt = 0; attempt < 8 && double.IsNaN(fall); attempt++)
            {
                if (PositiveMatrix.Of(damped, free.Length, damping) is not { } matrix)
                {
                    damping *= 10.0;
                    continue;
                }

                var (by, next) = (matrix.Solve(right), x.ToArray());
                for (var i = 0; i < free.Length; i++)
                {
                    next[free[i]] += Math.Clamp(by[i], -LongestStep, LongestStep);
                }

                var there = likelihood.Value(next, limit, stop);
                if (there < value + 1e-9)
                {
                    (fall, x, value) = (value - there, next, there);
                }
                else
                {
                    damping *= 6.0;
                }
            }

            damping = Math.Max(damping / 6.0, 1e-8);
            if (!(fall >= 1e-5))
            {
                break;
            }
        }

        return (x, value);
    }

    /// <summary>The information of the likelihood at a place, shape (n, n), and every window's score of all parameters.</summary>
    public (double[] Information, double[][] Scores) At(double[] x)
    {
        likelihood.Score(x, double.PositiveInfinity, information, score, stop);
        var scores = likelihood.Terms.Select((term, w) =>
        {
            var row = new double[likelihood.Count];
            for (var i = 0; i < term.Parameters; i++)
            {
                row[likelihood.Place(w, i)] = term.Score[i];
            }

            return row;
        }).ToArray();
        return (information.ToArray(), scores);
    }
}
