using Heaveline.Drives.Identification;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Films;

/// <summary>
/// Which film more would tell most: each is tried on the fitted car under the wheels seen, driven faster or slower, or seen for longer.
/// </summary>
internal sealed class FilmAdvice(
    SeenPass[] passes, FilmFit fit, IReadOnlyList<(CarNumber Number, double Value, Vector<double> By, bool IsLog)> numbers)
{
    // Nobody is sent over a bump faster than this, m/s (30 km/h), or so much faster than seen.
    private const double Fastest = 8.34;
    private static readonly double[] Factors = [0.6, 0.75, 1.0, 1.25];

    // What is seen longer from farther back, s.
    private const double Longer = 1.0;

    public FilmMore? Best(CancellationToken stop)
    {
        var now = Widths(fit.Information);
        var open = Enumerable.Range(0, numbers.Count).Where(k => k != (int)CarNumber.PitchIndex).MaxBy(k => now[k] / FilmIdentification.Sharp(k));
        FilmMore? best = null;
        foreach (var (passesMore, factor, longer) in Tried())
        {
            stop.ThrowIfCancellationRequested();
            var more = fit.Information.Clone();
            Add(more, factor, longer, Math.Max(1, passesMore));
            var then = Widths(more)[open];
            var one = new FilmMore(numbers[open].Number, passesMore, passes[0].Speed * factor, longer, now[open], then);
            // The least trouble that does nearly as well.
            best = best is null || then < 0.85 * best.Then ? one : best;
        }

        return best is not null && best.Then < 0.8 * best.Now ? best : null;
    }

    private IEnumerable<(int Passes, double Factor, double Longer)> Tried()
    {
        var reach = passes.Min(p => p.Reach);
        yield return (1, 1.0, 0.0);
        if (reach < 1.2)
        {
            yield return (1, 1.0, Longer);
        }

        foreach (var factor in Factors.Where(f => f <= 1.0 || passes[0].Speed * f <= Fastest))
        {
            yield return (2, factor, 0.0);
        }

        if (reach < 1.2)
        {
            yield return (2, Factors[0], Longer);
        }
    }

    private double[] Widths(Matrix<double> information)
    {
        var inverse = information.Inverse();
        return [.. numbers.Select((n, k) => Gaussian.Ninety * Math.Sqrt(
            (n.By * (inverse.SubMatrix(0, n.By.Count, 0, n.By.Count) * n.By)) + Math.Pow(FilmIdentification.OfModel[k], 2.0)))];
    }

    // What passes of that kind would add, their own levels and slopes taken out.
    private void Add(Matrix<double> information, double factor, double longer, int count)
    {
        var drive = fit.Drives[0].At(factor, longer);
        var (slopes, _) = FilmFit.Derivatives(drive, fit.Mean[..FilmedCar.Count]);
        var (n, size) = (drive.Count, FilmedCar.Count + FilmFit.Own);
        var whole = Matrix<double>.Build.Dense(size, size);
        var weight = 1.0 / (fit.Misfit * fit.Misfit * fit.Alike);
        for (var i = 0; i < 2 * n; i++)
        {
            var late = (i % n) * drive.Step;
            var row = Vector<double>.Build.DenseOfArray(
                [.. slopes[i], i < n ? 1.0 : 0.0, i < n ? 0.0 : 1.0, i < n ? late : 0.0, i < n ? 0.0 : late]);
            whole += weight * row.OuterProduct(row);
        }

        for (var own = 0; own < FilmFit.Own; own++)
        {
            whole[FilmedCar.Count + own, FilmedCar.Count + own] += Math.Pow(FilmFit.OwnSpread(passes[0], own), -2.0);
        }

        var (car, rest) = (FilmedCar.Count, FilmFit.Own);
        var cross = whole.SubMatrix(0, car, car, rest);
        var added = whole.SubMatrix(0, car, 0, car) - (cross * whole.SubMatrix(car, rest, car, rest).Inverse() * cross.Transpose());
        for (var a = 0; a < car; a++)
        {
            for (var b = 0; b < car; b++)
            {
                information[a, b] += count * added[a, b];
            }
        }
    }
}
