using Heaveline.Elements;
using System.Globalization;
using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Models;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>
/// Warns of parts of a size that no road vehicle has, each against the load or the rate it works with. Limits: common practice, no source.
/// </summary>
internal static class SizeSlips
{
    private const double MostUnsprung = 0.25;
    private const string UnsprungAdvice = "Only wheels, hubs, brakes, half of arms and springs and a solid axle count, for both sides together.";
    private static readonly string[] Ends = ["front", "rear"];

    /// <summary>Warns about the parts of an axle.</summary>
    public static void Check(RideModel model, int axle, Node root, Reader reader)
    {
        CheckUnsprung(model.Car, axle, root, reader);
        CheckFriction(model, axle, root, reader);
        CheckStops(axle, model.Car, root, reader);
        CheckBar(model, axle, root, reader);
        CheckTyre(model, axle, root, reader);
    }

    /// <summary>Warns about people and things in the car.</summary>
    public static void CheckLoads(Car car, Node root, Reader reader)
    {
        const double HeaviestPerson = 200.0;
        var masses = car.LoadStates.ToDictionary(state => state.Name, state => state.Loads);
        foreach (var state in root.At("loads")?.Entries ?? [])
        {
            foreach (var (load, mass) in state.Value.Items.Zip(masses[state.Key], (load, read) => (load, read.Mass.Si)))
            {
                CarSlips.Warn(
                    reader,
                    load.At("mass"),
                    load.At("in") is not null && mass > HeaviestPerson,
                    $"is {load.At("mass")?.Text} in one seat; up to 200 kg is usual.",
                    "Likely slip: a weight in newtons written as a mass in kilograms, or a digit too many.");
                CarSlips.Warn(
                    reader,
                    load.At("mass"),
                    load.At("in") is null && mass > car.Weighing.Front + car.Weighing.Rear,
                    $"is {load.At("mass")?.Text}, more than the whole vehicle weighs.",
                    "Likely slip: a weight in newtons written as a mass in kilograms, or a digit too many.");
            }
        }
    }

    /// <summary>Refuses, in a car that cannot stand, unsprung masses that leave little to carry.</summary>
    /// <returns>Whether anything was refused.</returns>
    public static bool RefuseUnsprung(Car car, Node root, Reader reader)
    {
        const double Half = 0.5;
        var before = reader.Count;
        for (var axle = 0; axle < 2; axle++)
        {
            if (UnsprungShare(car, axle) is > Half and < 1.0 && root.At(Ends[axle], "unsprung-mass") is { } node)
            {
                reader.Refuse(node.Place, $"{node.Subject} {UnsprungWords(car, axle)}", UnsprungAdvice);
            }
        }

        return reader.Count > before;
    }

    /// <summary>Warns of wheels of one axle that stand far apart on the scales, and of a rider beside the motorcycle.</summary>
    public static void CheckSides(Car car, Node root, Reader reader)
    {
        const double MostApart = 1.6;
        const double MostBeside = 0.1;
        foreach (var (end, left, right) in new[]
        {
            ("front", car.Weighing.FrontLeft.Si, car.Weighing.FrontRight.Si), ("rear", car.Weighing.RearLeft.Si, car.Weighing.RearRight.Si),
        })
        {
            var lighter = root.At("weighing", left < right ? $"{end}-left" : $"{end}-right");
            var times = Math.Max(left, right) / Math.Min(left, right);
            CarSlips.Warn(
                reader,
                lighter,
                times > MostApart,
                FormattableString.Invariant(
                    $"is {lighter?.Text}; the other wheel carries {times:0.0} times as much, and up to {MostApart} times is usual."),
                "Weigh again with all four wheels level, and check for a missing digit.");
        }

        foreach (var seat in car.Kind == VehicleKind.TwoWheeler ? car.Seats : [])
        {
            var left = root.At("seats", seat.Name)?.At("left");
            CarSlips.Warn(
                reader,
                left,
                Math.Abs(seat.LeftOfMiddle.Si) > MostBeside,
                $"is {left?.Text}; a rider sits in the middle of a two-wheeler.",
                "Leave the key out: the middle is meant without it.");
        }
    }

    private static double Weighed(Car car, int axle) => axle == 0 ? car.Weighing.Front : car.Weighing.Rear;

