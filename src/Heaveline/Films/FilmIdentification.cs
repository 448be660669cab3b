using System.Collections.Immutable;
using Heaveline.Drives.Identification;
using Heaveline.Numerics;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Films;

/// <summary>Finds the car between the wheels of one or several films of it.</summary>
/// <param name="passes">The films.</param>
/// <param name="given">What is known besides.</param>
/// <param name="stop">Stops it.</param>
/// <param name="law">Which terms its dampers have.</param>
internal sealed class FilmIdentification(SeenPass[] passes, FilmGiven given, CancellationToken stop, FilmLaw law = FilmLaw.Whole)
{
    /// <summary>Films are drawn again and again in so many draws.</summary>
    public const int Draws = 400;

    /// <summary>From so many films on whole films are drawn too: they part by more than each tells of itself.</summary>
    public const int FewestDrawn = 4;

    /// <summary>Residuals nearer than this stay together when they are drawn, s.</summary>
    public const double Block = 0.25;

    /// <summary>
    /// How far the half car that fits best lies from the whole car, as a standard deviation (of the logarithm; of the index as it is), by number:
    /// what was found on planted passes of the cars that come with the program, those with progressive leaves left out.
    /// </summary>
    public static readonly ImmutableArray<double> OfModel = [0.010, 0.014, 0.014, 0.18, 0.18, 0.038];

    /// <summary>A residual this large, m, or this much alike its neighbours is no half car's.</summary>
    public const double MostMisfit = 2.5e-3;

    /// <summary>The same of neighbours that count as one.</summary>
    public const double MostAlike = 12.0;

    // A term that a law has not is held at nothing by so much.
    private const double Nothing = 1e-4;

    // So much of a road car there is: what lies outside is not believed.
    private static readonly (double Low, double High)[] Possible = [(0.6, 4.0), (0.6, 4.0), (0.4, 2.5), (0.05, 1.0), (0.05, 1.0), (0.55, 1.6)];

    // A number is said where the half-width of its 90 % interval is at most this: of the logarithm, of the index as it is.
    private static readonly double[] Widest = [0.10, 0.10, 0.08, 0.40, 0.40, 0.15];

    /// <summary>Half-width of the 90 % interval up to which a number is said.</summary>
    public static double Sharp(int place) => Widest[place];

    private static readonly (double Front, double Rear)[] Starts = [(1.3, 1.3), (1.0, 1.6), (1.7, 1.1), (1.0, 1.0), (1.9, 1.9)];

    private readonly (double Centre, double Spread)[] known = Known(given, law);

    /// <summary>Fits from several starts and judges.</summary>
    public CarFromFilm Found()
    {
        var fits = FilmFit.Ranked(Starts.Select(s =>
        {
            var start = known.Select(k => k.Centre).ToArray();
            (start[FilmedCar.FrontFrequency], start[FilmedCar.RearFrequency]) = (Math.Log(s.Front), Math.Log(s.Rear));
            return FilmFit.From(passes, known, start, stop);
        }));
        var (best, least) = fits[0];
        var travel = Travel(best);
        var inverse = best.Information.Inverse();
        // By blocks within the films, by whole films, by what the fit itself says: the widest counts.
        Matrix<double>[] spreads = passes.Length >= FewestDrawn
            ? [inverse, Spread(best, areFilmsDrawn: false), Spread(best, areFilmsDrawn: true)]
            : [inverse, Spread(best, areFilmsDrawn: false)];
        double Deviation(Vector<double> by) => Math.Sqrt(spreads.Max(s => by * (s * by)));
        var before = Matrix<double>.Build.DenseOfDiagonalVector(Vector<double>.Build.Dense(best.Mean.Length, p => p < FilmedCar.Count
            ? known[p].Spread * known[p].Spread : 1.0));
        var numbers = Numbers(best, travel);
        var estimates = numbers.Select((n, k) =>
        {
            var deviation = Math.Sqrt(Math.Pow(Deviation(n.By), 2.0) + (OfModel[k] * OfModel[k]));
            var prior = Math.Sqrt(Math.Max(n.By * (before * n.By), deviation * deviation));
            return Estimate(n.Number, n.Value, deviation, prior, n.IsLog, k);
        }).ToImmutableArray();
        // A wholly different car that explains the films as well.
        var other = fits.Skip(1).FirstOrDefault(f => f.Cost - least < 2.0 && Enumerable.Range(0, 2).Any(p =>
            Math.Abs(f.Fit.Mean[p] - best.Mean[p]) > 0.04)).Fit;
        var refusals = new FilmRefusals(passes, best, estimates, other).All();
        var misfit = refusals.Any(r => r.Kind is RefusalKind.Misfit or RefusalKind.TwoAnswers or RefusalKind.Edge or RefusalKind.TooFew);
        var said = misfit ? [.. estimates.Select(e => e with { IsSaid = false, Reason = "the fit is not believed" })] : estimates;
        var ratio = numbers[(int)CarNumber.FrequencyRatio];
        return new CarFromFilm
        {
            Estimates = said,
            Refusals = [.. refusals],
            IsBelieved = !misfit,
            RatioDeviation = Math.Sqrt(Math.Pow(Deviation(ratio.By), 2.0) + (OfModel[2] * OfModel[2])),
            Correlation = inverse[0, 1] / Math.Sqrt(inverse[0, 0] * inverse[1, 1]),
            Misfit = best.Misfit,
            TravelSpeed = travel.Speed,
            Levels = [.. passes.Select((_, f) => FilmFit.Places(f)[FilmedCar.Count..].Select(p => best.Mean[p]).ToImmutableArray())],
            Fitted = [.. passes.Select((p, f) => Fitted(best, f))],
            Odds = law == FilmLaw.Whole && !misfit
                ? LawOdds.Of(Evidence(best), best.Mean[FilmedCar.FrontSplit], best.Mean[FilmedCar.RearSplit]) : null,
            Advice = misfit || said.Any(e => !e.IsSaid)
                ? AsTold(new FilmAdvice(passes, best, Numbers(best, travel)).Best(stop), estimates) : null,
        };
    }

