using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Films;

/// <summary>
/// A swing that dies away beside a parabola, under noise whose neighbours are alike: least squares weighed by that likeness (each value less so much
/// of the one before it). Where the likeness is not known for sure its chances are weighed, by the restricted likelihood: residuals of a short curve
/// look less alike than the noise is.
/// </summary>
internal sealed class DyingSwing
{
    /// <summary>Slowest swing that is looked for, Hz.</summary>
    public const double Slowest = 0.5;

    /// <summary>Fastest.</summary>
    public const double Fastest = 6.0;

    private const double LongestDecay = 15.0;
    private const double MostAlike = 0.98;
    private const int Chances = 50;
    private const int Turns = 4;
    private const int MostSteps = 40;
    private const int Plain = 5;
    private const int Edged = 8;

    // The edged law's numbers are told only where its frequency is that of the same swing, as a share.
    private const double Same = 0.25;

    // What each number costs.
    private const double Dear = 2.0;
    private const double Still = 1e-6;
    private const double Turn = 1e-5;

    // Against columns that are all but one.
    private const double Ridge = 1e-9;

    private static readonly double[] Decays = [0.4, 0.8, 1.5, 2.5, 4.0];

    private readonly double[] times;
    private readonly double[] values;
    private readonly int columns;
    private double alike;
    private double[] lines = [];

    private DyingSwing(double[] times, double[] values, int columns) => (this.times, this.values, this.columns) = (times, values, columns);

    /// <summary>Hz.</summary>
    public double Frequency { get; private set; }

    /// <summary>1/s.</summary>
    public double Decay { get; private set; }

    /// <summary>Half-width of the frequency's 90 % interval, of its logarithm.</summary>
    public double FrequencyOpen { get; private set; }

    /// <summary>The same of what is left one swing later, of its logarithm.</summary>
    public double LeftOpen { get; private set; }

    /// <summary>The parabola at each instant.</summary>
    public double[] Smooth => Of(0, 1, 2);

    /// <summary>The swing at each instant.</summary>
    public double[] Swing => Of([.. Enumerable.Range(3, columns - 3)]);

    /// <summary>Whether the light goes with the square of the swing beside the swing itself.</summary>
    public bool IsEdged => columns == Edged;

    private int All => columns + 2;

    /// <summary>Fits it: light that goes with the swing, and with its square too where that tells enough more to pay for its columns.</summary>
    /// <param name="times">Instants from 0 on, s, rising.</param>
    /// <param name="values">What was seen at each.</param>
    /// <param name="stop">Stops it.</param>
    public static DyingSwing Of(double[] times, double[] values, CancellationToken stop)
    {
        var plain = new DyingSwing(times, values, Plain);
        plain.Fit(stop);
        var edged = new DyingSwing(times, values, Edged) { Frequency = plain.Frequency, Decay = plain.Decay };
        edged.Fit(stop);
        // Where the edged law finds another swing the plain one is told, and as open as the other has weight.
        var isSame = Math.Abs(Math.Log(edged.Frequency / plain.Frequency)) <= Same;
        var (told, other) = isSame && edged.Criterion < plain.Criterion ? (edged, plain) : (plain, edged);
        told.OpenTo(other);
        return told;
    }

    // Akaike's (1974): what is left, by the noise's own likeness, and what so many numbers cost.
    private double Criterion { get; set; }

    private double LeftAfterOne => -Decay / Frequency;

    // The other law may be the true one, by its weight beside this one's: then the truth lies about its numbers.
    private void OpenTo(DyingSwing other)
    {
        var share = 1.0 / (1.0 + Math.Exp(0.5 * (other.Criterion - Criterion)));
        double Open(double own, double its, double away) =>
            Math.Sqrt(((1.0 - share) * own * own) + (share * ((its * its) + (Gaussian.Ninety * away * Gaussian.Ninety * away))));
        (FrequencyOpen, LeftOpen) = (
            Open(FrequencyOpen, other.FrequencyOpen, Math.Log(other.Frequency / Frequency)),
            Open(LeftOpen, other.LeftOpen, other.LeftAfterOne - LeftAfterOne));
    }

