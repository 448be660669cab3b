using System.Numerics;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// The density of a rough road from windows of a drive: the power of vertical acceleration and of pitch rate at every frequency against what an
/// identified car makes of a road of density one. Each channel counts by itself (a composite likelihood, Lindsay, Contemporary Mathematics 80, 1988):
/// what holds them together, the delay between the axles, is off as soon as the speed changes within a window.
/// </summary>
/// <remarks>
/// The noise is found anew, one for the whole drive: that of the bumps holds what a linear car misses of them. With it planted roads came out a sixth
/// too smooth. Its doubt holds the chance of the windows, both channels being of one road, and what the drive leaves open of car, noise and gain.
/// </remarks>
internal sealed class DensityFit
{
    /// <summary>The lowest frequency that is read, Hz.</summary>
    public const double Lowest = 0.5;

    // What was thought of the density before: ln of it, and the standard deviation of that.
    private static readonly double Centre = Math.Log(16e-6);
    private const double Spread = 3.0;

    // Difference by which the slopes of the car's answers are worked out.
    private const double Difference = 1e-3;

    // Turns of all densities and the noise.
    private const int Turns = 12;

    private static readonly int[] Known =
        [.. Enumerable.Range(0, CarParameter.Car), CarParameter.Gain, CarParameter.VerticalNoise, CarParameter.PitchNoise];

    private readonly SpectralGrid grid;
    private readonly double wheelbase;
    private readonly HalfCarResponse own;
    private readonly (HalfCarResponse Up, HalfCarResponse Down)[] turned;
    private readonly (double Vertical, double Pitch) noiseBefore;
    private readonly double[] covariance;
    private (double Vertical, double Pitch) noise;

    /// <summary>The fit.</summary>
    /// <param name="found">The car.</param>
    /// <param name="grid">Frequencies of the windows.</param>
    public DensityFit(CarFromDrive found, SpectralGrid grid)
    {
        (this.grid, wheelbase) = (grid, found.Known!.Wheelbase);
        double[] x = [.. found.Mean.AsSpan()[..CarParameter.Shared]];
        HalfCarResponse With(int parameter, double more)
        {
            var other = x.ToArray();
            other[parameter] += more;
            return HalfCarResponse.Of(grid.Fine, other, wheelbase, derivatives: false);
        }

        own = With(0, 0.0);
        turned = [.. Known.SkipLast(2).Select(p => (With(p, Difference), With(p, -Difference)))];
        noise = noiseBefore = (found.VerticalNoise * grid.Scale, found.PitchNoise * grid.Scale);
        var n = found.Mean.Length;
        covariance = [.. Known.SelectMany(_ => Known, (i, j) => found.Covariance[(i * n) + j])];
    }

    /// <summary>The highest frequency that is read, Hz.</summary>
    public double Highest => grid.Frequencies[^1];

    /// <summary>The density of every stretch at 0.1 cycles/m, m³, and the half-width of its logarithm (90 %).</summary>
    /// <param name="stretches">One window or more of each, each of its own speed.</param>
    /// <param name="stop">Stops it.</param>
    public (double Density, double HalfWidth)[] Of(IReadOnlyList<DriveWindow[]> stretches, CancellationToken stop)
    {
        var seen = new Seen[stretches.Count][];
        ParallelLoop.Each(seen.Length, -1, k => seen[k] = [.. stretches[k].Select(Look)], stop);
        double[] logs = [.. seen.Select(_ => Centre)];
        for (var turn = 0; turn < Turns; turn++)
        {
            stop.ThrowIfCancellationRequested();
            logs = [.. seen.Select((windows, k) => Fitted(windows, logs[k]))];
            Noise(seen, logs);
        }

        return [.. seen.Select((windows, k) => (Math.Exp(logs[k]), Gaussian.Ninety * Math.Sqrt(Variance(windows, logs[k]))))];
    }

    private double Fitted(Seen[] windows, double from)
    {
        var x = from;
        for (var step = 0; step < 40; step++)
        {
            var (slope, bend) = (-(x - Centre) / (Spread * Spread), 1.0 / (Spread * Spread));
            Each(windows, x, (score, line, _, _) => (slope, bend) = (slope + score, bend + line.Information));
            var by = Math.Clamp(slope / bend, -1.0, 1.0);
            x += by;
            if (Math.Abs(by) < 1e-9)
            {
                break;
            }
        }

        return x;
    }

