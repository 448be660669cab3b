using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Quantities;

namespace Heaveline.Drives.Planning;

/// <summary>
/// What each hump would tell on a test day: from the information of a drive that was never driven, and from the scatter of its passes.
/// </summary>
public sealed record TestDay
{
    /// <summary>Nobody is sent over a hump faster, m/s: 30 km/h. Common practice, no source.</summary>
    public static double Fastest => PlankWish.Fastest;

    // Between the three speeds, as shares of the fastest that is safe: far enough apart to tell speed from car, near enough to swing the car alike.
    private static readonly double[] Shares = [0.6, 0.8, 1.0];

    // Slowest of the fastest speed that makes a test, m/s: below it a car is hardly moved.
    private static readonly double LeastFast = 15.0 / In.KilometresPerHour.Factor;

    private static readonly double SpeedStep = 2.5 / In.KilometresPerHour.Factor;

    private static readonly PassOptions Options = BatchedMeasures.Usual with { Record = new() { SettlingTime = 1.1 } };

    /// <summary>The humps that can be driven safely, the one that needs fewest passes first.</summary>
    public required ImmutableArray<TestDrive> Drives { get; init; }

    /// <summary>Humps over which the car is safe at no three speeds.</summary>
    public required ImmutableArray<TestHump> Unsafe { get; init; }

    /// <summary>
    /// Where none of the humps can be driven safely: what else anybody can lay or find that can, the one that needs fewest passes first.
    /// </summary>
    public ImmutableArray<TestDrive> Instead { get; init => field = value.IsDefault ? [] : value; } = [];

    /// <summary>
    /// Half-widths of the wanted number over the best hump with the phone elsewhere: distance behind the front axle, m, half-width.
    /// </summary>
    public required ImmutableArray<(double Phone, double HalfWidth)> Places { get; init; }

    /// <summary>Plans the day.</summary>
    /// <param name="wish">What for.</param>
    /// <param name="degree">How many humps are looked at at once.</param>
    /// <param name="progress">Told the share done (–).</param>
    /// <param name="stop">Stops it.</param>
    /// <exception cref="OperationCanceledException">Stopped.</exception>
    public static TestDay Of(TestDayWish wish, int degree = 1, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(wish);
        var drives = Driven(wish, degree, progress, stop);
        var safe = Ranked(wish, drives);
        var others = safe.IsEmpty ? wish with { Humps = [.. TestHump.Low.Concat(TestHump.OfBoards).Except(wish.Humps)] } : null;
        return new TestDay
        {
            Drives = safe,
            Unsafe = [.. wish.Humps.Where((_, i) => drives[i] is null)],
            Instead = others is null ? [] : Ranked(others, Driven(others, degree, null, stop)),
            Places = safe.IsEmpty
                ? []
                : [.. Phones(wish).Select(p => (p, HalfWidths(wish, safe[0].Hump, safe[0].Speeds, TestDrive.Passes, p, stop)[wish.Number]))],
        };
    }

    /// <summary>Half-widths of 90 % intervals of logarithms that so many passes would give, by number.</summary>
    internal static ImmutableDictionary<CarNumber, double> HalfWidths(
        TestDayWish wish, TestHump hump, IReadOnlyList<double> speeds, int passes, double phone, CancellationToken stop)
    {
        var drive = new PlannedDrive
        {
            Passes = [.. speeds.Select(
                (v, k) => new PlannedPass { Speed = v, Count = (passes + speeds.Count - 1 - k) / speeds.Count, Site = hump.Name })],
            Humps = ImmutableDictionary<string, PlannedHump>.Empty.Add(hump.Name, Planned(hump)),
            Roughness = wish.Class.Mean.Si,
            Rate = wish.Rate,
        };
        var car = FileCar.Of(wish.Model, phone);
        var known = new IdentificationKnown
        {
            Wheelbase = car.Wheelbase,
            FrontShare = car.FrontShare,
            FrontShareSpread = 0.01,
            PhoneBehindFrontAxle = phone,
            PhoneSpread = 0.05,
        };
        stop.ThrowIfCancellationRequested();
        return CarIdentification.Expected(car, drive, known, wish.First).ToImmutableDictionary(e => e.Number, e => 0.5 * Math.Log(e.High / e.Low));
    }

    private static ImmutableArray<TestDrive> Ranked(TestDayWish wish, TestDrive?[] drives) =>
        [.. drives.OfType<TestDrive>().OrderBy(d => Rank(wish, d)).ThenBy(d => d.HalfWidths[wish.Number])];

