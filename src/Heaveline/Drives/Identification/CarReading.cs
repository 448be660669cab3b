using System.Collections.Immutable;
using Heaveline.Numerics;

namespace Heaveline.Drives.Identification;

/// <summary>What the end of a fit says: numbers, intervals, refusals, motion, humps.</summary>
internal sealed class CarReading
{
    // By so much of a fit's own measure another explanation is clearly better.
    private const double Better = 10.0;

    // By what a wheelbase is held to have been mistaken: 3.0 m for 2.7 m, and as far again.
    private static readonly double[] OtherWheelbases = [0.9, 1.1, 0.8, 1.25];

    private readonly CarProblem problem;
    private readonly double[] x;
    private readonly double value;
    private readonly (CarProblem Problem, double[] At, double Value)[] ends;
    private readonly CancellationToken stop;

    public CarReading(
        CarProblem problem, double[] x, double value, (CarProblem Problem, double[] At, double Value)[] ends, CancellationToken stop) =>
        (this.problem, this.x, this.value, this.ends, this.stop) = (problem, x, value, ends, stop);

    private IdentificationKnown Known => problem.Known;

    private CarLikelihood Likelihood => problem.Likelihood;

    /// <summary>Reads it.</summary>
    /// <param name="order">Where each window of the fit stood when it was given.</param>
    public CarFromDrive Read(int[] order)
    {
        var posterior = CarPosterior.Of(new CarFit(Likelihood, stop), Likelihood, x);
        var residuals = CarJudgement.Residuals(Likelihood);
        var (logs, slopes) = (CarNumbers.Logarithms(x, Known.Wheelbase), CarNumbers.Slopes(x, Known.Wheelbase));
        var starts = ends.Select(e => CarNumbers.Car(e.At, Known.Wheelbase) is var car
            ? new CarStart(car.FrontFrequency, car.RearFrequency, car.FrontDamping, car.RearDamping, car.PitchIndex, e.Value - value) : null!);
        ImmutableArray<CarStart> ended = [.. starts.OrderBy(s => s.Behind)];
        if (posterior is null || logs.Any(l => !double.IsFinite(l)))
        {
            var edge = CarJudgement.Edge(logs) ?? (CarNumber.FrontFrequency, Math.Exp(logs[0]), 0.6, 4.0);
            return new CarFromDrive
            {
                Refusals = [RefusalWords.Edge(edge.Number, edge.Value, edge.Low, edge.High)],
                Residuals = [.. residuals.Select(r => r.Band)],
                Starts = ended,
            };
        }

        var informed = slopes.Select(s => Math.Sqrt(posterior.Informed(s))).ToArray();
        var deviations = slopes.Select(s => Math.Sqrt(posterior.Variance(s))).ToArray();
        var estimates = Estimates(Known, x, logs, slopes, deviations, informed, posterior.Student);
        var refusals = Refusals(logs, estimates, residuals, ended);
        var isBelieved = refusals.All(r => r.Kind == RefusalKind.NotLearned);
        var raised = posterior.Raised();
        var begin = problem.Sites.Select((_, h) => Begin(h)).ToArray();
        var (travel, pitch) = CarMotion.Of(problem, x);
        return new CarFromDrive
        {
            Estimates = [.. estimates.Select(e => isBelieved || e.Reason.Length > 0
                ? e : e with { IsSaid = false, Reason = RefusalWords.Grey })],
            Refusals = refusals,
            IsBelieved = isBelieved,
            Car = CarNumbers.Car(x, Known.Wheelbase),
            Correlations = [.. slopes.Select(s => slopes.Select(o => posterior.Correlation(s, o)).ToImmutableArray())],
            TravelSpeed = travel,
            PitchMotion = pitch,
            Residuals = [.. residuals.Select(r => r.Band)],
            Spectra = [.. Likelihood.Spectra(x)],
            Roughness = Math.Exp(x[CarParameter.Roughness]),
            VerticalNoise = Math.Exp(x[CarParameter.VerticalNoise]),
            PitchNoise = Math.Exp(x[CarParameter.PitchNoise]),
            GyroGain = Math.Exp(x[CarParameter.Gain]),
            Starts = ended,
            Windows = [.. Enumerable.Range(0, order.Length).OrderBy(w => order[w]).Select(w => Window(w, posterior, begin))],
            Humps = [.. problem.Sites.Select((_, h) => Hump(h, posterior, begin[h]))],
            Known = Known,
            Mean = [.. x],
            Crossed = [.. problem.Windows.Select(w => w.Event)],
            Covariance = [.. raised],
            SpeedLog = [.. Enumerable.Range(0, order.Length).Select(w => x[SpeedAt(w)])],
            SpeedPrecision = [.. Enumerable.Range(0, order.Length).Select(w => Likelihood.Precision[SpeedAt(w)])],
            SpeedCovariance =
            [
                .. from one in Enumerable.Range(0, order.Length)
                   from other in Enumerable.Range(0, order.Length)
                   select posterior.Covariance[(SpeedAt(one) * x.Length) + SpeedAt(other)],
            ],
            Splines = [.. problem.Sites.Select((s, h) => (s, Likelihood.HumpAt[h], Likelihood.Splines[h], begin[h]))],
            Information = OfCar(raised),
            Weights = [.. slopes.Select((s, i) => Math.Pow(Deviation(raised, s) / deviations[i], 2))],
        };
    }

