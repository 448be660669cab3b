using System.Runtime.Intrinsics;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Films;

/// <summary>
/// The half car whose body moves most like the body seen, under the wheels seen: least squares of both body heights over all films together, each
/// with levels and slow slopes of its own, and with what is thought of any car.
/// </summary>
internal sealed class FilmFit
{
    /// <summary>Levels and slopes of a film: front and rear level, m, front and rear slope, m/s.</summary>
    public const int Own = 4;

    // A level is known to so much where the film says nothing better, m; a slope, m/s, for a camera that stands square, and for each unit of slant.
    private const double SquareSlope = 5e-4;
    private const double AslantSlope = 0.3;

    // A half car between wheels is no whole car: bushes, stops, two tracks. No residual is taken for smaller, m.
    private const double LeastMisfit = 4e-4;

    private const int MostRounds = 25;
    private const double Turn = 1e-4;

    private readonly SeenPass[] passes;
    private readonly WheelDrive[] drives;
    private readonly (double Centre, double Spread)[] known;

    private FilmFit(SeenPass[] passes, (double Centre, double Spread)[] known) =>
        (this.passes, this.known, drives) = (passes, known, [.. passes.Select(WheelDrive.Of)]);

    /// <summary>The numbers, in the order of <see cref="FilmedCar"/>, then each film's own.</summary>
    public double[] Mean { get; private set; } = [];

    /// <summary>Information with what was thought before, shape (n, n).</summary>
    public Matrix<double> Information { get; private set; } = Matrix<double>.Build.Dense(1, 1);

    /// <summary>Standard deviation of a residual, m.</summary>
    public double Misfit { get; private set; }

    /// <summary>How many residuals in a row count as one.</summary>
    public double Alike { get; private set; } = 1.0;

    /// <summary>Residuals, m, by film, front then rear.</summary>
    public double[][] Residuals { get; private set; } = [];

    /// <summary>Their derivatives by the car's numbers and the film's own, by film, shape (2n, 10 + 4).</summary>
    public double[][][] Slopes { get; private set; } = [];

    /// <summary>
    /// What is left over after the fit, priors counted, in natural units of log likelihood, by the weight that the fit gave itself: for steps of one
    /// fit. Fits beside each other are ranked by <see cref="Ranked"/>.
    /// </summary>
    public double Cost { get; private set; }

    public IReadOnlyList<WheelDrive> Drives => drives;

    public IReadOnlyList<(double Centre, double Spread)> Known => known;

    /// <summary>Fits from one start.</summary>
    /// <param name="passes">The films.</param>
    /// <param name="known">What is thought before.</param>
    /// <param name="start">The start, in the order of <see cref="FilmedCar"/>.</param>
    /// <param name="stop">Stops it.</param>
    public static FilmFit From(SeenPass[] passes, (double Centre, double Spread)[] known, double[] start, CancellationToken stop = default)
    {
        var fit = new FilmFit(passes, known) { Mean = [.. start, .. new double[Own * passes.Length]] };
        fit.Settle(stop);
        return fit;
    }

    /// <summary>
    /// Fits of the same films, the best first, each with what is left over by one weight for all: that of the fit that leaves least. By the weight
    /// that each gave itself a worse fit, whose residuals are larger and more alike, would cost as little as a good one, or less.
    /// </summary>
    /// <param name="fits">The fits.</param>
    public static IReadOnlyList<(FilmFit Fit, double Cost)> Ranked(IEnumerable<FilmFit> fits)
    {
        FilmFit[] all = [.. fits];
        var least = all.MinBy(f => f.Squares)!;
        return [.. all.Select(f => (Fit: f, Cost: f.Costs(least.Misfit, least.Alike))).OrderBy(f => f.Cost)];
    }

    /// <summary>
    /// Logarithm of the evidence for the law that was fitted, by Laplace's approximation (1774) and by a weight given: what is left over, and how
    /// much of what was thought possible before is possible still.
    /// </summary>
    /// <param name="misfit">Standard deviation of a residual, m.</param>
    /// <param name="alike">How many residuals in a row count as one.</param>
    public double Evidence(double misfit, double alike) => -Costs(misfit, alike)
        - (0.5 * Normal(1.0 / (misfit * misfit * alike)).Information.Cholesky().DeterminantLn)
        - Enumerable.Range(0, Mean.Length).Sum(p => Math.Log(Before(p).Spread));