    private static double UnsprungShare(Car car, int axle) => car.Axles[axle].UnsprungMass.Si / Weighed(car, axle);

    private static string UnsprungWords(Car car, int axle) =>
        FormattableString.Invariant($"is {In.Percent.Of(UnsprungShare(car, axle)):0} % of what the axle weighs; up to 25 % is usual.");

    private static void CheckUnsprung(Car car, int axle, Node root, Reader reader) => CarSlips.Warn(
        reader, root.At(Ends[axle], "unsprung-mass"), UnsprungShare(car, axle) > MostUnsprung, UnsprungWords(car, axle), UnsprungAdvice);

    private static void CheckFriction(RideModel model, int axle, Node root, Reader reader)
    {
        const double MostPerLoad = 0.25;
        var load = Weighed(model.Car, axle) * Gravity.Standard * (model.Car.Kind == VehicleKind.TwoWheeler ? 1.0 : 0.5);
        var share = model.Car.Axles[axle].Friction.HalfWidth.Si / load;
        var node = root.At(Ends[axle], "friction", "half-width");
        CarSlips.Warn(
            reader,
            node,
            share > MostPerLoad,
            string.Create(CultureInfo.InvariantCulture, $"is {node?.Text}, {In.Percent.Of(share):0} % of the wheel's load; up to 25 % is usual."),
            "Half of the loop at one wheel counts. Likely slip: a digit too many, or the load instead of the friction.");
    }

    private static void CheckStops(int axle, Car car, Node root, Reader reader)
    {
        const double MostClearance = 0.25;
        foreach (var (key, stop) in new[] { ("bump-stop", car.Axles[axle].BumpStop), ("rebound-stop", car.Axles[axle].ReboundStop) })
        {
            foreach (var (part, value) in new[] { ("clearance", stop?.Clearance.Si), ("solid-after", stop?.SolidAfter?.Si) })
            {
                var node = root.At(Ends[axle], key, part);
                CarSlips.Warn(
                    reader,
                    node,
                    value > MostClearance,
                    $"is {node?.Text}; up to 250 mm is usual.",
                    "It is wheel travel from the state described. Likely slip: a digit too many, or centimetres counted twice.");
            }
        }
    }

    private static void CheckBar(RideModel model, int axle, Node root, Reader reader)
    {
        const double MostPerWheelRate = 3.0;
        var share = model.Car.Axles[axle].AntiRollBar.Si / model.Tangent.WheelRate[2 * axle];
        var bar = root.At(Ends[axle], "anti-roll-bar");
        CarSlips.Warn(
            reader,
            bar?.At("wheel-rate") ?? bar?.At("diameter"),
            share > MostPerWheelRate,
            string.Create(CultureInfo.InvariantCulture, $"makes the bar {share:0.0} times as stiff as the wheel rate; up to 3 times is usual."),
            "It counts at the wheel. Likely slip: the rate at the bar's end, the roll stiffness of the axle, or a digit too many.");
    }

    private static void CheckTyre(RideModel model, int axle, Node root, Reader reader)
    {
        const double MostDamping = 1000.0;
        const double SlowestHop = 6.0;
        const double FastestHop = 25.0;
        var tyre = root.At(Ends[axle], "tyre");
        CarSlips.Warn(
            reader,
            tyre?.At("damping"),
            model.Car.Axles[axle].Tyre.Damping.Si > MostDamping,
            $"is {tyre?.At("damping")?.Text}; a tyre has 50 to 200 N s/m, 1000 at most.",
            "Likely slip: the damper's figure, or a digit too many.");
        var ride = RideGuess.Of(model, axle);
        var hop = Math.Sqrt((ride.Tyre + ride.Rate) / (0.5 * model.Car.Axles[axle].UnsprungMass.Si)) / (2.0 * Math.PI);
        CarSlips.Warn(
            reader,
            tyre?.At("rate"),
            hop is < SlowestHop or > FastestHop,
            FormattableString.Invariant($"makes the {Ends[axle]} wheels hop at {hop:0.0} Hz; {SlowestHop} to {FastestHop} Hz is usual."),
            "Check the tyre's rate and the unsprung mass of the axle, and their units.");
    }
}
