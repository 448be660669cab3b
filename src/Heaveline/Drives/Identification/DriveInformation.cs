using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>
/// Fisher's information of windows that were never driven, beside those that were: it depends on car, hump, road and speeds and on no data.
/// </summary>
internal sealed class DriveInformation
{
    private readonly List<WindowSpectrum> windows = [];
    private readonly List<(double Speed, double Onset)> doubts = [];
    private readonly List<HumpSplines> splines = [];
    private readonly List<double[]> heights = [];
    private readonly Dictionary<(double Rate, double Band), SpectralGrid> grids = [];
    private readonly IdentificationKnown known;
    private readonly double[] shared;

    /// <summary>Information at a car.</summary>
    /// <param name="known">What is known before.</param>
    /// <param name="shared">Shared parameters.</param>
    public DriveInformation(IdentificationKnown known, double[] shared) => (this.known, this.shared) = (known, shared);

    /// <summary>The windows of a problem at the end of its fit; their own speeds and onsets count as said.</summary>
    public DriveInformation(CarProblem problem, double[] x)
        : this(problem.Known, x[..CarParameter.Shared])
    {
        for (var h = 0; h < problem.Sites.Length; h++)
        {
            splines.Add(problem.Likelihood.Splines[h]);
            heights.Add(x.AsSpan(problem.Likelihood.HumpAt[h], splines[h].Count).ToArray());
        }

        for (var w = 0; w < problem.Windows.Count; w++)
        {
            var (window, spectrum) = (problem.Windows[w], problem.Likelihood.Windows[w]);
            windows.Add(spectrum);
            doubts.Add((window.SpeedSpread, window.BeforeSpread));
        }
    }

    /// <summary>How many windows.</summary>
    public int Count => windows.Count;

    /// <summary>Adds a hump; its number.</summary>
    /// <param name="length">m.</param>
    /// <param name="profile">Its heights at even distances, m.</param>
    /// <param name="shortestWave">The shortest wave that the slowest pass over it feels, m.</param>
    public int Hump(double length, IReadOnlyList<double> profile, double shortestWave)
    {
        splines.Add(new HumpSplines(length, shortestWave));
        heights.Add(Drawn(splines[^1], length, profile));
        return splines.Count - 1;
    }

    /// <summary>Adds windows of five seconds.</summary>
    /// <param name="times">How many.</param>
    /// <param name="speed">m/s.</param>
    /// <param name="spread">Standard deviation of ln of the speed.</param>
    /// <param name="hump">Number of the hump; −1 for none.</param>
    /// <param name="rate">Samples a second, Hz.</param>
    /// <param name="band">The highest frequency, Hz.</param>
    public void Add(int times, double speed, double spread, int hump, double rate, double band)
    {
        if (!grids.TryGetValue((rate, band), out var grid))
        {
            grids[(rate, band)] = grid = new SpectralGrid((int)Math.Round(5.0 * rate), rate, band);
        }

        for (var k = 0; k < times; k++)
        {
            windows.Add(new WindowSpectrum(grid, null, speed, hump, CarProblem.Drawn(hump < 0 ? null : splines[hump], speed)));
            doubts.Add((spread, 0.5));
        }
    }

    /// <summary>A copy to which more can be added.</summary>
    public DriveInformation Copy()
    {
        var copy = new DriveInformation(known, shared);
        copy.windows.AddRange(windows);
        copy.doubts.AddRange(doubts);
        copy.splines.AddRange(splines);
        copy.heights.AddRange(heights);
        return copy;
    }

    /// <summary>Standard deviations of sums of the car's parameters; NaN where nothing is known.</summary>
    /// <param name="slopes">A sum a row, shape (sums, car's parameters).</param>
    /// <param name="first">A drive whose information of the car's parameters counts too, for each sum by its weight; null for none.</param>
    public double[] Deviations(IReadOnlyList<double[]> slopes, CarFromDrive? first = null)
    {
        var likelihood = new CarLikelihood(windows, splines, known, doubts);
        var n = likelihood.Count;
        var x = likelihood.Centre.ToArray();
        shared.CopyTo(x, 0);
        for (var h = 0; h < splines.Count; h++)
        {
            heights[h].CopyTo(x, likelihood.HumpAt[h]);
        }

        var information = new double[n * n];
        likelihood.Score(x, double.PositiveInfinity, information, new double[n], CancellationToken.None);
        for (var i = 0; i < n; i++)
        {
            information[(i * n) + i] += likelihood.Precision[i];
        }

        if (first?.Information is not { } more)
        {
            var matrix = PositiveMatrix.Of(information, n);
            return [.. slopes.Select(s => Deviation(matrix, s))];
        }

        return [.. slopes.Select((s, number) =>
        {
            double[] both = [.. information];
            for (var k = 0; k < CarParameter.Car * CarParameter.Car; k++)
            {
                both[(k / CarParameter.Car * n) + (k % CarParameter.Car)] += first.Weights[number] * more[k];
            }

            return Deviation(PositiveMatrix.Of(both, n), s);
        })];

        double Deviation(PositiveMatrix? matrix, double[] slope)
        {
            var by = new double[n];
            slope.CopyTo(by, 0);
            return matrix is null ? double.NaN : Math.Sqrt(Dot.Of(slope, matrix.Solve(by)));
        }
    }

    // The splines that lie nearest to a profile given at even steps, zero beyond its ends.
    private static double[] Drawn(HumpSplines splines, double length, IReadOnlyList<double> profile)
    {
        const int points = 400;
        var (count, (from, to)) = (splines.Count, splines.Extent);
        var (normal, right) = (new double[count * count], new double[count]);
        for (var p = 0; p <= points; p++)
        {
            var x = from + ((to - from) * p / points);
            var at = x / length * (profile.Count - 1);
            var k = Math.Clamp((int)at, 0, profile.Count - 2);
            var height = x < 0.0 || x > length ? 0.0 : profile[k] + ((at - k) * (profile[k + 1] - profile[k]));
            for (var i = 0; i < count; i++)
            {
                var b = splines.At(i, x);
                right[i] += b * height;
                for (var j = 0; b > 0.0 && j < count; j++)
                {
                    normal[(i * count) + j] += b * splines.At(j, x);
                }
            }
        }

        return PositiveMatrix.Of(normal, count, 1e-9)!.Solve(right);
    }
}