    // Those that do what is wanted first; of them those whose passes are found by themselves.
    private static (bool, bool, int, int) Rank(TestDayWish wish, TestDrive drive)
    {
        var (fewest, then) = wish.After is null ? (drive.FewestForNumber, null) : (drive.FewestForChange, drive.FewestForNumber);
        return (fewest is null, !drive.StandsOut, fewest ?? int.MaxValue, wish.After is null ? 0 : then ?? int.MaxValue);
    }

    // Over the front axle, over the centre of gravity, over the rear axle.
    private static IEnumerable<double> Phones(TestDayWish wish) => [0.0, wish.Model.Body.BehindFrontAxle, wish.Model.Car.Wheelbase.Si];

    private static TestDrive?[] Driven(TestDayWish wish, int degree, IProgress<double>? progress, CancellationToken stop)
    {
        var drives = new TestDrive?[wish.Humps.Length];
        var done = 0;
        ParallelLoop.Each(drives.Length, degree, i =>
        {
            drives[i] = Drive(wish, wish.Humps[i], stop);
            progress?.Report(0.9 * Interlocked.Increment(ref done) / drives.Length);
        }, stop);
        return drives;
    }

    private static TestDrive? Drive(TestDayWish wish, TestHump hump, CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        RideModel[] models = wish.After is { } after ? [wish.Model, after] : [wish.Model];
        var fastest = Fastest;
        for (; fastest >= LeastFast - 1e-9; fastest -= SpeedStep)
        {
            double[] speeds = [.. Shares.Select(s => s * fastest)];
            var passes = models.Select(m => PassBatch.Of([.. speeds.Select(v => new PassRequest(m, hump.Road, v))], Options, stop)).ToArray();
            if (!passes.All(of => of.All(IsBorne)))
            {
                continue;
            }

            // Nobody holds a speed to the dot.
            var faster = models.Select(
                m => PassBatch.Of([.. speeds.Select(v => new PassRequest(m, hump.Road, SafePass.Tried(v).Max()))], Options, stop)).ToArray();
            if (faster.All(of => of.All(IsBorne)))
            {
                return Told(wish, hump, speeds, passes, [.. passes.Concat(faster).SelectMany(of => of)], stop);
            }
        }

        return null;

        static bool IsBorne(Pass pass) => SafePass.Is(pass) && SafePass.LeastLoad(pass) >= PlankWish.LeastLoad;
    }

    private static TestDrive Told(
        TestDayWish wish, TestHump hump, double[] speeds, IReadOnlyList<Pass>[] passes, IReadOnlyList<Pass> all, CancellationToken stop)
    {
        double[] headlines = [.. passes[0].Select(SettlingCatalogue.RmsPitch.Of)];
        int? needed = null;
        for (var n = 3; n <= TestDrive.MostPasses && needed is null; n += 3)
        {
            needed = HalfWidths(wish, hump, speeds, n, wish.Phone, stop)[wish.Number] <= wish.HalfWidth ? n : null;
        }

        return new TestDrive
        {
            Hump = hump,
            Speeds = [.. speeds],
            HalfWidths = HalfWidths(wish, hump, speeds, TestDrive.Passes, wish.Phone, stop),
            LeastLoad = all.Min(SafePass.LeastLoad),
            StandsOut = (wish.After is { } after ? new[] { wish.Model, after } : [wish.Model])
                .All(m => SeenPass.Is(m, hump.Road, speeds, wish.Phone, stop)),
            TravelLeft = all.Min(SafePass.TravelLeft),
            Headline = Math.Sqrt(headlines.Average(h => h * h)),
            Scatter = Math.Sqrt(passes[0].Select((p, k) => PassScatter.Of(p, Slope(headlines, speeds, k), wish.Class)).Average(s => s * s)),
            Change = passes.Length > 1 ? passes[1].Select((p, k) => Math.Log(SettlingCatalogue.RmsPitch.Of(p) / headlines[k])).Average() : null,
            FewestForNumber = needed,
        };
    }

    // d ln headline/d ln speed between neighbours.
    private static double Slope(double[] headlines, double[] speeds, int k)
    {
        var (a, b) = (Math.Max(0, k - 1), Math.Min(speeds.Length - 1, k + 1));
        return Math.Log(headlines[b] / headlines[a]) / Math.Log(speeds[b] / speeds[a]);
    }

    private static PlannedHump Planned(TestHump hump)
    {
        const int Points = 400;
        var (start, end) = (hump.Road.Event!.Value.Start, hump.Road.Event.Value.End);
        return new(end - start, [.. Enumerable.Range(0, Points + 1).Select(k => hump.Road.Left.Height(start + ((end - start) * k / Points)))]);
    }
}
