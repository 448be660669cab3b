using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Worksheets;

namespace Heaveline.Measures;

/// <summary>
/// What a workshop reads off a standing car in two minutes: the heights over both axles, each the mean of two, and how often an end swings, pushed
/// down and let go.
/// </summary>
/// <param name="Front">Height over the front axle against when the car was described, m.</param>
/// <param name="Rear">The same over the rear axle.</param>
/// <param name="FrontSwings">Swings of the front until a tenth is left.</param>
/// <param name="RearSwings">The same of the rear.</param>
internal readonly record struct WorkshopReadings(double Front, double Rear, double FrontSwings, double RearSwings)
{
    /// <summary>Doubt of a height read with a tape, m, two standard deviations: common practice, no source.</summary>
    public const double Tape = 3e-3;

    // Errors of readings are drawn apart from the cars, so that other cars meet the same hands.
    private const ulong OfReading = 0x52454144UL;

    /// <summary>Seed of the errors of whoever reads a drawn car, however often it is read.</summary>
    /// <param name="seed">Seed of all draws.</param>
    /// <param name="draw">The car.</param>
    public static ulong Hand(ulong seed, int draw) => SplitMix.At(seed ^ OfReading, (ulong)draw);

    /// <summary>The readings as the model has them.</summary>
    public static WorkshopReadings Of(RideModel model)
    {
        var car = new CarAtRest(model);
        return new(
            model.Trim.FrontHeight,
            model.Trim.RearHeight,
            Swings(car.DampingRatio(AxleEnd.Front)),
            Swings(car.DampingRatio(AxleEnd.Rear)));
    }

    /// <summary>The readings as somebody reads them: with errors of tape and count, and wherever friction lets the car stand.</summary>
    /// <param name="model">The car.</param>
    /// <param name="hand">Seed of this reading's errors: <see cref="Hand"/>.</param>
    public static WorkshopReadings Read(RideModel model, ulong hand)
    {
        var (is1, band) = (Of(model), model.Trim.FrictionBand);
        var (front, rear) = SplitMix.Normals(hand, 0);
        var (frontCount, rearCount) = SplitMix.Normals(hand, 2);
        return new(
            is1.Front + (0.5 * Tape * front) + (band[0] * ((2.0 * SplitMix.Uniform(hand, 4)) - 1.0)),
            is1.Rear + (0.5 * Tape * rear) + (band[1] * ((2.0 * SplitMix.Uniform(hand, 5)) - 1.0)),
            is1.FrontSwings + (0.5 * BounceSheet.HandCount * frontCount),
            is1.RearSwings + (0.5 * BounceSheet.HandCount * rearCount));
    }

    /// <summary>One of them.</summary>
    /// <param name="reading">What is read.</param>
    /// <param name="before">Heights over the front and the rear axle when the car was described, against which sinking counts, m.</param>
    public double Value(WorkshopReading reading, (double Front, double Rear) before = default) => reading switch
    {
        WorkshopReading.FrontHeight => Front,
        WorkshopReading.RearHeight => Rear,
        WorkshopReading.RearOverFront => Rear - Front,
        WorkshopReading.FrontSinking => before.Front - Front,
        WorkshopReading.RearSinking => before.Rear - Rear,
        WorkshopReading.RearMoreThanFront => before.Rear - Rear - (before.Front - Front),
        WorkshopReading.FrontSwings => FrontSwings,
        WorkshopReading.RearSwings => RearSwings,
        _ => throw new ArgumentOutOfRangeException(nameof(reading), reading, null),
    };

    // Swings from being let go until a tenth is left, of one mass on one spring.
    private static double Swings(double damping) => damping is > 0.0 and < 1.0
        ? Math.Log(10.0) * Math.Sqrt(1.0 - (damping * damping)) / (2.0 * Math.PI * damping)
        : 0.0;
}