    private void Fit(CancellationToken stop)
    {
        if (Frequency == 0.0)
        {
            Search(stop);
        }

        for (var turn = 0; turn < Turns; turn++)
        {
            stop.ThrowIfCancellationRequested();
            Settle();
            var chances = Likenesses();
            if (turn < Turns - 1)
            {
                alike = chances.MinBy(c => c.Cost).Alike;
                continue;
            }

            Judge(chances);
        }
    }

    private void Search(CancellationToken stop)
    {
        var best = double.PositiveInfinity;
        foreach (var decay in Decays)
        {
            stop.ThrowIfCancellationRequested();
            for (var frequency = Math.Max(Slowest, 1.0 / times[^1]); frequency <= Fastest; frequency *= 1.06)
            {
                if (Left(frequency, decay, out var found) is var left && left < best)
                {
                    (best, Frequency, Decay, lines) = (left, frequency, decay, found);
                }
            }
        }
    }

    // Steps of Levenberg and Marquardt in all numbers, the linear ones solved anew after each.
    private void Settle()
    {
        var (damping, left) = (1e-3, Left(Frequency, Decay, out lines));
        for (var step = 0; step < MostSteps && damping < 1e6; step++)
        {
            var (normal, side) = Normal(alike);
            var move = (normal + Matrix<double>.Build.DenseOfDiagonalVector(normal.Diagonal() * damping)).Cholesky().Solve(side);
            var frequency = Math.Clamp(Frequency * Math.Exp(Math.Clamp(move[columns], -1.0, 1.0)), Slowest, Fastest);
            var decay = Math.Clamp(Decay + move[columns + 1], 0.0, LongestDecay);
            var then = Left(frequency, decay, out var found);
            if (then > left)
            {
                damping *= 8.0;
                continue;
            }

            (left, Frequency, Decay, lines, damping) = (then, frequency, decay, found, Math.Max(0.2 * damping, 1e-9));
            if (Math.Abs(move[columns]) < Still)
            {
                break;
            }
        }
    }

    // What each likeness of neighbours costs, and what it leaves open of the logarithms of frequency and of what is left after one swing.
    private List<(double Alike, double Cost, double Frequency, double Left)> Likenesses()
    {
        var n = times.Length;
        var chances = new List<(double, double, double, double)>();
        // What is left after one swing is exp(−decay/frequency).
        var (byFrequency, byDecay) = (Decay / Frequency, -1.0 / Frequency);
        for (var k = 0; k < Chances; k++)
        {
            var tried = MostAlike * k / (Chances - 1.0);
            var (normal, side) = Normal(tried);
            var factor = normal.Cholesky();
            var inverse = factor.Solve(Matrix<double>.Build.DenseIdentity(All));
            var squares = Squares(tried) - (side * factor.Solve(side));
            var each = squares / (n - All);
            var (f, d, both) = (inverse[columns, columns], inverse[columns + 1, columns + 1], inverse[columns, columns + 1]);
            chances.Add((
                tried,
                ((n - All) * Math.Log(Math.Max(squares, 1e-30))) - Math.Log(1.0 - (tried * tried)) + factor.DeterminantLn,
                each * f,
                each * ((byFrequency * byFrequency * f) + (byDecay * byDecay * d) + (2.0 * byFrequency * byDecay * both))));
        }

        return chances;
    }

    private void Judge(List<(double Alike, double Cost, double Frequency, double Left)> chances)
    {
        var n = times.Length;
        Criterion = (n * Math.Log(Math.Max(Squares(alike), 1e-30) / n)) - Math.Log(1.0 - (alike * alike)) + (All * Dear);
        var least = chances.Min(c => c.Cost);
        var (sum, frequency, left, likely) = (0.0, 0.0, 0.0, 0.0);
        foreach (var c in chances)
        {
            var weight = Math.Exp(-0.5 * (c.Cost - least));
            (sum, likely) = (sum + weight, likely + (weight * c.Alike));
            (frequency, left) = (frequency + (weight * c.Frequency), left + (weight * c.Left));
        }

        likely /= sum;
        // So many free values: Student's interval is wider by about 1/n.
        var free = Math.Max(4.0, (times.Length - All) * (1.0 - likely) / (1.0 + likely));
        var wide = Gaussian.Ninety * (1.0 + (1.0 / free));
        (FrequencyOpen, LeftOpen) = (wide * Math.Sqrt(frequency / sum), wide * Math.Sqrt(Math.Max(0.0, left / sum)));
    }

