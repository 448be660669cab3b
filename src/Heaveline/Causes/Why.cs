using Heaveline.Drives.Planning;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Causes;

/// <summary>
/// Why a car pitches on a road at a speed: each cause set to neutral alone and in combination with the others, so that its size is known whichever
/// way they work together. The hit and the settling have rankings of their own: a short wheelbase, for one, worsens the hit of a short bump and
/// leaves the settling alone, since the ends' delay shrinks as their lever does.
/// </summary>
public sealed record Why
{
    /// <summary>Car and load.</summary>
    public required RideModel Model { get; init; }

    /// <summary>The road.</summary>
    public required Road Road { get; init; }

    /// <summary>Speed, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>
    /// Causes of the pitch in the second after the rear wheels have left; on a road without an obstacle, of the pitch of the whole pass.
    /// </summary>
    public required WhyRanking Settling { get; init; }

    /// <summary>Causes of the pitch acceleration of the hit; on a road without an obstacle, of its RMS value.</summary>
    public required WhyRanking Hit { get; init; }

    /// <summary>The road tests planned for causes of the settling; empty until <see cref="WithTests"/>.</summary>
    public IReadOnlyList<PlannedTest> Tests { get; init; } = [];

    /// <summary>The causes that a load can move and that are worth a test but have none.</summary>
    internal IReadOnlyList<NoTest> Untested { get; init; } = [];

    /// <summary>
    /// The drive with a phone that would tell what no load shows: over the road's own obstacle or over boards, with nobody aboard but the driver;
    /// null where all is tested, nobody drives, or no three speeds are safe.
    /// </summary>
    public TestDrive? Drive { get; init; }

    /// <summary>How many passes were run.</summary>
    public required int Passes { get; init; }

    /// <summary>How the neutral car's pass ended; null where there is no such car.</summary>
    public required PassOutcome? NeutralOutcome { get; init; }

    /// <summary>Combinations of which there is no car, or whose pass did not run to its end.</summary>
    public required int Missing { get; init; }

    /// <summary>The ranked causes.</summary>
    /// <param name="model">Car and load.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="options">The neutral values.</param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="progress">Told the share done (–), perhaps from several threads; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="RunFailedException">The car's own pass does not run to its end.</exception>
    public static Why Of(
        RideModel model,
        Road road,
        double speed,
        WhyOptions? options = null,
        int degree = 1,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(road);
        options ??= WhyOptions.Default;
        var measures = PassCatalogue.PitchOver(road);
        // What follows the first second is not asked about.
        var passOptions = BatchedMeasures.Usual with { Record = new() { SettlingTime = 1.1 } };
        var own = Pass.Of(model, road, speed, passOptions, cancellation);
        if (own.Outcome != PassOutcome.Completed)
        {
            throw new RunFailedException($"{BrokenOff.Finding(own)} Of a car that does not get across nothing can be ranked.", own.OutcomeSentence);
        }

        var neutral = new NeutralCar(model, speed, options);
        var causes = neutral.Causes(own);
        var exact = causes.Count <= options.MostExact;
        var orders = exact ? [] : FairShares.Orders(causes.Count, options.Permutations, options.Seed);
        var sets = exact ? FairShares.AllSets(causes.Count) : FairShares.SetsOf(orders, causes.Count);
        var cars = new RideModel?[sets.Count];
        ParallelLoop.Each(sets.Count, Math.Max(1, degree), i => cars[i] = neutral.Without(causes, sets[i]), cancellation);
        var (rows, outcomes) = BatchedMeasures.WithOutcomes(
            [.. cars.Select(car => car is null ? null : new PassRequest(car, road, speed))], measures, passOptions, degree, progress, cancellation);

        WhyRanking Ranked(int k)
        {
            var value = sets.Zip(rows, (set, row) => (set, row[k])).ToDictionary(p => p.set, p => p.Item2);
            var shares = exact ? FairShares.Of([.. rows.Select(r => r[k])], causes.Count) : FairShares.Of(value, orders, causes.Count);
            return new WhyRanking
            {
                Measure = measures[k],
                Value = value[0],
                NeutralValue = value[(1 << causes.Count) - 1],
                Causes = [.. causes
                    .Select((kind, i) => Cause(kind, model, speed, neutral, options, measures[k], value[0], value[0] - value[1 << i], shares[i]))
                    .OrderByDescending(c => double.IsNaN(c.Share) ? -1.0 : Math.Abs(c.Share))],
            };
        }

        return new Why
        {
            Model = model,
            Road = road,
            Speed = speed,
            Settling = Ranked(0),
            Hit = Ranked(1),
            NeutralOutcome = outcomes[sets.Index().First(s => s.Item == (1 << causes.Count) - 1).Index],
            Passes = cars.Count(c => c is not null),
            Missing = rows.Count(r => double.IsNaN(r[0])),
        };
    }