    /// <summary>How much the films speak for each law, its logarithm, in the order of <see cref="FilmLaw"/>, by the weight of one fit.</summary>
    /// <param name="best">The fit.</param>
    private double[] Evidence(FilmFit best) =>
    [
        .. Enum.GetValues<FilmLaw>().Select(one =>
        {
            var before = Known(given, one);
            double[] start = [.. best.Mean[..FilmedCar.Count].Select((m, p) => before[p].Spread < Nothing * 2.0 ? before[p].Centre : m)];
            return FilmFit.From(passes, before, start, stop).Evidence(best.Misfit, best.Alike);
        }),
    ];

    private static (double Centre, double Spread)[] Known(FilmGiven given, FilmLaw law)
    {
        var known = FilmedCar.Known.ToArray();
        void Without(params int[] places) => Array.ForEach(places, p => known[p] = (0.0, Nothing));
        if (law is FilmLaw.Linear or FilmLaw.Friction)
        {
            Without(FilmedCar.FrontSplit, FilmedCar.RearSplit);
        }

        if (law is FilmLaw.Linear or FilmLaw.Split)
        {
            Without(FilmedCar.FrontFriction, FilmedCar.RearFriction);
        }

        if (given.FrontShare is { } share)
        {
            known[FilmedCar.Share] = (share.Si, share.Doubt.IsStated ? share.Doubt.StandardDeviation : 0.02);
        }

        return known;
    }

    // By the widths that are told: those of the information alone are narrower, and one number is not open by two.
    private static FilmMore? AsTold(FilmMore? more, ImmutableArray<CarEstimate> told)
    {
        if (more is null)
        {
            return null;
        }

        var e = told.First(t => t.Number == more.Number);
        var half = 0.5 * (e.Number == CarNumber.PitchIndex ? e.High - e.Low : Math.Log(e.High / e.Low));
        return more with { Now = half, Then = more.Then * half / more.Now };
    }

    private static CarEstimate Estimate(CarNumber number, double value, double deviation, double prior, bool isLog, int place)
    {
        var half = Gaussian.Ninety * deviation;
        double At(double away) => isLog ? value * Math.Exp(away) : value + away;
        var isPossible = value >= Possible[place].Low && value <= Possible[place].High;
        var isSharp = half <= Widest[place];
        return new CarEstimate
        {
            Number = number,
            Value = value,
            Low = At(-half),
            High = At(half),
            Learned = Math.Clamp(1.0 - (deviation / prior), 0.0, 1.0),
            IsSaid = isPossible && isSharp,
            Reason = !isPossible ? "no road car has it" : isSharp ? "" : "the films leave it too far open",
        };
    }

    // The numbers that are told, with their slopes by those that are fitted.
    private static List<(CarNumber Number, double Value, Vector<double> By, bool IsLog)> Numbers(
        FilmFit fit, (double Speed, double Sliding) travel)
    {
        Vector<double> By(params (int Place, double Slope)[] of)
        {
            var v = Vector<double>.Build.Dense(fit.Mean.Length);
            foreach (var (place, slope) in of)
            {
                v[place] += slope;
            }

            return v;
        }

        (double, Vector<double>) Damping(int frequency, int damping, int friction)
        {
            var omega = 2.0 * Math.PI * Math.Exp(fit.Mean[frequency]);
            var (viscous, dry) = (Math.Exp(fit.Mean[damping]), travel.Sliding / (2.0 * omega));
            var whole = viscous + (dry * fit.Mean[friction]);
            return (whole, By((damping, viscous / whole), (friction, dry / whole)));
        }

        var (front, byFront) = Damping(FilmedCar.FrontFrequency, FilmedCar.FrontDamping, FilmedCar.FrontFriction);
        var (rear, byRear) = Damping(FilmedCar.RearFrequency, FilmedCar.RearDamping, FilmedCar.RearFriction);
        return
        [
            (CarNumber.FrontFrequency, Math.Exp(fit.Mean[0]), By((0, 1.0)), true),
            (CarNumber.RearFrequency, Math.Exp(fit.Mean[1]), By((1, 1.0)), true),
            (CarNumber.FrequencyRatio, Math.Exp(fit.Mean[1] - fit.Mean[0]), By((0, -1.0), (1, 1.0)), true),
            (CarNumber.FrontDamping, front, byFront, true),
            (CarNumber.RearDamping, rear, byRear, true),
            (CarNumber.PitchIndex, fit.Mean[FilmedCar.Index], By((FilmedCar.Index, 1.0)), false),
        ];
    }