    private double[] Of(params int[] which) =>
        [.. times.Select(t => Row(t, Frequency, Decay) is var row ? which.Sum(c => lines[c] * row[c]) : 0.0)];

    private double[] Row(double t, double frequency, double decay)
    {
        var (sin, cos) = Math.SinCos(2.0 * Math.PI * frequency * t);
        var dying = Math.Exp(-decay * t);
        var u = (2.0 * t / times[^1]) - 1.0;
        double[] row = [1.0, u, u * u, dying * sin, dying * cos];
        // The square of a dying swing: twice as quick and twice as soon gone, about a mean that dies too.
        return columns == Plain ? row : [.. row, dying * dying * 2.0 * sin * cos, dying * dying * ((cos * cos) - (sin * sin)), dying * dying];
    }

    // Squares that are left at a frequency and a decay, neighbours' likeness taken off, and the lines that leave them.
    private double Left(double frequency, double decay, out double[] found)
    {
        var (normal, side) = (Matrix<double>.Build.Dense(columns, columns), Vector<double>.Build.Dense(columns));
        var (before, was, square) = (new double[columns], 0.0, 0.0);
        for (var i = 0; i < times.Length; i++)
        {
            var row = Row(times[i], frequency, decay);
            var value = Add(normal, side, i, alike, row, before, values[i], was);
            (before, was, square) = (row, values[i], square + (value * value));
        }

        var solved = Ridged(normal).Cholesky().Solve(side);
        found = solved.ToArray();
        return square - (side * solved);
    }

    private (Matrix<double> Normal, Vector<double> Side) Normal(double likeness)
    {
        var (normal, side) = (Matrix<double>.Build.Dense(All, All), Vector<double>.Build.Dense(All));
        var (before, was) = (new double[All], 0.0);
        for (var i = 0; i < times.Length; i++)
        {
            var row = Row(times[i], Frequency, Decay);
            double By(double frequency, double decay) => Told(Row(times[i], frequency, decay));
            double[] whole =
            [
                .. row,
                (By(Frequency * (1.0 + Turn), Decay) - By(Frequency * (1.0 - Turn), Decay)) / (2.0 * Turn),
                (By(Frequency, Decay + Turn) - By(Frequency, Decay - Turn)) / (2.0 * Turn),
            ];
            var rest = values[i] - Told(row);
            Add(normal, side, i, likeness, whole, before, rest, was);
            (before, was) = (whole, rest);
        }

        return (Ridged(normal), side);
    }

    private double Told(double[] row) => row.Zip(lines, (r, c) => r * c).Sum();

    private double Squares(double likeness)
    {
        var (was, square) = (0.0, 0.0);
        for (var i = 0; i < times.Length; i++)
        {
            var rest = values[i] - Told(Row(times[i], Frequency, Decay));
            var value = i == 0 ? Math.Sqrt(1.0 - (likeness * likeness)) * rest : rest - (likeness * was);
            (was, square) = (rest, square + (value * value));
        }

        return square;
    }

    // A row less so much of the one before it; the first stands alone.
    private static double Add(
        Matrix<double> normal, Vector<double> side, int i, double likeness, double[] row, double[] before, double value, double was)
    {
        var (own, off) = i == 0 ? (Math.Sqrt(1.0 - (likeness * likeness)), 0.0) : (1.0, likeness);
        var left = (own * value) - (off * was);
        for (var a = 0; a < row.Length; a++)
        {
            var one = (own * row[a]) - (off * before[a]);
            side[a] += one * left;
            for (var b = 0; b < row.Length; b++)
            {
                normal[a, b] += one * ((own * row[b]) - (off * before[b]));
            }
        }

        return left;
    }

    private static Matrix<double> Ridged(Matrix<double> normal)
    {
        for (var a = 0; a < normal.RowCount; a++)
        {
            normal[a, a] += Ridge;
        }

        return normal;
    }
}
