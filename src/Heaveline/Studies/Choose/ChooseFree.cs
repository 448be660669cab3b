using Heaveline.Cars;
using Heaveline.Parts;

namespace Heaveline.Studies;

/// <summary>Parts of a free range: nobody sells them, and they have no price.</summary>
internal static class ChooseFree
{
    /// <summary>One of each value of a range; empty where the car's own damper has no curve to go by.</summary>
    /// <param name="car">The car as it is.</param>
    /// <param name="place">The place.</param>
    /// <param name="range">The range.</param>
    public static IEnumerable<PartOption> Options(Car car, PartPlace place, ChooseRange range) =>
        range.Values.Select(value => Of(car.Axles[(int)place.End()!.Value], place, value)).OfType<PartOption>();

    /// <summary>What stands at a place, in the measure of its range; null where it has none.</summary>
    /// <param name="car">The car as it is: dampers are measured by its own.</param>
    /// <param name="place">The place.</param>
    /// <param name="option">The part; null for the car's own.</param>
    public static double? ValueOf(Car car, PartPlace place, PartOption? option) => option is null ? null
        : place.Sort() == PartSort.Damper
            ? option.Damping?.Factor.Si / (car.Axles[(int)place.End()!.Value].Damper.Law as TableDamper)?.Factor.Si
        : (option.Spring?.Law as LinearSpring)?.Rate.Si;

    // A damper of other force is off as the present one is: its rig is the same.
    private static PartOption? Of(Axle axle, PartPlace place, double value)
    {
        var name = ChooseRange.Words(place, value);
        if (place.Sort() == PartSort.Spring)
        {
            return new CoilPart { Name = name, Law = new LinearSpring { Rate = new(value), Origin = "of a free range" } }.Options[0];
        }

        if (axle.Damper.Law is not TableDamper present)
        {
            return null;
        }

        var law = present.Under(present.Factor with
        {
            Si = value * present.Factor.Si,
            Doubt = present.Factor.Doubt with { HalfWidth = value * present.Factor.Doubt.HalfWidth },
        });
        return new PartOption(new DamperPart { Name = name, Clicks = [new DamperClick(0, law)] }) { Damping = law };
    }
}