    /// <summary>The same with a road test planned for each cause of the settling that a load can change and that counts.</summary>
    /// <param name="least">Least size of a cause's share over the car's value that is worth a test (–).</param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="progress">Told the share done (–); null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public Why WithTests(double least, int degree = 1, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        PitchCause[] causes = [.. Settling.Causes.Where(c => !double.IsNaN(c.Share) && Math.Abs(c.Relative) >= least)];
        var plan = new TestPlan(this, degree, cancellation);
        var (tests, untested) = (new List<PlannedTest>(), new List<NoTest>());
        foreach (var (i, cause) in causes.Index())
        {
            var (test, none) = plan.Of(cause.Kind);
            tests.AddRange(test is null ? [] : [test]);
            untested.AddRange(none is null ? [] : [none]);
            progress?.Report((i + 1.0) / causes.Length);
        }

        var isAsked = untested.Any(u => CauseValue.Kinds.Contains(u.Kind));
        return this with { Tests = tests, Untested = untested, Drive = isAsked ? Telling(degree, cancellation) : null };
    }

    // What is known after twelve passes is told; how many would halve a doubt is another question.
    private TestDrive? Telling(int degree, CancellationToken cancellation)
    {
        var alone = NeutralLoad.Of(Model.Car, Model.Load);
        if (alone.Loads.Count == 0)
        {
            return null;
        }

        TestHump[] own = TestHump.Refusal(Road) is null ? [new() { Name = "this obstacle", Road = Road }] : [];
        try
        {
            TestDayWish Wish(params IEnumerable<TestHump> humps) =>
                new() { Model = RideModel.Of(Model.Car, alone), Humps = [.. humps], HalfWidth = 1.0 };
            TestDay Day(params IEnumerable<TestHump> humps) => TestDay.Of(Wish(humps), degree, stop: cancellation);
            var drive = own.Length > 0 && Day(own).Drives is [var here] ? here : Day(TestHump.OfBoards).Drives.FirstOrDefault();
            if (drive is null)
            {
                return null;
            }

            var wish = Wish(drive.Hump);
            return drive with
            {
                HalfWidthsAtMost = TestDay.HalfWidths(wish, drive.Hump, drive.Speeds, TestDrive.MostPasses, wish.Phone, cancellation),
            };
        }
        catch (RefusedValueException)
        {
            // It does not stand with the driver alone.
            return null;
        }
    }

    private static PitchCause Cause(
        PitchCauseKind kind,
        RideModel model,
        double speed,
        NeutralCar neutral,
        WhyOptions options,
        Measure measure,
        double value,
        double alone,
        double share)
    {
        var (what, other) = WhyWords.Values(kind, model, neutral, options, speed);
        return new PitchCause
        {
            Kind = kind,
            Is = what,
            Neutral = other,
            Beyond = neutral.Beyond(kind),
            Alone = alone,
            Share = share,
            Relative = value > 0.0 ? share / value : 0.0,
            Sentence = WhyWords.Sentence(what, other, share, value, measure),
        };
    }
}
