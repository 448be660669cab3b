using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Studies;

/// <summary>
/// Cars that a kit is fitted to, drawn within the doubts of the car: each is fitted with one kit, whose parts are off by the same errors in standard
/// deviations at every tolerance, so that tolerances are compared over the same cars and the same hands.
/// </summary>
internal sealed class FittedCars
{
    // Errors of parts are drawn apart from the cars, so that another kit meets the same cars.
    private const ulong OfParts = 0x4B4954UL;

    private readonly ToleranceAsked asked;
    private readonly JointDoubts doubts;
    private readonly KitTolerance[] tolerances;
    private readonly int[] kept;
    private readonly bool[] breaks;
    private readonly WorkshopReadings?[] readings;
    private readonly Measure<Pass>[] ofPass;

    private FittedCars(ToleranceAsked asked, KitTolerance[] tolerances)
    {
        this.asked = asked;
        this.tolerances = tolerances;
        doubts = JointDoubts.Of([CarDoubts.Of(FittedKit.AsDesigned(asked.Car.Car), asked.Car.Load)]);
        kept = new int[tolerances.Length];
        breaks = new bool[asked.Draws];
        readings = new WorkshopReadings?[asked.Draws];
        ofPass = [.. asked.Promises.Select(p => p.Measure).OfType<Measure<Pass>>().Distinct()];
    }

    /// <summary>How many of the cars keep the promise at each tolerance, shape (tolerances).</summary>
    public IReadOnlyList<int> Kept => kept;

    /// <summary>Cars that with the loosest tolerances cannot stand, empty or under the load: nothing is read off them.</summary>
    public int Fallen => readings.Count(r => r is null);

    /// <summary>Fits the kits.</summary>
    /// <param name="asked">What is asked.</param>
    /// <param name="tolerances">Tolerances, the loosest last: of it the acceptance test is made.</param>
    /// <param name="run">How it is run.</param>
    public static FittedCars Of(ToleranceAsked asked, KitTolerance[] tolerances, StudyRun run)
    {
        var cars = new FittedCars(asked, tolerances);
        var done = 0;
        ParallelLoop.Each(asked.Draws, run.Degree, draw =>
        {
            cars.Fit(draw, run.Cancellation);
            run.Progress?.Report(Interlocked.Increment(ref done) / (double)asked.Draws);
        }, run.Cancellation);
        return cars;
    }

    /// <summary>The promised numbers of a car that stands, in order, SI; NaN of what it has not.</summary>
    /// <param name="asked">The promises.</param>
    /// <param name="model">The car.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static IReadOnlyList<double> Numbers(ToleranceAsked asked, RideModel model, CancellationToken cancellation)
    {
        var ofPass = asked.Promises.Select(p => p.Measure).OfType<Measure<Pass>>().Distinct().ToArray();
        double[] passed = ofPass.Length == 0
            ? []
            : BatchedMeasures.Of([new PassRequest(model, asked.Road!, asked.Speed)], ofPass, null, 1, cancellation)[0];
        return NumbersOf(asked, new CarAtRest(model), ofPass, passed);
    }

    /// <summary>
    /// The test that parts, among cars that stand at the loosest tolerances, those that break the promise; null where too few break it, or keep it,
    /// to tell.
    /// </summary>
    public ToleranceTest? Test()
    {
        var standing = readings.Index().Where(r => r.Item is not null).Select(r => (r.Index, Read: r.Item!.Value)).ToArray();
        return ToleranceTest.Of(
            [.. ToleranceTest.Readings.Select(kind => standing.Select(car => car.Read.Value(kind)).ToArray())],
            [.. standing.Select(car => breaks[car.Index])]);
    }

    private void Fit(int draw, CancellationToken cancellation)
    {
        var drawn = JointDraw.Of(doubts, asked.Seed, draw);
        var (car, load) = (drawn.Models[0].Car, drawn.Models[0].Load);
        var own = SplitMix.At(asked.Seed ^ OfParts, (ulong)draw);
        var ((a, b), (c, d), (e, f)) = (SplitMix.Normals(own, 0), SplitMix.Normals(own, 2), SplitMix.Normals(own, 4));
        double[] errors = [a, b, c, d, e, f];
        var models = new RideModel?[tolerances.Length];
        for (var t = 0; t < tolerances.Length; t++)
        {
            cancellation.ThrowIfCancellationRequested();
            models[t] = Standing(() => RideModel.Of(FittedKit.On(car, tolerances[t], errors), load));
        }

        var rows = ofPass.Length == 0
            ? null
            : BatchedMeasures.Of(
                [.. models.Select(m => m is null ? null : new PassRequest(m, asked.Road!, asked.Speed))], ofPass, null, 1, cancellation);
        for (var t = 0; t < tolerances.Length; t++)
        {
            // A car that cannot stand keeps nothing.
            var holds = models[t] is { } model && Holds(new CarAtRest(model), rows?[t] ?? []);
            if (holds)
            {
                Interlocked.Increment(ref kept[t]);
            }

            breaks[draw] = !holds;
        }

        var last = Standing(() => RideModel.Of(FittedKit.On(car, tolerances[^1], errors)));
        readings[draw] = last is null || models[^1] is null ? null : WorkshopReadings.Read(last, WorkshopReadings.Hand(asked.Seed, draw));
    }

    private bool Holds(CarAtRest car, double[] passed)
    {
        var numbers = NumbersOf(asked, car, ofPass, passed);
        return asked.Promises.Zip(numbers).All(p => p.First.Holds(p.Second));
    }

    private static IReadOnlyList<double> NumbersOf(ToleranceAsked asked, CarAtRest car, Measure<Pass>[] ofPass, double[] passed) =>
    [
        .. asked.Promises.Select(p => p.Measure is Measure<CarAtRest> ofRest
            ? ofRest.Of(car)
            : passed[Array.IndexOf(ofPass, (Measure<Pass>)p.Measure)]),
    ];

    private static RideModel? Standing(Func<RideModel> of)
    {
        try
        {
            return of();
        }
        catch (RefusedValueException)
        {
            return null;
        }
    }
}
