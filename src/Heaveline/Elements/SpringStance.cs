using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Elements;

/// <summary>
/// Where a coil spring of which lengths are known stands between its seats; travels are the spring's own, from the reference state.
/// </summary>
internal sealed record SpringStance
{
    /// <summary>How its place is known.</summary>
    public required StanceOrigin Origin { get; init; }

    /// <summary>Force on the spring that stood on the scales, in the reference state, N: of this side.</summary>
    public required double Weighed { get; init; }

    /// <summary>The same, mean of both sides, N.</summary>
    public required double WeighedMean { get; init; }

    /// <summary>Force in the reference state, N; below 0 where the spring is too short to reach both seats there.</summary>
    public required double Carried { get; init; }

    /// <summary>Distance of its seats in the reference state, packing taken off, m; null when it is not known.</summary>
    public required double? Length { get; init; }

    /// <summary>Travel below which it is loose, m; minus infinity where its law does not say.</summary>
    public required double LooseBelow { get; init; }

    /// <summary>Travel at which its coils touch, m; null when it is not known.</summary>
    public required double? BlockAt { get; init; }

    /// <summary>The stance of an axle's spring; null where nothing is said of its lengths.</summary>
    /// <param name="axle">The axle.</param>
    /// <param name="weighed">Force on the spring of this side that stood on the scales, in the reference state, N.</param>
    /// <param name="mean">The same, mean of both sides, N.</param>
    public static SpringStance? Of(Axle axle, double weighed, double mean)
    {
        var spring = axle.Spring;
        if (!spring.HasLengths)
        {
            return null;
        }

        var (carried, origin) = spring.Swap is { } swap ? Swapped(axle, swap, weighed, mean) : (weighed, StanceOrigin.Weighed);
        var length = spring.Swap is null && spring.InstalledLength is { } installed
            ? installed.Si - CoilForce.Between(spring.Law, mean, weighed)
            : spring.FreeLength?.Si - CoilForce.Under(spring.LengthLaw, carried);
        // Its seats, and with them the distance between, stay where they were: a shorter spring is pressed together by less.
        carried = spring.AfterLoss(carried);
        var loose = spring.Law is GasSpring ? double.NaN : CoilForce.Between(spring.Law, carried, 0.0);
        return new SpringStance
        {
            Origin = origin,
            Weighed = weighed,
            WeighedMean = mean,
            Carried = carried,
            Length = length,
            LooseBelow = double.IsNaN(loose) ? double.NegativeInfinity : loose,
            BlockAt = length - spring.BlockLength?.Si,
        };
    }

    /// <summary>
    /// Distance of the seats of the spring that stood on the scales, m; null when neither it nor that spring's free length is known.
    /// </summary>
    public static double? Gap(Spring before, double weighed, double mean) => before.InstalledLength is { } installed
        ? installed.Si - CoilForce.Between(before.Law, mean, weighed)
        : before.FreeLength?.Si - CoilForce.Under(before.Law, weighed);

    /// <summary>Wheel travel of full droop, m, negative: the rebound stop's hard end, or its first touch; null without a stop.</summary>
    public static double? FullDroop(Axle axle) => axle.ReboundStop is { } stop ? -(stop.Clearance.Si + (stop.SolidAfter?.Si ?? 0.0)) : null;

    private static (double Carried, StanceOrigin Origin) Swapped(Axle axle, SpringSwap swap, double weighed, double mean)
    {
        if (swap.Preload is { } preload)
        {
            var droop = FullDroop(axle) ?? throw new RefusedValueException(
                "preload of a bought spring",
                preload.WithDoubt(0.0).ToString(),
                "given with a rebound stop",
                "Preload counts from full droop: describe the rebound stop, or give the spring's free length.");
            return (Packed(axle.Spring, CoilForce.At(swap.StandsBy, preload.Si - axle.Spring.MotionRatio.Travel(droop))), StanceOrigin.Preload);
        }

        return axle.Spring.FreeLength is { } free && Gap(swap.Before, weighed, mean) is { } gap
            ? (Packed(axle.Spring, CoilForce.At(swap.StandsBy, free.Si - gap + swap.Seat.Si)), StanceOrigin.Lengths)
            : (weighed, StanceOrigin.HeightKept);
    }

    // Where the height is kept the law pushes there as the one did by which the spring stands: packing makes the difference.
    private static double Packed(Spring spring, double carried) => spring.Swap is { KeptAt: { } at, StandsBy: var before }
        && CoilForce.Under(spring.Law, Math.Max(0.0, before.ForceAt(at, carried))) is { } pressed
            ? CoilForce.At(spring.Law, pressed - at)
            : carried;
}