    // A step of both channels' noise, of its logarithm, by the power that the road leaves over; and how sure it is.
    private void Noise(Seen[][] seen, double[] logs)
    {
        var n = grid.Frequencies.Length;
        double Step(double own, double before, int channel, out double variance)
        {
            var (slope, bend) = (-Math.Log(own / before) / (Spread * Spread), 1.0 / (Spread * Spread));
            foreach (var (windows, k) in seen.Select((w, k) => (w, k)))
            {
                Each(windows, logs[k], (_, line, window, m) =>
                {
                    var mean = channel == 0 ? line.VerticalMean : line.PitchMean;
                    var at = 2 * channel * n;
                    var share = own / mean;
                    slope += share * ((Square(new(window.Data[at + m], window.Data[at + n + m])) / mean) - 1.0);
                    bend += share * share;
                });
            }

            variance = grid.Bandwidth / bend;
            return own * Math.Exp(Math.Clamp(slope / bend, -1.0, 1.0));
        }

        var (vertical, pitch) = (Step(noise.Vertical, noiseBefore.Vertical, 0, out var v), Step(noise.Pitch, noiseBefore.Pitch, 1, out var q));
        noise = (vertical, pitch);
        foreach (var (at, variance) in new[] { (turned.Length, v), (turned.Length + 1, q) })
        {
            for (var j = 0; j < Known.Length; j++)
            {
                covariance[(at * Known.Length) + j] = covariance[(j * Known.Length) + at] = 0.0;
            }

            covariance[(at * Known.Length) + at] = variance;
        }
    }

    // Of ln of the density: of chance, the larger of what the model says and of what the lines show; and of what is known, carried on by the slopes.
    private double Variance(Seen[] seen, double x)
    {
        var (information, chance, square, by) = (1.0 / (Spread * Spread), 0.0, 0.0, new double[Known.Length]);
        var g = Math.Exp(x);
        Each(seen, x, (score, line, window, k) =>
        {
            information += line.Information;
            chance += line.Chance;
            square += score * score;
            for (var p = 0; p < turned.Length; p++)
            {
                by[p] -= (line.Vertical * g * window.Slopes[p][4 * k] / line.VerticalMean)
                    + (line.Pitch * g * window.Slopes[p][(4 * k) + 1] / line.PitchMean);
            }

            by[turned.Length] -= line.Vertical * noise.Vertical / line.VerticalMean;
            by[turned.Length + 1] -= line.Pitch * noise.Pitch / line.PitchMean;
        });
        var carried = 0.0;
        for (var i = 0; i < by.Length; i++)
        {
            for (var j = 0; j < by.Length; j++)
            {
                carried += by[i] * by[j] * covariance[(i * by.Length) + j];
            }
        }

        // Neighbouring lines are not quite independent.
        return ((grid.Bandwidth * Math.Max(chance, square)) + carried) / (information * information);
    }

    private void Each(Seen[] seen, double x, Action<double, Line, Seen, int> takes)
    {
        var (n, g) = (grid.Frequencies.Length, Math.Exp(x));
        foreach (var window in seen)
        {
            for (var k = 0; k < n; k++)
            {
                if (grid.Frequencies[k] < Lowest)
                {
                    continue;
                }

                var a = window.Own.AsSpan(4 * k, 4);
                var (vertical, pitch) = ((g * a[0]) + noise.Vertical, (g * a[1]) + noise.Pitch);
                var line = new Line(g * a[0] / vertical, g * a[1] / pitch, vertical, pitch, g * g * Square(new(a[2], a[3])) / (vertical * pitch));
                var data = window.Data;
                var score = (line.Vertical * ((Square(new(data[k], data[n + k])) / vertical) - 1.0))
                    + (line.Pitch * ((Square(new(data[(2 * n) + k], data[(3 * n) + k])) / pitch) - 1.0));
                takes(score, line, window, k);
            }
        }
    }

    private Seen Look(DriveWindow window)
    {
        var data = new WindowSpectrum(grid, window, window.Speed, -1, double.PositiveInfinity).Data;
        return new Seen(
            data,
            Products(own, window.Speed),
            [.. turned.Select(t => Products(t.Up, window.Speed).Zip(
                Products(t.Down, window.Speed), (up, down) => (up - down) / (2.0 * Difference)).ToArray())]);
    }

    // |H₀|², |H₁|², H₁H₀* for a density of one, smeared as the window smears, shape (frequencies, 4).
    private double[] Products(HalfCarResponse response, double speed)
    {
        var (fine, result) = (new double[4 * grid.Fine.Length], new double[4 * grid.Frequencies.Length]);
        for (var m = 0; m < grid.Fine.Length; m++)
        {
            var (vertical, pitch) = RoadAnswer.At(response, m, grid.Fine[m], wheelbase, speed);
            var density = 0.01 * speed * grid.Scale / (grid.Fine[m] * grid.Fine[m]);
            var cross = density * pitch * Complex.Conjugate(vertical);
            (fine[4 * m], fine[(4 * m) + 1]) = (density * Square(vertical), density * Square(pitch));
            (fine[(4 * m) + 2], fine[(4 * m) + 3]) = (cross.Real, cross.Imaginary);
        }

        grid.Smear(fine, 4, result);
        return result;
    }

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);

    // Of the power that is to be expected at a line of each channel what share is the road's, the powers, and how alike both channels are.
    private readonly record struct Line(double Vertical, double Pitch, double VerticalMean, double PitchMean, double Likeness)
    {
        public double Information => (Vertical * Vertical) + (Pitch * Pitch);

        public double Chance => Information + (2.0 * Vertical * Pitch * Likeness);
    }

    // A window's data, and what a road of density one makes of it: by the car, and its slopes by the car's parameters.
    private sealed record Seen(double[] Data, double[] Own, double[][] Slopes);
}
