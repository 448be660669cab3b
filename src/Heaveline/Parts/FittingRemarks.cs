using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Parts;

/// <summary>What must be said of fitted parts: what was taken for granted, what nobody could check.</summary>
internal static class FittingRemarks
{
    /// <summary>Below this a change of height is none that a tape tells, m.</summary>
    private const double Told = 0.5e-3;

    public static IReadOnlyList<FittingRemark> Of(Fitted fitted)
    {
        var packers = fitted.Packers;
        return
        [
            .. from part in fitted.Parts
               from said in part.Place.Sort() switch
               {
                   PartSort.Spring => Spring(fitted, part, packers),
                   PartSort.Damper => Damper(fitted, part),
                   PartSort.Stop => Stop(fitted, part),
                   PartSort.Tyre => Tyre(fitted, part),
                   _ => [],
               }
               select new FittingRemark(part.Place, said.Id, said.Text),
        ];
    }

    private static IEnumerable<(string Id, string Text)> Spring(Fitted fitted, FittedPart part, IReadOnlyList<Packer> packers)
    {
        var (end, name) = (part.Place.End()!.Value, part.Option.Name);
        var (fit, axle) = (new AxleFit(fitted.Car, end), fitted.Car.Axles[(int)end]);
        var (touch, full, solid, stress) = (fit.CoilsTouch, fit.FullBump, fit.EndsSolid, fit.Stress);
        if (packers.FirstOrDefault(p => p.Place == part.Place) is { } packer)
        {
            yield return ("packing", packer.Words);
        }

        if (touch is not { } at)
        {
            yield return ("coils", $"{name}: nobody can say whether its coils touch before the bump stop is solid: free length, block length or the "
                + "seats are not known. See to it with the stop taken out.");
        }
        else if (full is null)
        {
            yield return ("coils", Text($"{name}: its coils touch at {In.Millimetres.Of(at):F0} mm of bump travel from the state weighed, and no ")
                + "bump stop is described before it.");
        }
        else if (!solid)
        {
            yield return ("coils", Text($"{name}: its coils touch at {In.Millimetres.Of(at):F0} mm of bump travel from the state weighed, ")
                + Text($"{In.Millimetres.Of(at - full.Value):F0} mm past the touch of the bump stop, of which no hard end is described."));
        }

        if (axle.ReboundStop is null)
        {
            yield return ("droop", $"{name}: nobody can say whether it stays in its seats at full droop: no {Word(end)} rebound stop is described.");
        }

        if (stress is { } pascal && part.Option.Part is CoilPart { AllowedStress: null })
        {
            yield return ("stress", Text($"{name}: its wire has {In.Megapascals.Of(pascal):F0} MPa of shear at full bump; what its maker ")
                + "allows is not in the list.");
        }

        if (axle.Damper.Law is RatioDamper)
        {
            yield return ("damping-ratio", $"The {Word(end)} dampers are described by a damping ratio and follow the new springs' rate, which real "
                + "ones do not: describe them by a table.");
        }
    }

    private static IEnumerable<(string Id, string Text)> Damper(Fitted fitted, FittedPart part)
    {
        var (end, name, damper) = (part.Place.End()!.Value, part.Option.Name, (DamperPart)part.Option.Part);
        if (damper.GasForce is null && !part.IsThere)
        {
            yield return ("gas", $"{name}: its gas force is not known; it is taken for that of the dampers that are there. More gas lifts the car.");
        }

        if (part.IsThere)
        {
            yield break;
        }

        if (damper.GasForce is { Si: > 0.0 and var gas }
            && fitted.Before.Axles[(int)end].Damper is { WeighedGasForce: null, GasForce.Si: 0.0 }
            && GasLift.Of(RideModel.Of(fitted.Car)) is { } lift)
        {
            var up = In.Millimetres.Of(end == AxleEnd.Front ? lift.Front : lift.Rear);
            yield return ("gas", Text($"{name}: the car's file gives the {Word(end)} dampers that are there no gas force, so that all ")
                + Text($"{gas:F0} N of its gas count as new: they lift the {Word(end)} by {up:F1} mm as weighed. ")
                + "If those have gas, write their gas-force: then the difference alone lifts it.");
        }

        var needed = new AxleFit(fitted.Car, end).DamperTravel;
        yield return (damper.Stroke, needed) switch
        {
            (null, { } travel) => ("stroke", Text($"{name}: its stroke is not known; from full droop to full bump it must move ")
                + Text($"{Math.Ceiling(In.Millimetres.Of(travel)):F0} mm.")),
            (_, null) => ("stroke", $"{name}: nobody can say whether its stroke suffices: the {Word(end)} stops are not described."),
            _ => ("stroke", $"{name}: its stroke suffices; compare open and closed length too, so that no damper becomes the stop."),
        };
    }