    private int SpeedAt(int window) => Likelihood.OwnAt + (CarParameter.Own * window) + CarParameter.Speed;

    /// <summary>Estimates from logarithms and their deviations.</summary>
    public static ImmutableArray<CarEstimate> Estimates(
        IdentificationKnown known, ReadOnlySpan<double> x, double[] logs, double[][] slopes, double[] deviations, double[] informed, double student)
    {
        var before = new CarLikelihood([], [], known, []);
        var centre = CarNumbers.Logarithms(before.Centre, known.Wheelbase);
        var doubts = CarNumbers.Slopes(before.Centre, known.Wheelbase);
        var result = ImmutableArray.CreateBuilder<CarEstimate>();
        for (var i = 0; i < logs.Length; i++)
        {
            double Prior(double[] slope) => Math.Sqrt(slope.Select((s, j) => s * s / before.Precision[j]).Sum());
            var (number, prior) = (CarNumbers.All[i], Prior(doubts[i]));
            var half = student * Math.Sqrt((deviations[i] * deviations[i]) + (CarNumbers.Floor(number) * CarNumbers.Floor(number)));
            var learned = Math.Clamp(1.0 - (informed[i] / Prior(slopes[i])), 0.0, 1.0);
            var isSaid = learned >= CarJudgement.LeastLearned;
            result.Add(new CarEstimate
            {
                Number = number,
                Value = Math.Exp(logs[i]),
                Low = Math.Exp(logs[i] - half),
                High = Math.Exp(logs[i] + half),
                KnownLow = Math.Exp(centre[i] - (Gaussian.Ninety * prior)),
                KnownHigh = Math.Exp(centre[i] + (Gaussian.Ninety * prior)),
                Learned = learned,
                IsSaid = isSaid,
                Reason = isSaid ? "" : RefusalWords.NotLearned(number, learned, "").Says,
            });
        }

        return result.ToImmutable();
    }

