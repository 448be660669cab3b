using System.Globalization;
using Heaveline.Drives.Recovery;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Drives.Identification;

/// <summary>The one drive that would tell: four events of each candidate beside those driven; the largest fall of an interval wins.</summary>
internal sealed class TellingDrive
{
    /// <summary>Slower than this nobody is sent over a hump that was driven, km/h: a fast walk. Common practice, no source.</summary>
    public const double Slowest = 11.0;

    private const int More = 4;

    // What is safe over a hump at all, km/h. Common practice, no source.
    private const double Fastest = 30.0;

    // Steps of a hump's heights as it was recovered, m.
    private const double Step = 0.05;

    // Humps that anybody can find or lay: name, height and length in m, speed in km/h.
    private static readonly (string Name, Obstacle Hump, double Height, double Length, double Speed)[] Laid =
    [
        ("a short bump (20 mm high, 0.8 m long)", new Versine { Height = new(0.020), Length = new(0.8) }, 0.020, 0.8, 30.0),
        ("a round hump (30 mm high, 3.7 m long)", new RoundTopHump { Height = new(0.030), Length = new(3.7) }, 0.030, 3.7, 15.0),
        ("a round hump (30 mm high, 3.7 m long)", new RoundTopHump { Height = new(0.030), Length = new(3.7) }, 0.030, 3.7, 25.0),
    ];

    private readonly DriveInformation driven;
    private readonly double[][] slopes;
    private readonly double[] before;
    private readonly (string Says, double[] After, Lazy<bool> IsBorne)[] candidates;
    private readonly bool isChecked;

    /// <summary>Tries every candidate.</summary>
    /// <param name="problem">The drive.</param>
    /// <param name="x">The end of its fit.</param>
    public TellingDrive(CarProblem problem, double[] x)
    {
        isChecked = problem.Known.Bears is not null;
        driven = new DriveInformation(problem, x);
        slopes = CarNumbers.Slopes(x, problem.Known.Wheelbase);
        before = driven.Deviations(slopes);
        candidates = [.. Candidates(problem, x).Select(c =>
        {
            var more = driven.Copy();
            c.Add(more);
            return (c.Says, more.Deviations(slopes), new Lazy<bool>(() => problem.Known.Bears?.Invoke(c.Road(), Metres(c.Speed)) ?? true));
        })];
    }

    /// <summary>What would tell more of a number.</summary>
    public string For(CarNumber number)
    {
        if (candidates.OrderBy(c => c.After[(int)number]).FirstOrDefault(c => c.IsBorne.Value) is not { Says: not null } best)
        {
            return "By the car file no drive that was tried is safe: over every hump a wheel leaves the road or comes near a stop. "
                + "Take a lower hump.";
        }

        return string.Create(
            CultureInfo.InvariantCulture,
            $"{best.Says} would bring it from ± {Half(before, number):F1} % to ± {Half(best.After, number):F1} %")
            + (isChecked
                ? "; by the car file every wheel stays on the road and off its stops there."
                : ", if every wheel stays on the road and off its stops there: 'heaveline plan' with this load and that hump says so.");
    }

    /// <summary>What would tell more of the headline that is least sure.</summary>
    public string ForWidest() => $"{RefusalWords.Capital(RefusalWords.Name(Widest))} is least sure. {For(Widest)}";

    private CarNumber Widest => CarNumbers.Headlines.MaxBy(n => before[(int)n]);

    // By the information alone, at the normal's 90 %: it says which drive, not what its interval will be.
    private static double Half(double[] deviations, CarNumber number) => 100.0 * Gaussian.Ninety * deviations[(int)number];

    // Only what can be done again and is safe: humps that were crossed on purpose, that is more than once, or named ones to be laid; slowly.
    private static IEnumerable<(string Says, Func<Road> Road, double Speed, Action<DriveInformation> Add)> Candidates(CarProblem problem, double[] x)
    {
        var rate = problem.Windows.Max(w => w.Rate);
        var band = Math.Min(problem.Known.Band, CarProblem.BandShare * rate);
        var spread = problem.Windows.Average(w => w.SpeedSpread);
        for (var h = 0; h < problem.Sites.Length; h++)
        {
            var (hump, site) = (h, problem.Sites[h]);
            DriveWindow[] crossed = [.. problem.Windows.Where(w => w.Site == site).OrderBy(w => w.Speed)];
            if (crossed.Length < 2 || !crossed.All(w => w.IsHump))
            {
                continue;
            }

            Road Recovered() => RoadOf(problem, x, hump);
            var usual = In.KilometresPerHour.Of(crossed[crossed.Length / 2].Speed);
            var (slower, faster) = (0.65 * In.KilometresPerHour.Of(crossed[0].Speed), 1.4 * In.KilometresPerHour.Of(crossed[^1].Speed));
            foreach (var speed in ((double[])[slower, usual, faster]).Select(v => Math.Round(v))
                .Where(v => v is >= Slowest and <= Fastest).Distinct())
            {
                var more = speed == Math.Round(usual) ? " more" : "";
                yield return (Passes(more, site, speed), Recovered, speed, d => d.Add(More, Metres(speed), spread, hump, rate, band));
                if (rate < 75.0 && more.Length > 0)
                {
                    yield return ($"{Passes("", site, speed)}, logged at 100 samples a second,", Recovered, speed,
                        d => d.Add(More, Metres(speed), spread, hump, 100.0, 12.0));
                }
            }
        }

        foreach (var (name, shape, height, length, speed) in Laid)
        {
            yield return (Passes("", name, speed), () => Road.From(shape), speed, d => d.Add(
                More, Metres(speed), spread, d.Hump(length, Wave(height), Metres(speed) / band), rate, band));
        }
    }

    // The hump as the fit drew it, level beyond.
    private static Road RoadOf(CarProblem problem, double[] x, int hump)
    {
        var (splines, at) = (problem.Likelihood.Splines[hump], problem.Likelihood.HumpAt[hump]);
        var (from, to) = splines.Extent;
        double[] heights = [.. Enumerable.Range(0, (int)Math.Ceiling((to - from) / Step) + 1)
            .Select(k => Enumerable.Range(0, splines.Count).Sum(j => x[at + j] * splines.At(j, Math.Min(from + (k * Step), to))))];
        return SampledRoad.Of(
            problem.Sites[hump], 0.0, Step, heights, heights, new RoadEvent(0.0, (heights.Length - 1) * Step), CancellationToken.None);
    }

    private static string Passes(string more, string over, double speed) =>
        string.Create(CultureInfo.InvariantCulture, $"Four{more} passes over {over} at {speed:F0} km/h");

    private static double Metres(double kilometresPerHour) => kilometresPerHour / In.KilometresPerHour.Factor;

    private static double[] Wave(double height) =>
        [.. Enumerable.Range(0, 41).Select(k => 0.5 * height * (1.0 - Math.Cos(2.0 * Math.PI * k / 40.0)))];
}