    private static IEnumerable<(string Id, string Text)> Stop(Fitted fitted, FittedPart part)
    {
        var (end, name, stop) = (part.Place.End()!.Value, part.Option.Name, (StopPart)part.Option.Part);
        var clearance = In.Millimetres.Of(fitted.Car.Axles[(int)end].BumpStop!.Clearance.Si);
        if (fitted.Before.Axles[(int)end].BumpStop!.Length is null)
        {
            yield return ("length", Text($"{name}: the length of the stop that is there is not known; it touches at {clearance:F0} mm of wheel ")
                + Text($"travel where that one is {In.Millimetres.Of(stop.Length.Si):F0} mm long. Measure it and write length under bump-stop."));
        }

        if (part.Option.Cut is not null)
        {
            yield return ("cut", $"{name}: it is taken to be of one section, so that what is left gives way less by the same share; of a stop with a "
                + "soft tip the tip goes first, and what is left is harder. Press it once it is cut.");
        }

        if (stop.SolidAfter is null)
        {
            yield return ("solid", $"{name}: where it is solid is not known; see at full bump, with the springs out, that nothing touches.");
        }
    }

    private static IEnumerable<(string Id, string Text)> Tyre(Fitted fitted, FittedPart part)
    {
        var (end, name, tyre) = (part.Place.End()!.Value, part.Option.Name, (TyrePart)part.Option.Part);
        var before = fitted.Before.Axles[(int)end];
        var weighed = end == AxleEnd.Front ? fitted.Before.Weighing.Front : fitted.Before.Weighing.Rear;
        var wheels = fitted.Car.Kind == VehicleKind.TwoWheeler ? 1.0 : 2.0;
        var sinks = weighed / wheels * Gravity * ((1.0 / tyre.Tyre.Rate.Si) - (1.0 / before.Tyre.Rate.Si));
        if (tyre.RadiusChange is { } radius)
        {
            var up = radius.Si - sinks;
            yield return ("radius", Text($"{name}: {Size(radius.Si)} in radius and pressed {Way(sinks)} by what it carries, it stands ")
                + (Math.Abs(up) < Told ? "as high as" : Text($"{In.Millimetres.Of(Math.Abs(up)):F0} mm {(up > 0.0 ? "higher" : "lower")} than"))
                + " the tyre that is there; no height told here holds that. Gearing and speedometer follow its rolling circumference.");
        }
        else
        {
            yield return ("radius", $"{name}: how its radius differs is not known: heights, gearing and speedometer are taken to stay.");
        }

        yield return ("tyre", $"{name}: check its load index, and its clearance through the travel and at full lock.");
    }

    private const double Gravity = Elements.Gravity.Standard;

    private static string Size(double radius) => Math.Abs(radius) < Told ? "as large" : Text(
        $"{In.Millimetres.Of(Math.Abs(radius)):F0} mm {(radius > 0.0 ? "larger" : "smaller")}");

    private static string Way(double sinks) => Math.Abs(sinks) < Told ? "as far" : Text(
        $"{In.Millimetres.Of(Math.Abs(sinks)):F0} mm {(sinks > 0.0 ? "further" : "less far")}");

    private static string Word(AxleEnd end) => end == AxleEnd.Front ? "front" : "rear";
}
