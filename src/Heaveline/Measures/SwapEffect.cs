using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Models;

namespace Heaveline.Measures;

/// <summary>What bought springs of one axle ask of their seats, in the reference state; mean of the axle's two sides.</summary>
public sealed record SwapEffect
{
    /// <summary>Which axle.</summary>
    public required AxleEnd End { get; init; }

    /// <summary>
    /// Whether the height is only kept because a length is not known: as if the seats were moved to where the car keeps it.
    /// </summary>
    public required bool KeepsHeight { get; init; }

    /// <summary>Whether the place of the springs is known by their preload at full droop.</summary>
    public required bool ByPreload { get; init; }

    /// <summary>
    /// Packing under each spring that would give the car the height back that it had on the scales, beyond what there is, m; below 0 the seats would
    /// have to be lower. Null where the height is kept, or a table does not say where its spring is free.
    /// </summary>
    public required double? Packing { get; init; }

    /// <summary>
    /// Distance of the seats, the car standing as it was weighed, at which it keeps its height, m; null where the free length is not known.
    /// </summary>
    public required double? SeatsNeeded { get; init; }

    /// <summary>Free length with which the car keeps its height, m; null where the place of the seats is not known.</summary>
    public required double? FreeLengthNeeded { get; init; }

    /// <summary>
    /// How much longer without load than the springs before the bought ones must be for the car to keep its height, m; below 0 shorter. Null where a
    /// table does not say where its spring is free.
    /// </summary>
    public required double? LongerNeeded { get; init; }

    /// <summary>Of both axles, those on bought springs.</summary>
    /// <param name="model">The car under any load.</param>
    public static IReadOnlyList<SwapEffect> Of(RideModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return [.. new[] { AxleEnd.Front, AxleEnd.Rear }.Select(end => Of(model, end)).OfType<SwapEffect>()];
    }

    private static SwapEffect? Of(RideModel model, AxleEnd end)
    {
        var axle = model.Car.Axles[(int)end];
        if (axle.Spring is not { Swap: { } swap } spring)
        {
            return null;
        }

        var mean = model.Numbers.Elements.Stances[2 * (int)end]!.WeighedMean;
        var stance = SpringStance.Of(axle, mean, mean)!;
        var compression = CoilForce.Under(spring.LengthLaw, mean);
        var gap = SpringStance.Gap(swap.Before, mean, mean);
        var keeps = stance.Origin == StanceOrigin.HeightKept;
        return new SwapEffect
        {
            End = end,
            KeepsHeight = keeps,
            ByPreload = stance.Origin == StanceOrigin.Preload,
            Packing = keeps ? null : compression - CoilForce.Under(spring.LengthLaw, stance.Carried),
            SeatsNeeded = spring.FreeLength?.Si - compression,
            FreeLengthNeeded = gap + compression,
            LongerNeeded = compression - CoilForce.Under(swap.Before.Law, mean),
        };
    }
}
