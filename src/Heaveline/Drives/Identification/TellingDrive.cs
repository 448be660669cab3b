using System.Globalization;
using Heaveline.Quantities;

namespace Heaveline.Drives.Identification;

/// <summary>The one drive that would tell: four events of each candidate beside those driven; the largest fall of an interval wins.</summary>
internal sealed class TellingDrive
{
    private const int More = 4;

    private readonly DriveInformation driven;
    private readonly double[][] slopes;
    private readonly double[] before;
    private readonly (string Says, double[] After)[] candidates;

    /// <summary>Tries every candidate.</summary>
    /// <param name="problem">The drive.</param>
    /// <param name="x">The end of its fit.</param>
    public TellingDrive(CarProblem problem, double[] x)
    {
        driven = new DriveInformation(problem, x);
        slopes = CarNumbers.Slopes(x, problem.Known.Wheelbase);
        before = driven.Deviations(slopes);
        candidates = [.. Candidates(problem).Select(c =>
        {
            var more = driven.Copy();
            c.Add(more);
            return (c.Says, more.Deviations(slopes));
        })];
    }

    /// <summary>What would tell more of a number.</summary>
    public string For(CarNumber number)
    {
        var best = candidates.MinBy(c => c.After[(int)number]);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{best.Says} would bring it from ± {Half(before, number):F1} % to ± {Half(best.After, number):F1} %.");
    }

    /// <summary>What would tell more of the headline that is least sure.</summary>
    public string ForWidest() => $"{RefusalWords.Capital(RefusalWords.Name(Widest))} is least sure. {For(Widest)}";

    private CarNumber Widest => CarNumbers.Headlines.MaxBy(n => before[(int)n]);

    // By the information alone, at the normal's 90 %: it says which drive, not what its interval will be.
    private static double Half(double[] deviations, CarNumber number) => 100.0 * 1.645 * deviations[(int)number];

    private static IEnumerable<(string Says, Action<DriveInformation> Add)> Candidates(CarProblem problem)
    {
        var rate = problem.Windows.Max(w => w.Rate);
        var band = Math.Min(problem.Known.Band, CarProblem.BandShare * rate);
        var spread = problem.Windows.Average(w => w.SpeedSpread);
        string Speed(double v) => string.Create(CultureInfo.InvariantCulture, $"{In.KilometresPerHour.Of(v):F0} km/h");
        for (var h = 0; h < problem.Sites.Length; h++)
        {
            var (hump, site) = (h, problem.Sites[h]);
            double[] speeds = [.. problem.Windows.Where(w => w.Site == site).Select(w => w.Speed).Order()];
            foreach (var other in (double[])[0.65 * speeds[0], 1.4 * speeds[^1]])
            {
                // Walking pace and main roads are no test drives over a hump.
                if (other is > 3.0 and < 18.0)
                {
                    yield return ($"Four passes over {site} at {Speed(other)}", d => d.Add(More, other, spread, hump, rate, band));
                }
            }

            var usual = speeds[speeds.Length / 2];
            yield return ($"Four more passes over {site} at {Speed(usual)}", d => d.Add(More, usual, spread, hump, rate, band));
            if (rate < 75.0)
            {
                yield return ($"Four passes over {site} at {Speed(usual)}, logged at 100 samples a second,",
                    d => d.Add(More, usual, spread, hump, 100.0, 12.0));
            }
        }

        yield return ($"Four passes over a short sharp bump (25 mm high, 0.8 m long) at {Speed(13.9)}",
            d => d.Add(More, 13.9, spread, d.Hump(0.8, Wave(0.025), 13.9 / band), rate, band));
        yield return ($"Four passes over a long hump (75 mm high, 3.7 m long) at {Speed(6.9)}",
            d => d.Add(More, 6.9, spread, d.Hump(3.7, Wave(0.075), 6.9 / band), rate, band));
    }

    private static double[] Wave(double height) =>
        [.. Enumerable.Range(0, 41).Select(k => 0.5 * height * (1.0 - Math.Cos(2.0 * Math.PI * k / 40.0)))];
}
