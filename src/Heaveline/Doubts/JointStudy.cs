using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Pieces;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.Doubts;

/// <summary>
/// The doubts of one car or several carried through to their numbers and to what lies between them, by cars drawn together (Monte Carlo; JCGM
/// 101:2008, the propagation of distributions): what the cars have in common cancels in their difference. Draw number i depends on the seed and i
/// alone, so that results repeat, whatever the degree of parallelism, and studies of one seed meet the same cars.
/// </summary>
public sealed record JointStudy
{
    // So many draws at a time that cars of one step fill the lanes, and that a study of a million never holds them all.
    private const int AtOnce = 64;

    /// <summary>How passes run where nothing else is said: far below the scatter of the draws.</summary>
    internal static PassOptions UsualPasses { get; } =
        new() { Method = FixedStep.Once with { LargestStep = 1.25e-3 }, Record = new() { SamplesPerSecond = 200.0 } };

    /// <summary>The doubts.</summary>
    public required JointDoubts Doubts { get; init; }

    /// <summary>Seed of the draws.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Number of draws.</summary>
    public required int Samples { get; init; }

    /// <summary>
    /// Fewest draws that tell whose doubt makes how much of a number's variance; with fewer <see cref="DoubtResult.Shares"/> are empty.
    /// </summary>
    public int FewestForShares => ErrorFit.Fewest(Doubts.Sources.Count);

    /// <summary>Draws that no car could have and that were drawn again.</summary>
    public required int Refused { get; init; }

    /// <summary>Runs that gave no number: passes that did not end, responses that did not settle.</summary>
    public required int Unfinished { get; init; }

    /// <summary>Each car's numbers, in the order asked for, shape (cars)(numbers).</summary>
    public required IReadOnlyList<IReadOnlyList<DoubtResult>> Cars { get; init; }

    /// <summary>Each further car's numbers less the first's of the same draw, shape (cars − 1)(numbers).</summary>
    public required IReadOnlyList<IReadOnlyList<DoubtResult>> Changes { get; init; }

    /// <summary>Numbers of standing cars.</summary>
    /// <param name="cars">Each car as measured and its load.</param>
    /// <param name="outputs">What to follow.</param>
    /// <param name="samples">How many draws, 10 to 1 000 000.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="degree">How many draws run at once.</param>
    /// <param name="progress">Told the share done (–), from several threads; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static JointStudy Of(
        IReadOnlyList<CarDoubts> cars,
        IReadOnlyList<Measure<CarAtRest>> outputs,
        int samples,
        ulong seed,
        int degree = 1,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        var draws = new JointSamples(JointDoubts.Of(cars), samples, seed, outputs.Count);
        // Modes followed, so that no interval and no change mixes two: the first car from empty, the others as stated from it, every draw from its
        // car.
        var first = new CarAtRest(RideModel.Of(cars[0].Car, cars[0].Load)) { ModesLike = BodyModes.OfEmpty(cars[0].Car) };
        CarAtRest[] stated = [first, .. cars.Skip(1).Select(c => new CarAtRest(RideModel.Of(c.Car, c.Load)) { ModesLike = first.Modes })];
        BodyModes[] like = [.. stated.Select(s => s.Modes)];
        draws.Each(1, degree, progress, (draw, _) =>
        {
            var models = draws.Draw(draw);
            for (var car = 0; car < models.Count; car++)
            {
                var rest = new CarAtRest(models[car]) { ModesLike = like[car] };
                draws.Keep(car, draw, outputs.Select(o => o.Of(rest)));
            }
        }, cancellation);
        return draws.Study(outputs, [.. stated.Select(rest => outputs.Select(o => o.Of(rest)).ToArray())]);
    }

    /// <summary>Numbers of cars over a road at a speed, many passes side by side.</summary>
    /// <param name="cars">Each car as measured and its load.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="outputs">What to follow.</param>
    /// <param name="samples">How many draws, 10 to 1 000 000.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="options">
    /// How to run the passes; null: 3 s of settling in steps of 1.25 ms, 200 samples a second, without the error estimate: far below the scatter of
    /// the draws. No pass runs longer than an output looks.
    /// </param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="progress">Told the share done (–), from several threads; null for nobody.</param>
    /// <param name="through">Who stands between the study and those who do its groups of draws; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static JointStudy OfPasses(
        IReadOnlyList<CarDoubts> cars,
        Road road,
        double speed,
        IReadOnlyList<Measure<Pass>> outputs,
        int samples,
        ulong seed,
        PassOptions? options = null,
        int degree = 1,
        IProgress<double>? progress = null,
        Func<IPieceDoer, IPieceDoer>? through = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        options ??= UsualPasses;
        var draws = new JointSamples(JointDoubts.Of(cars), samples, seed, outputs.Count);
        var own = new DrawnPasses(JointDoubts.Of(cars), road, speed, outputs, seed, options);
        var doer = through?.Invoke(own);
        draws.Each(AtOnce, degree, progress, (first, count) => draws.Take(first, doer is null
            ? own.Of(first, count, cancellation)
            : DrawnGroup.OfBytes(doer.Do(DrawnGroup.Piece(first, count), cancellation))), cancellation);
        return draws.Study(outputs, [.. Stated(cars).Select(model =>
        {
            var pass = Pass.Of(model, road, speed, options, cancellation);
            return outputs.Select(o => o.Of(pass)).ToArray();
        })]);
    }

    /// <summary>Numbers of cars on a random road in the long run, at one speed.</summary>
    /// <param name="cars">Each car as measured and its load.</param>
    /// <param name="spectrum">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="outputs">What to follow.</param>
    /// <param name="samples">How many draws, 10 to 1 000 000.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="options">How to compute the responses; null: to 1e-3, below the scatter of the draws.</param>
    /// <param name="degree">How many draws run at once.</param>
    /// <param name="progress">Told the share done (–), from several threads; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static JointStudy OfRides(
        IReadOnlyList<CarDoubts> cars,
        RoadSpectrum spectrum,
        double speed,
        IReadOnlyList<Measure<CarOnRoad>> outputs,
        int samples,
        ulong seed,
        RandomOptions? options = null,
        int degree = 1,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(outputs);
        options ??= RandomOptions.Default with { Tolerance = 1e-3 };
        var road = new RideRoad(spectrum, speed, options.Tracks);
        var draws = new JointSamples(JointDoubts.Of(cars), samples, seed, outputs.Count);
        draws.Each(1, degree, progress, (first, _) =>
        {
            var models = draws.Draw(first);
            for (var car = 0; car < models.Count; car++)
            {
                var response = RandomResponse.Of(models[car], road, options, cancellation);
                draws.Keep(car, first, response.Outcome == RandomOutcome.NotConverged ? null : Numbers(outputs, response));
            }
        }, cancellation);
        return draws.Study(
            outputs, [.. Stated(cars).Select(model => Numbers(outputs, RandomResponse.Of(model, road, options, cancellation)))]);
    }

    private static IEnumerable<RideModel> Stated(IReadOnlyList<CarDoubts> cars) => cars.Select(c => RideModel.Of(c.Car, c.Load));

    private static double[] Numbers(IReadOnlyList<Measure<CarOnRoad>> outputs, RandomResponse response)
    {
        var ride = new CarOnRoad(response);
        return [.. outputs.Select(o => o.Of(ride))];
    }
}
