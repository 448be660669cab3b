using Heaveline.Answers;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Studies;

/// <summary>Coil springs of known lengths in words: until their coils touch, until they come loose.</summary>
internal static class CoilWords
{
    /// <summary>What there is to say of both axles.</summary>
    /// <param name="model">The car under any load: travels count from the reference state.</param>
    /// <param name="troubleOnly">Whether only what is wrong is said.</param>
    public static IEnumerable<Sentence> Of(RideModel model, bool troubleOnly) =>
        from end in new[] { AxleEnd.Front, AxleEnd.Rear }
        let coil = CoilStanding.Of(model, end)
        where coil is not null
        from sentence in new[] { Block(coil, model, troubleOnly), Droop(coil, model, troubleOnly) }
        where sentence is not null
        select sentence;

    /// <summary>Springs that come loose from their seats in a pass.</summary>
    public static IEnumerable<Sentence> Loose(Pass pass) =>
        from end in new[] { AxleEnd.Front, AxleEnd.Rear }
        where CoilStanding.Of(pass.Model, end) is { Loose: not null }
        let first = 2 * (int)end
        let deepest = Enumerable.Range(first, pass.Model.Rolls ? 2 : 1).Max(i => LooseBy(pass, i))
        where deepest > 0.0
        select new Sentence(
            $"{CornerNames.Of(end)}-loose-spring",
            Text($"In rebound a {CornerNames.Of(end)} spring comes loose: the wheel hangs up to {In.Millimetres.Of(deepest):F1} mm further than the ")
            + "spring reaches. It pushes no more there and may not find its seat again: it needs a helper spring, or a strap that ends the droop "
            + "sooner.");

    private static double LooseBy(Pass pass, int corner)
    {
        var spring = pass.Model.Numbers.Elements.Springs[corner];
        var (share, at) = (spring.Sight.Wheels[corner], spring.Touch!.Value);
        return pass.Travel(corner).Zip(pass.Travel(corner ^ 1)).Max(t => at - (share * t.First) - ((1.0 - share) * t.Second));
    }

    /// <summary>The spring of an axle as the subject of a sentence: of two a car says each.</summary>
    public static string Spring(RideModel model, AxleEnd end, string which = "") =>
        $"{(model.Rolls ? "each" : "the")} {which}{(which.Length > 0 ? " " : "")}{CornerNames.Of(end)} spring";

    private static Sentence? Block(CoilStanding coil, RideModel model, bool troubleOnly)
    {
        var trouble = CoilTrouble.Block(coil);
        if (coil.Block is not { } at || (troubleOnly && trouble is null))
        {
            return null;
        }

        var travel = Text($"The coils of {Spring(model, coil.End)} touch at {Millimetres(at)} mm of bump travel from the state weighed");
        return new($"{CornerNames.Of(coil.End)}-coils", trouble is { } words
            ? $"{travel}{words.Where}. {words.Advice}"
            : $"{travel}, {Millimetres(coil.BlockPastFullBump!.Value)} mm after the bump stop is solid.");
    }

    private static Sentence? Droop(CoilStanding coil, RideModel model, bool troubleOnly)
    {
        var id = $"{CornerNames.Of(coil.End)}-droop";
        if (CoilTrouble.Loose(coil) is { } words)
        {
            return new(id, $"{FirstLetter.Raised(Spring(model, coil.End))} {words.Where}. {words.Advice}");
        }

        return troubleOnly ? null : coil.DroopForce is { } force
            ? new(id, Text($"With the car standing on stands, the {CornerNames.Of(coil.End)} {(model.Rolls ? "wheels" : "wheel")} hanging ")
                + Text($"{Millimetres(-coil.Hanging!.Value)} mm below the state weighed, {Spring(model, coil.End)} is still pressed into its ")
                + Text($"seats with {force:F0} N{Further(coil)}."))
            : new(id, $"How far the {CornerNames.Of(coil.End)} wheel hangs on stands is not described: give rebound-stop, and it is told whether "
                + $"{Spring(model, coil.End)} stays in its seats.");
    }

    // What stands on stands says nothing of the road: the rebound after a bump stretches a soft stop further.
    private static string Further(CoilStanding coil) => coil switch
    {
        { Loose: { } loose, HardDroop: { } end } when loose <= end => ", and the hard end of the rebound stop keeps it pressed",
        { Loose: { } loose, Hanging: { } hanging } =>
            Text($"; it comes loose {In.Millimetres.Of(hanging - loose):F1} mm further down at the wheel, and a bump can take the wheel ")
            + "further than it hangs",
        _ => "; a bump can take the wheel further than it hangs",
    };

    private static string Millimetres(double length) => Numeral.Of(In.Millimetres.Of(length), "F0");
}