    /// <summary>Standard deviation that a film's own number may have before it is looked at.</summary>
    public static double OwnSpread(SeenPass pass, int own) => own < 2
        ? Math.Max(pass.LevelDoubt / Gaussian.Ninety, 3e-4)
        : SquareSlope + (AslantSlope * pass.Slant);

    /// <summary>Slopes of both body heights of a pass by the ten numbers, shape (2n, 10), and the heights.</summary>
    public static (double[][] Slopes, double[] Heights) Derivatives(WheelDrive drive, double[] car)
    {
        const int lanes = 4;
        var n = drive.Count;
        var rows = new double[2 * n][];
        for (var i = 0; i < rows.Length; i++)
        {
            rows[i] = new double[FilmedCar.Count];
        }

        var heights = new double[2 * n];
        var (front, rear) = (new Vector256<double>[n], new Vector256<double>[n]);
        // One as it is and three turned, three at a time, each a little up: the fit is smooth enough for one-sided differences of 1e-4.
        for (var k = 0; k < FilmedCar.Count; k += lanes - 1)
        {
            var cars = new Vector256<double>[FilmedCar.Count];
            for (var p = 0; p < cars.Length; p++)
            {
                cars[p] = Vector256.Create(
                    car[p], car[p] + (p == k ? Turn : 0.0), car[p] + (p == k + 1 ? Turn : 0.0), car[p] + (p == k + 2 ? Turn : 0.0));
            }

            FilmedCar.Run(cars, drive, front, rear);
            for (var i = 0; i < n; i++)
            {
                (heights[i], heights[n + i]) = (front[i][0], rear[i][0]);
                for (var lane = 1; lane < lanes && k + lane - 1 < FilmedCar.Count; lane++)
                {
                    rows[i][k + lane - 1] = (front[i][lane] - front[i][0]) / Turn;
                    rows[n + i][k + lane - 1] = (rear[i][lane] - rear[i][0]) / Turn;
                }
            }
        }

        return (rows, heights);
    }

    private void Settle(CancellationToken stop)
    {
        var damping = 1e-3;
        (Misfit, Alike) = (2e-3, 4.0);
        Look(Mean);
        for (var round = 0; round < MostRounds; round++)
        {
            stop.ThrowIfCancellationRequested();
            var (information, push) = Normal(Weight);
            var step = (information + Matrix<double>.Build.DenseOfDiagonalVector(information.Diagonal() * damping)).Cholesky().Solve(push);
            var tried = Bounded([.. Mean.Zip(step, (m, s) => m + s)]);
            var before = (Mean, Cost, Residuals, Slopes);
            Look(tried);
            if (!(Cost <= before.Cost))
            {
                (Mean, Cost, Residuals, Slopes) = before;
                damping *= 8.0;
                if (damping > 1e4)
                {
                    break;
                }

                continue;
            }

            damping = Math.Max(damping * 0.2, 1e-7);
            var moved = Mean.Zip(before.Mean, (a, b) => Math.Abs(a - b)).Take(FilmedCar.Count).Max();
            Weigh();
            if (moved < 2e-4)
            {
                break;
            }
        }

        (Information, _) = Normal(Weight);
    }

    private static double[] Bounded(double[] at)
    {
        at[FilmedCar.FrontFrequency] = Math.Clamp(at[FilmedCar.FrontFrequency], Math.Log(0.3), Math.Log(6.0));
        at[FilmedCar.RearFrequency] = Math.Clamp(at[FilmedCar.RearFrequency], Math.Log(0.3), Math.Log(6.0));
        at[FilmedCar.FrontDamping] = Math.Clamp(at[FilmedCar.FrontDamping], Math.Log(0.02), Math.Log(1.5));
        at[FilmedCar.RearDamping] = Math.Clamp(at[FilmedCar.RearDamping], Math.Log(0.02), Math.Log(1.5));
        at[FilmedCar.Index] = Math.Clamp(at[FilmedCar.Index], 0.4, 2.0);
        at[FilmedCar.FrontSplit] = Math.Clamp(at[FilmedCar.FrontSplit], -0.9, 0.9);
        at[FilmedCar.RearSplit] = Math.Clamp(at[FilmedCar.RearSplit], -0.9, 0.9);
        at[FilmedCar.FrontFriction] = Math.Clamp(at[FilmedCar.FrontFriction], 0.0, 2.0);
        at[FilmedCar.RearFriction] = Math.Clamp(at[FilmedCar.RearFriction], 0.0, 2.0);
        at[FilmedCar.Share] = Math.Clamp(at[FilmedCar.Share], 0.3, 0.75);
        return at;
    }

