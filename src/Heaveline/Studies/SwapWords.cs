using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Parts;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>What bought springs do to a car, in words: packing, heights, rake, lamp; then how to fit them and live.</summary>
internal static class SwapWords
{
    /// <summary>The id of the sentence on how to live with it.</summary>
    public const string Safe = "bought-springs-safety";

    // What a tape and a seat can tell.
    private const double Told = 0.5e-3;

    // A dipped beam that moves by so much is set anew: half of what the smallest step of a leveller makes; a choice of ours.
    private const double Beam = 0.5e-3;

    /// <summary>The sentences; none on springs that were weighed.</summary>
    /// <param name="models">One car under its loads, at least one.</param>
    public static IEnumerable<Sentence> Of(IReadOnlyList<RideModel> models)
    {
        var model = models[0];
        if (!model.Car.HasSwap())
        {
            return [];
        }

        return
        [
            .. SwapEffect.Of(model).Select(effect => new Sentence($"{CornerNames.Of(effect.End)}-bought-springs", Seats(model, effect))),
            .. models.Select(m => new Sentence($"bought-springs-{m.Load.Name.Replace(' ', '-')}", Stands(m))),
            .. model.Car.Axles.Index().Where(a => a.Item is { Spring.Swap: not null, Damper.Law: RatioDamper }).Select(a => new Sentence(
                $"{CornerNames.Of((AxleEnd)a.Index)}-damping-ratio",
                $"The {CornerNames.Of((AxleEnd)a.Index)} dampers are given by a damping ratio and follow the bought springs' rate, which real ones "
                + "do not: describe them by a table.")),
            new(Safe, Safety(model)),
        ];
    }

    /// <summary>What happens under bought springs where the frequencies are turned; null without any that stand by their lengths.</summary>
    /// <param name="car">The car.</param>
    public static Sentence? Turned(Car car) => car.Axles.Any(axle => axle.Spring.IsPlaced())
        ? new("heights-kept", "Frequencies are turned by rates with the empty car's heights kept: the packing under the bought springs follows. At "
            + "unchanged lengths, as a slider of the page or a variant turns it, a bought spring of another rate lifts or lowers the car as well: "
            + "its numbers are others.")
        : null;

    private static string Seats(RideModel model, SwapEffect effect)
    {
        var end = CornerNames.Of(effect.End);
        var subject = FirstLetter.Raised(CoilWords.Spring(model, effect.End, "bought"));
        if (effect.KeepsHeight)
        {
            return $"Where {CoilWords.Spring(model, effect.End, "bought")} stands between its seats is not known: the height is kept, as if the "
                + $"seats were moved for it. {Kept(effect)}";
        }

        var weighed = $"for the {end} to stand as high as when the car was weighed";
        var packed = model.Car.Axles[(int)effect.End].Spring.Swap!.Seat.Si > 0.0;
        return effect.Packing switch
        {
            null => $"{subject} is given by a table that does not begin at 0 N: what packing it needs cannot be said.",
            > Told and { } more => Text($"{subject} needs {In.Millimetres.Of(more):F0} mm {(packed ? "more" : "of")} packing {weighed}."),
            < -Told and { } less => Text($"{subject} needs its seat {In.Millimetres.Of(-less):F0} mm lower {weighed}: only with adjustable seats."),
            _ => $"{subject} stands as high as the one that was weighed, within half a millimetre: it needs no more packing.",
        };
    }

    private static string Kept(SwapEffect effect) => effect switch
    {
        { SeatsNeeded: { } seats } =>
            Text($"That is right where the seats are {In.Millimetres.Of(seats):F0} mm apart as the car was weighed: further ")
            + "apart it needs as much packing, closer together the seat lower by as much, which only adjustable seats can be. "
            + "Measure them, or the spring that was weighed out of the car, and write installed-length or free-length under spring.",
        { FreeLengthNeeded: { } free } => Text($"That is right where it is {In.Millimetres.Of(free):F0} mm long without load: of a shorter one ")
            + "what is missing must be packed, of a longer one the seat be lower, which only adjustable seats can be. Measure it and write "
            + "free-length under bought-spring.",
        { LongerNeeded: { } longer } when Math.Abs(longer) > Told =>
            Text($"That is right where it is {In.Millimetres.Of(Math.Abs(longer)):F0} mm {(longer > 0.0 ? "longer" : "shorter")} without load than ")
            + "the one that was weighed; of equal length it needs "
            + (longer > 0.0
                ? Text($"{In.Millimetres.Of(longer):F0} mm of packing. ")
                : Text($"the seat {In.Millimetres.Of(-longer):F0} mm lower: only with adjustable seats. "))
            + "Measure both and write free-length.",
        { LongerNeeded: not null } =>
            "That is right where it is as long without load as the one that was weighed. Measure both and write free-length.",
        _ => "Begin the tables at 0 N, where the springs are free, and write free-length.",
    };

    private static string Stands(RideModel model)
    {
        RideModel before;
        try
        {
            before = RideModel.Of(model.Car.OnWeighedSprings(), model.Load);
        }
        catch (RefusedValueException refused)
        {
            return $"Under '{model.Load.Name}' the car could not stand on the springs that it was weighed on: {refused.Message}";
        }

        var (was, now) = (before.Trim, model.Trim);
        return $"Under '{model.Load.Name}', against the springs that were weighed: front {Height(now.FrontHeight - was.FrontHeight)}, "
            + $"rear {Height(now.RearHeight - was.RearHeight)}, {Nose(now.Pitch - was.Pitch)}"
            + (HeadlampAim.Of(model) is { } lamp && HeadlampAim.Of(before) is { } old ? Lamp(old.Drop, lamp.Drop) : ".")
            + Gas(model);
    }

    // Both heights above are with the gas of the dampers that are in now.
    private static string Gas(RideModel model) => GasLift.Of(model) is { } lift
        ? $" The dampers have other gas than those that were weighed, which alone stands it front {Height(lift.Front)}, rear {Height(lift.Rear)}."
        : "";

    private static string Height(double change) => Math.Round(In.Millimetres.Of(change), 1) switch
    {
        > 0.0 and var up => Text($"{up:F1} mm higher"),
        < 0.0 and var down => Text($"{-down:F1} mm lower"),
        _ => "as high",
    };

    private static string Nose(double change) => Math.Round(In.Degrees.Of(change), 2) switch
    {
        > 0.0 and var down => Text($"the nose {down:F2}° further down"),
        < 0.0 and var up => Text($"the nose {-up:F2}° further up"),
        _ => "the same rake",
    };

    private static string Lamp(double was, double now) =>
        Text($"; the dipped beam points {Aim(now)} the horizontal in place of {Aim(was)} it")
        + (Math.Abs(now - was) > Beam ? ": set it anew once the springs are in." : ".");

    private static string Aim(double drop) => Text($"{In.Percent.Of(Math.Abs(drop)):F2} % {(drop < 0.0 ? "above" : "below")}");

    private static string Safety(RideModel model)
    {
        string[] held =
        [
            .. from end in new[] { AxleEnd.Front, AxleEnd.Rear }
               where model.Car.Axles[(int)end].Spring.Swap is not null
               let energy = CoilStanding.Of(model, end)?.Energy
               where energy is not null
               select Text($"{CoilWords.Spring(model, end, "bought")} holds {energy:F0} N m"),
        ];
        return (held.Length == 0
                ? "A pressed spring holds enough work to kill. "
                : $"A pressed spring kills: as the car stands under '{model.Load.Name}', {string.Join(" and ", held)} of work. ")
            + "Swap springs with the proper compressor and out of its line, the car on stands on level ground with its wheels chocked.";
    }
}
