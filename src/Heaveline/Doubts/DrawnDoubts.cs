using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Doubts;

/// <summary>
/// A car's doubts carried through to its numbers by drawing cars (Monte Carlo; JCGM 101:2008, the propagation of distributions).
/// Draw number i depends on the seed and i alone, so that results repeat, whatever the degree of parallelism, and a study of
/// passes meets the cars of a study at rest.
/// </summary>
public sealed record DrawnDoubts
{
    /// <summary>The doubts.</summary>
    public required CarDoubts Doubts { get; init; }

    /// <summary>Seed of the draws.</summary>
    public required ulong Seed { get; init; }

    /// <summary>Number of drawn cars.</summary>
    public required int Samples { get; init; }

    /// <summary>
    /// Fewest draws that tell whose doubt makes how much of a number's variance; with fewer <see cref="DoubtResult.Shares"/> are empty.
    /// </summary>
    public int FewestForShares => ErrorFit.Fewest(Doubts.Sources.Count);

    /// <summary>Draws that no car could have and that were drawn again.</summary>
    public required int Refused { get; init; }

    /// <summary>Passes that did not run to their end; they have no numbers.</summary>
    public required int Unfinished { get; init; }

    /// <summary>One result per number asked for, in order.</summary>
    public required IReadOnlyList<DoubtResult> Results { get; init; }

    /// <summary>Numbers of the standing car.</summary>
    /// <param name="car">As measured.</param>
    /// <param name="load">Load state; null for none.</param>
    /// <param name="outputs">What to follow.</param>
    /// <param name="samples">How many cars, 10 to 1 000 000.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="degree">How many draws run at once.</param>
    /// <param name="progress">Told the share done (–), from several threads; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static DrawnDoubts Of(
        Car car,
        LoadState? load,
        IReadOnlyList<Measure<CarAtRest>> outputs,
        int samples,
        ulong seed,
        int degree = 1,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default) =>
        From(JointStudy.Of([CarDoubts.Of(car, load)], outputs, samples, seed, degree, progress, cancellation));

    /// <summary>Numbers of the car over a road at a speed, many cars side by side.</summary>
    /// <param name="car">As measured.</param>
    /// <param name="load">Load state; null for none.</param>
    /// <param name="road">The road.</param>
    /// <param name="speed">Speed, m/s.</param>
    /// <param name="outputs">What to follow.</param>
    /// <param name="samples">How many cars, 10 to 1 000 000.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="options">
    /// How to run the passes; null: 3 s of settling in steps of 1.25 ms, 200 samples a second, without the error estimate: far below the scatter of
    /// the draws. No pass runs longer than an output looks.
    /// </param>
    /// <param name="degree">How many groups of passes run at once.</param>
    /// <param name="progress">Told the share done (–), from several threads; null for nobody.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static DrawnDoubts OfPasses(
        Car car,
        LoadState? load,
        Road road,
        double speed,
        IReadOnlyList<Measure<Pass>> outputs,
        int samples,
        ulong seed,
        PassOptions? options = null,
        int degree = 1,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default) =>
        From(JointStudy.OfPasses([CarDoubts.Of(car, load)], road, speed, outputs, samples, seed, options, degree, progress, cancellation));

    private static DrawnDoubts From(JointStudy study) => new()
    {
        Doubts = study.Doubts.Cars[0],
        Seed = study.Seed,
        Samples = study.Samples,
        Refused = study.Refused,
        Unfinished = study.Unfinished,
        Results = study.Cars[0],
    };
}
