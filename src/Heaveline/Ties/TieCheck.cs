using Heaveline.Cars;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Ties;

/// <summary>What does not go together: a car, a load, an obstacle and what was read.</summary>
internal static class TieCheck
{
    /// <exception cref="RefusedValueException">They do not.</exception>
    public static void Refuse(Car car, LoadState load, Road road, TieReadings readings)
    {
        if (road.Event is null)
        {
            throw new RefusedValueException(
                "road under the ties",
                road.Caption,
                "an obstacle with a beginning and an end",
                "Ties show the farthest of one bump: name its road file.");
        }

        if (readings.Heights.Length > 0 && load.Loads.Count == 0)
        {
            throw new RefusedValueException(
                "heights before and after", "given without a load", "given with the load that came between", "Name the load state of the passes.");
        }

        var places = readings.Passes.SelectMany(p => p.Readings.Select(r => r.Place)).ToHashSet();
        if (car.Kind == VehicleKind.TwoWheeler && places.Any(TiePlaces.IsSided))
        {
            throw new RefusedValueException(
                "ties of a motorcycle", "left or right", "front or rear", "It has one wheel at each end: give front and rear.");
        }

        foreach (var end in places.Select(TiePlaces.EndOf).Distinct())
        {
            var (axle, name) = (car.Axles[(int)end], CornerNames.Of(end));
            var given = end == AxleEnd.Front ? readings.FrontRatio : readings.RearRatio;
            if (axle.Damper.Law is RatioDamper && given is null)
            {
                throw new RefusedValueException(
                    $"{name} damper of the car file",
                    "a damping ratio, which says nothing of its travel",
                    "a damper whose travel per wheel travel is known",
                    $"Give {name}-damper-moves beside the passes, 39 mm for 50 mm at the wheel.");
            }

            if (axle.Damper.Law is TableDamper && given is not null)
            {
                throw new RefusedValueException(
                    $"{name}-damper-moves", "given beside a damper whose travel the car file gives", "left out", "Change it in the car file.");
            }

            if (axle.Damper.Law is RatioDamper { Ratio.Si: 0.0 } or TableDamper { Factor.Si: 0.0 })
            {
                throw new RefusedValueException($"{name} damper", "without any force", "a damper with some force", "Give it a table.");
            }

            if (axle.Suspension != SuspensionKind.Independent && !ReferenceEquals(road.Left, road.Right) && car.Kind != VehicleKind.TwoWheeler)
            {
                throw new RefusedValueException(
                    $"{name} ties",
                    "read on a solid axle over an obstacle in one track",
                    "read over an obstacle in both tracks",
                    "The dampers of a solid axle move with both its wheels: lay the obstacle under both.");
            }
        }
    }
}
