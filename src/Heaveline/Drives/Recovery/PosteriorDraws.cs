using Heaveline.Drives.Identification;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// Cars and humps that a drive leaves possible, drawn together: what makes the car's springs stiffer makes its humps lower, and both are in one draw.
/// </summary>
internal sealed class PosteriorDraws
{
    /// <summary>How many.</summary>
    public const int Count = 64;

    private const ulong Seed = 1000;

    private readonly CarFromDrive found;
    private readonly double[][] off;

    /// <param name="found">The car identified from a drive.</param>
    public PosteriorDraws(CarFromDrive found)
    {
        this.found = found;
        // Shared parameters and humps come first among all.
        var m = found.OwnAt;
        var n = found.Mean.Length;
        // Few windows do not tell their own scatter well: Student's t in place of the normal distribution.
        var wider = CarPosterior.Quantile(found.Windows.Length) / Gaussian.Ninety;
        var factor = Matrix<double>.Build.Dense(m, m, (i, j) => found.Covariance[(i * n) + j]).Evd(Symmetricity.Symmetric);
        var size = Vector<double>.Build.Dense(m, i => wider * Math.Sqrt(Math.Max(0.0, factor.EigenValues[i].Real)));
        off = [.. Enumerable.Range(0, Count).Select(draw => (factor.EigenVectors * size.PointwiseMultiply(Vector<double>.Build.Dense(
            m, i => SplitMix.Normals(Seed, 2UL * (ulong)((draw * m) + i)).First))).ToArray())];
    }

    /// <summary>The car's parameters in a draw.</summary>
    public double[] Car(int draw) => [.. Enumerable.Range(0, CarParameter.Shared).Select(i => found.Mean[i] + off[draw][i])];

    /// <summary>Heights of the splines of a site's hump in a draw, m.</summary>
    public double[] Hump(string site, int draw)
    {
        var (_, at, splines, _) = found.Splines.First(s => s.Site == site);
        return [.. Enumerable.Range(0, splines.Count).Select(j => found.Mean[at + j] + off[draw][at + j])];
    }

    /// <summary>A road with the hump that a draw makes of its site's.</summary>
    public RecoveredRoad Road(RecoveredRoad road, int draw)
    {
        var hump = found.Humps.First(h => h.Site == road.Site);
        var (_, at, splines, begin) = found.Splines.First(s => s.Site == road.Site);
        double[] by = [.. hump.Distance.Select(x => Enumerable.Range(0, splines.Count).Sum(j => off[draw][at + j] * splines.At(j, begin + x)))];
        var step = hump.Distance[1] - hump.Distance[0];
        var heights = road.Height.Select((height, i) =>
        {
            var place = road.Distance[i] / step;
            var k = (int)Math.Floor(place);
            return k < 0 || k + 1 >= by.Length ? height : height + by[k] + ((place - k) * (by[k + 1] - by[k]));
        });
        return road with { Height = [.. heights] };
    }
}