    private ImmutableArray<CarRefusal> Refusals(
        double[] logs,
        ImmutableArray<CarEstimate> estimates,
        ImmutableArray<(ResidualBand Band, int Count)> residuals,
        ImmutableArray<CarStart> starts)
    {
        var result = ImmutableArray.CreateBuilder<CarRefusal>();
        // Worked out only where something is refused.
        var tells = new Lazy<TellingDrive>(() => new TellingDrive(problem, x));
        if (CarJudgement.IsTooFew(problem.Windows))
        {
            var events = problem.Windows.Count(w => w.Site is not null);
            result.Add(RefusalWords.TooFew(events, problem.Windows.Count - events, tells.Value.ForWidest()));
        }

        if (CarJudgement.SoftMount(x) is { } swings)
        {
            result.Add(RefusalWords.SoftMount(swings));
        }

        if (CarJudgement.Misfit(residuals) is { } misfit)
        {
            result.Add(RefusalWords.Misfit(misfit.Band, misfit.IsPitch, residuals.Select(r => r.Band), problem.Windows));
        }

        if (CarJudgement.Edge(logs) is { } edge)
        {
            result.Add(RefusalWords.Edge(edge.Number, edge.Value, edge.Low, edge.High));
        }

        if (CarJudgement.Rival(starts, estimates) is { } rival)
        {
            result.Add(RefusalWords.TwoAnswers(starts[0], rival, tells.Value.ForWidest()));
        }

        if (CarJudgement.Halves(problem, x, stop) is { } halves)
        {
            result.Add(RefusalWords.Halves(halves.Number, halves.Apart, tells.Value.For(halves.Number)));
        }

        if (Reversed(result.Count > 0 && result[0].Kind != RefusalKind.TooFew) is { } reversed)
        {
            result.Insert(0, OtherWheelbase() is { } other ? RefusalWords.Wheelbase(reversed, other) : RefusalWords.Reversed(reversed));
        }

        foreach (var number in CarNumbers.Headlines.Where(n => estimates[(int)n].Learned < CarJudgement.LeastLearned))
        {
            result.Add(RefusalWords.NotLearned(number, estimates[(int)number].Learned, tells.Value.For(number)));
        }

        return result.ToImmutable();
    }

    // The same drive with pitch turned round, and the same car with its ends exchanged: one of them explains it clearly better, and moves like it.
    private string? Reversed(bool isDoubted)
    {
        double Off(int at) => Math.Abs(x[at] - Likelihood.Centre[at]) * Math.Sqrt(Likelihood.Precision[at]);
        if (Off(CarParameter.FrontShare) > 2.0 || Off(CarParameter.Phone) > 2.0)
        {
            var turned = CarProblem.Of(problem.Windows, Known with
            {
                FrontShare = 1.0 - Known.FrontShare,
                PhoneBehindFrontAxle = Known.Wheelbase - Known.PhoneBehindFrontAxle,
            });
            var end = new CarFit(turned.Likelihood, stop).Solve(x, double.PositiveInfinity, 40, _ => false);
            if (end.Value < value - Better && IsBelievable(turned, end.At))
            {
                return "a car whose front and rear axle are exchanged fits weights and the phone's place better";
            }
        }

        if (!isDoubted)
        {
            return null;
        }

        DriveWindow[] windows = [.. problem.Windows.Select(w => w with { PitchRate = [.. w.PitchRate.Select(q => -q)] })];
        var (other, there, least) = CarIdentification.Fitted(windows, Known, [(1.3, 1.4)], stop)[0];
        return least < value - Better && IsBelievable(other, there)
            ? "with pitch nose-up taken for nose-down the drive is explained better" : null;
    }

    // Which other wheelbase explains the drive clearly better too, "shorter" or "longer": then forward alone is not to blame. Null: none.
    private string? OtherWheelbase()
    {
        foreach (var factor in OtherWheelbases)
        {
            var known = Known with { Wheelbase = factor * Known.Wheelbase };
            var (other, there, least) = CarIdentification.Fitted([.. problem.Windows], known, [(1.3, 1.4)], stop)[0];
            if (least < value - Better && IsBelievable(other, there))
            {
                return factor < 1.0 ? "shorter" : "longer";
            }
        }

        return null;
    }

