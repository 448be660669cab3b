using System.Collections.Immutable;
using Heaveline.Drives.Planning;
using Heaveline.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Ties;

/// <summary>Which one pass more would tell most of what the readings leave open, by the information that it would add.</summary>
internal static class TieMore
{
    // What a yard allows; the last is only the neighbour of the last but one.
    private static readonly double[] Speeds =
        [.. new[] { 5.0, 8.0, 12.0, 16.0, 20.0, 25.0, 30.0, 40.0 }.Select(In.KilometresPerHour.ToSi)];

    // Less than this of a doubt gained is no advice (common practice, no source).
    private const double LeastGain = 0.05;

    /// <summary>The speeds at which a pass more is thought of, m/s.</summary>
    public static IReadOnlyList<double> Choice => [.. Speeds.Where(v => v <= PlankWish.Fastest * (1.0 + 1e-9))];

    /// <summary>The advice; null where nothing is open that a tie could tell, or no crossing that may be advised would tell it.</summary>
    public static TieAdvice? Of(
        TieModel model, TieSolution solved, ImmutableArray<TieEstimate> estimates, ImmutableArray<TieCrossing> crossings)
    {
        int[] open = [.. Enumerable.Range(0, estimates.Length).Where(i => estimates[i] is
        {
            Refusal: TieRefusal.Traded or TieRefusal.NotLearned or TieRefusal.NoContact, Number: not TieNumber.Spring,
        })];
        if (open.Length == 0)
        {
            return null;
        }

        var point = solved.Point;
        double[][] Flat(IReadOnlyList<double[]> points) => [.. model.More(points, Speeds).Select(rows => rows.SelectMany(row => row).ToArray())];
        var now = Flat([point])[0];
        var slopes = TieSolution.Slopes(model.Coordinates, point, now, both: false, Flat);
        var spreads = model.UsualSpreads;
        TieAdvice? best = null;
        var most = LeastGain;
        for (var v = 0; v < Speeds.Length; v++)
        {
            if (crossings.FirstOrDefault(c => c.Speed == Speeds[v]) is not { IsWithin: true } crossing)
            {
                continue;
            }

            var rows = Enumerable.Range(v * spreads.Count, spreads.Count).Where(n => double.IsFinite(now[n])).ToArray();
            if (rows.Length < spreads.Count)
            {
                continue;
            }

            // One speed is off for all its ties; a twentieth of the speed is its doubt, taken by the neighbouring speeds.
            var added = Matrix<double>.Build.Dense(rows.Length, model.Coordinates, (r, k) => slopes[rows[r], k]);
            var noise = Noise(now, v, spreads);
            var after = (solved.Information + added.TransposeThisAndMultiply(noise.Cholesky().Solve(added))).Inverse();
            foreach (var i in open)
            {
                var gain = Math.Sqrt(solved.Covariance[i, i]) - Math.Sqrt(after[i, i]);
                if (gain > most)
                {
                    most = gain;
                    best = new TieAdvice(Speeds[v], estimates[i].Number, estimates[i].End, 1.0 - Math.Sqrt(after[i, i]))
                    {
                        IntoStop = crossing.IntoStop,
                    };
                }
            }
        }

        return best;
    }

    private static Matrix<double> Noise(double[] now, int v, IReadOnlyList<double> spreads)
    {
        var (low, high) = (Math.Max(0, v - 1), Math.Min(Speeds.Length - 1, v + 1));
        var speed = Vector<double>.Build.Dense(spreads.Count, k =>
        {
            var slope = (now[(high * spreads.Count) + k] - now[(low * spreads.Count) + k]) / Math.Log(Speeds[high] / Speeds[low]);
            return double.IsFinite(slope) ? 0.5 * TiePass.UsualDoubt * slope : 0.0;
        });
        return Matrix<double>.Build.DiagonalOfDiagonalArray([.. spreads.Select(s => s * s)]) + speed.OuterProduct(speed);
    }
}