    // Root mean square of the travel's rate, and what dry friction counts as beside a damper at that motion: E[v²/√(v² + a²)]/E[v²].
    private static (double Speed, double Sliding) Travel(FilmFit fit)
    {
        var (square, slid, count) = (0.0, 0.0, 0);
        for (var f = 0; f < fit.Drives.Count; f++)
        {
            var drive = fit.Drives[f];
            var (_, heights) = FilmFit.Derivatives(drive, fit.Mean[..FilmedCar.Count]);
            var n = drive.Count;
            for (var i = 0; i < n - 1; i++)
            {
                var (_, uf, _, ur) = drive.At(i, 0.5);
                double Rate(int k) => (heights[k + 1] - heights[k]) / drive.Step;
                foreach (var v in new[] { uf - Rate(i), ur - Rate(n + i) })
                {
                    square += v * v;
                    slid += v * v / Math.Sqrt((v * v) + (FilmedCar.FrictionSpeed * FilmedCar.FrictionSpeed));
                    count++;
                }
            }
        }

        return (Math.Sqrt(square / Math.Max(1, count)), square > 0.0 ? slid / square : 0.0);
    }

    // Blocks of residuals of each film, or whole films, are drawn with replacement; each draw moves the numbers by one step of the fit.
    private Matrix<double> Spread(FilmFit fit, bool areFilmsDrawn)
    {
        var size = fit.Mean.Length;
        var weight = 1.0 / (fit.Misfit * fit.Misfit * fit.Alike);
        var blocks = passes.Select((p, f) => Scores(fit, p, f, weight)).ToArray();
        List<Vector<double>> Whole() => [.. blocks.Select(b => b.Aggregate((x, y) => x + y))];
        // What is drawn stays in its set: the films, or the blocks of one film.
        List<Vector<double>>[] sets = areFilmsDrawn ? [Whole()] : blocks;
        Vector<double>[] sums = [.. sets.Select(set => set.Aggregate((x, y) => x + y))];
        var chol = fit.Information.Cholesky();
        var sum = Matrix<double>.Build.Dense(size, size);
        var index = 0UL;
        const ulong seed = 20_261_128;
        int Any(int count) => (int)(SplitMix.Uniform(seed, index++) * count);
        for (var draw = 0; draw < Draws; draw++)
        {
            var push = Vector<double>.Build.Dense(size);
            foreach (var (set, all) in sets.Zip(sums))
            {
                // So few lie nearer to their mean than to the truth.
                var wider = Math.Sqrt(set.Count / Math.Max(1.0, set.Count - 1.0));
                for (var b = 0; b < set.Count; b++)
                {
                    push += set[Any(set.Count)] * wider;
                }

                push -= all * wider;
            }

            for (var p = 0; p < size; p++)
            {
                push[p] += SplitMix.Normals(seed + 1, (ulong)(2 * ((draw * size) + p))).First / fit.Before(p).Spread;
            }

            var step = chol.Solve(push);
            sum += step.OuterProduct(step);
        }

        return sum / Draws;
    }

    private static List<Vector<double>> Scores(FilmFit fit, SeenPass pass, int film, double weight)
    {
        var places = FilmFit.Places(film);
        var (r, slopes, n) = (fit.Residuals[film], fit.Slopes[film], pass.Count);
        var each = Math.Max(2, (int)Math.Round(Block / pass.Step));
        var blocks = new List<Vector<double>>();
        for (var from = 0; from < n; from += each)
        {
            var score = Vector<double>.Build.Dense(fit.Mean.Length);
            for (var i = from; i < Math.Min(n, from + each); i++)
            {
                foreach (var k in new[] { i, n + i })
                {
                    for (var a = 0; a < places.Length; a++)
                    {
                        score[places[a]] += weight * slopes[k][a] * r[k];
                    }
                }
            }

            blocks.Add(score);
        }

        return blocks;
    }

    private static FittedPass Fitted(FilmFit fit, int film)
    {
        var (_, heights) = FilmFit.Derivatives(fit.Drives[film], fit.Mean[..FilmedCar.Count]);
        var n = heights.Length / 2;
        return new FittedPass([.. heights[..n]], [.. heights[n..]]);
    }
}