    private bool IsBelievable(CarProblem other, double[] at)
    {
        // Residuals are those of the terms as they were last worked out.
        _ = new CarFit(other.Likelihood, stop).At(at);
        return CarJudgement.Misfit(CarJudgement.Residuals(other.Likelihood)) is null;
    }

    // Of a sum of the car's parameters.
    private double Deviation(double[] covariance, double[] slopes)
    {
        var whole = Likelihood.Count;
        return Math.Sqrt(slopes.Index().Sum(s => s.Item * Dot.Of(slopes, covariance.AsSpan(s.Index * whole, slopes.Length))));
    }

    // Information of the car's parameters alone, the others unknown, without what was known before. Where the phone lay is no number of the car: in
    // another drive it lies elsewhere.
    private double[]? OfCar(double[] covariance)
    {
        const int n = CarParameter.Car;
        var whole = Likelihood.Count;
        int[] own = [.. Enumerable.Range(0, n).Where(i => i != CarParameter.Phone)];
        double[] part = [.. own.SelectMany(i => own.Select(j => covariance[(i * whole) + j]))];
        if (PositiveMatrix.Of(part, own.Length)?.Inverse() is not { } inverse)
        {
            return null;
        }

        var information = new double[n * n];
        foreach (var (i, row) in own.Index())
        {
            foreach (var (j, column) in own.Index())
            {
                information[(row * n) + column] = inverse[(i * own.Length) + j] - (i == j ? Likelihood.Precision[row] : 0.0);
            }
        }

        return information;
    }

    private FittedWindow Window(int w, CarPosterior posterior, double[] begin)
    {
        var (window, own) = (problem.Windows[w], Likelihood.OwnAt + (CarParameter.Own * w));
        var speed = window.Speed * Math.Exp(x[own + CarParameter.Speed]);
        var hump = Likelihood.Windows[w].Hump;
        var onset = hump < 0 ? window.Before : window.Before + x[own + CarParameter.Onset] + (begin[hump] / speed);
        return new FittedWindow(
            window.Event, window.Site, speed, posterior.Student * posterior.Deviation(own + CarParameter.Speed) * speed, onset,
            hump < 0 ? 0.0 : posterior.Student * posterior.Deviation(own + CarParameter.Onset));
    }

    private double Height(int h, double at)
    {
        var (splines, sum) = (Likelihood.Splines[h], 0.0);
        for (var j = 0; j < splines.Count; j++)
        {
            sum += x[Likelihood.HumpAt[h] + j] * splines.At(j, at);
        }

        return sum;
    }

    // Where the hump begins: the first place that stands a twentieth of its height.
    private double Begin(int h)
    {
        const int points = 1000;
        var (from, to) = Likelihood.Splines[h].Extent;
        double[] heights = [.. Enumerable.Range(0, points + 1).Select(k => Math.Abs(Height(h, from + ((to - from) * k / points))))];
        var most = heights.Max();
        var first = Array.FindIndex(heights, height => height >= 0.05 * most);
        return from + ((to - from) * Math.Max(first, 0) / points);
    }

    private RecoveredHump Hump(int h, CarPosterior posterior, double begin)
    {
        const double step = 0.05;
        var splines = Likelihood.Splines[h];
        var count = (int)Math.Ceiling((splines.Extent.To - begin) / step) + 1;
        double[] places = [.. Enumerable.Range(0, count).Select(k => k * step)];
        return new RecoveredHump
        {
            Site = problem.Sites[h],
            Distance = [.. places],
            Height = [.. places.Select(p => Height(h, begin + p))],
            HalfWidth = [.. places.Select(p =>
            {
                var slopes = new double[Likelihood.HumpAt[h] + splines.Count];
                for (var j = 0; j < splines.Count; j++)
                {
                    slopes[Likelihood.HumpAt[h] + j] = splines.At(j, begin + p);
                }

                return posterior.Student * Math.Sqrt(posterior.Variance(slopes));
            })],
        };
    }
}
