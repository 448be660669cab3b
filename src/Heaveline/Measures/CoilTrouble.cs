using Heaveline.Quantities;
using static Heaveline.Quantities.InvariantText;

namespace Heaveline.Measures;

/// <summary>What is wrong with the lengths of an axle's coil springs.</summary>
/// <param name="Where">Where it goes wrong, without its subject and its full stop.</param>
/// <param name="Advice">What to do about it.</param>
public sealed record CoilTrouble(string Where, string Advice)
{
    // Shown travels are whole millimetres: a strap is set on the short side.
    private const double Step = 1e-3;

    /// <summary>Coils that touch before the bump stop is solid; null where they do not, or it is not known.</summary>
    public static CoilTrouble? Block(CoilStanding coil)
    {
        ArgumentNullException.ThrowIfNull(coil);
        const string Shorter = "The travel ends there, metal to metal: take a spring of a shorter block length";
        return (coil.Block, coil.BlockPastFullBump) switch
        {
            (null, _) => null,
            (_, null) => new(", and no bump stop is described before it", $"{Shorter}, or describe the stop that ends the travel sooner."),
            (_, { } past) when coil.EndsSolid && past <= 0.0 => new(
                Text($", {In.Millimetres.Of(-past):F0} mm before the bump stop is solid"), $"{Shorter}, or a stop that is solid sooner."),
            (_, not null) when coil.EndsSolid => null,
            (_, { } past) when past > 0.0 => new(
                Text($", {In.Millimetres.Of(past):F0} mm past the touch of the bump stop, of which no hard end is described"),
                $"{Shorter}, or measure where the stop is solid (solid-after)."),
            (_, { } past) => new(
                Text($", {In.Millimetres.Of(-past):F0} mm before the bump stop even touches"), $"{Shorter}, or a stop that touches sooner."),
        };
    }

    /// <summary>Springs that are loose where the wheels hang, the car on stands; null where they are not, or it is not known.</summary>
    public static CoilTrouble? Loose(CoilStanding coil)
    {
        ArgumentNullException.ThrowIfNull(coil);
        if (!coil.ComesLoose || coil is not { Loose: { } loose, Hanging: { } hanging })
        {
            return null;
        }

        var strap = Math.Ceiling((loose - hanging) / Step) * Step;
        return new(
            Text($"is {In.Millimetres.Of(coil.LooseBy):F1} mm shorter than the way between its seats with the car standing on stands, ")
            + Text($"its wheel hanging {In.Millimetres.Of(-hanging):F0} mm below the state weighed: it falls out of its seat"),
            Text($"It needs a helper spring, or a strap that ends the droop at least {In.Millimetres.Of(strap):F0} mm sooner at the wheel; ")
            + "do not drive on it without one.");
    }
}