    private void Look(double[] at)
    {
        Mean = at;
        Residuals = new double[passes.Length][];
        Slopes = new double[passes.Length][][];
        for (var f = 0; f < passes.Length; f++)
        {
            var (slopes, heights) = Derivatives(drives[f], at[..FilmedCar.Count]);
            var (n, own) = (passes[f].Count, FilmedCar.Count + (Own * f));
            Residuals[f] = new double[2 * n];
            Slopes[f] = new double[2 * n][];
            for (var i = 0; i < 2 * n; i++)
            {
                var (isRear, k) = (i >= n, i % n);
                var late = passes[f].Time(k) - passes[f].FirstTouch;
                var seen = isRear ? passes[f].RearBody[k] : passes[f].FrontBody[k];
                Residuals[f][i] = seen - heights[i] - at[own + (isRear ? 1 : 0)] - (late * at[own + (isRear ? 3 : 2)]);
                Slopes[f][i] = [.. slopes[i], isRear ? 0.0 : 1.0, isRear ? 1.0 : 0.0, isRear ? 0.0 : late, isRear ? late : 0.0];
            }
        }

        Cost = Costs(Misfit, Alike);
    }

    private double Squares => Residuals.Sum(r => r.Sum(x => x * x));

    private double Costs(double misfit, double alike)
    {
        var sum = Squares / (misfit * misfit * alike);
        for (var p = 0; p < Mean.Length; p++)
        {
            var (centre, spread) = Before(p);
            sum += Math.Pow((Mean[p] - centre) / spread, 2.0);
        }

        return 0.5 * sum;
    }

    /// <summary>What is thought of a number before.</summary>
    public (double Centre, double Spread) Before(int p) => p < FilmedCar.Count
        ? known[p]
        : (0.0, OwnSpread(passes[(p - FilmedCar.Count) / Own], (p - FilmedCar.Count) % Own));

    private double Weight => 1.0 / (Misfit * Misfit * Alike);

    private (Matrix<double> Information, Vector<double> Push) Normal(double weight)
    {
        var size = Mean.Length;
        var information = Matrix<double>.Build.Dense(size, size);
        var push = Vector<double>.Build.Dense(size);
        for (var f = 0; f < passes.Length; f++)
        {
            var places = Places(f);
            var (sums, sides) = (new double[places.Length, places.Length], new double[places.Length]);
            for (var i = 0; i < Residuals[f].Length; i++)
            {
                var row = Slopes[f][i];
                for (var a = 0; a < row.Length; a++)
                {
                    sides[a] += row[a] * Residuals[f][i];
                    for (var b = a; b < row.Length; b++)
                    {
                        sums[a, b] += row[a] * row[b];
                    }
                }
            }

            for (var a = 0; a < places.Length; a++)
            {
                push[places[a]] += weight * sides[a];
                for (var b = 0; b < places.Length; b++)
                {
                    information[places[a], places[b]] += weight * sums[Math.Min(a, b), Math.Max(a, b)];
                }
            }
        }

        for (var p = 0; p < size; p++)
        {
            var (centre, spread) = Before(p);
            information[p, p] += 1.0 / (spread * spread);
            push[p] += (centre - Mean[p]) / (spread * spread);
        }

        return (information, push);
    }

    /// <summary>Places of a film's numbers among all.</summary>
    public static int[] Places(int film) =>
        [.. Enumerable.Range(0, FilmedCar.Count), .. Enumerable.Range(FilmedCar.Count + (Own * film), Own)];

    // Residuals of a real car are not white: how alike neighbours are says how many count as one.
    private void Weigh()
    {
        var (square, lagged, count) = (0.0, 0.0, 0);
        foreach (var r in Residuals)
        {
            var n = r.Length / 2;
            for (var i = 0; i < r.Length; i++)
            {
                square += r[i] * r[i];
                lagged += i % n > 0 ? r[i] * r[i - 1] : 0.0;
                count++;
            }
        }

        var alike = Math.Clamp(lagged / Math.Max(square, 1e-30), 0.0, 0.95);
        (Misfit, Alike) = (Math.Max(Math.Sqrt(square / Math.Max(1, count - FilmedCar.Count)), LeastMisfit), (1.0 + alike) / (1.0 - alike));
        Cost = Costs(Misfit, Alike);
    }
}
