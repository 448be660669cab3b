using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Files.Parts;

/// <summary>The words for a damper that can be bought.</summary>
internal static class DamperPartWords
{
    /// <summary>Number of a click.</summary>
    public static readonly Key<int> Click = Key.Required(
        "click", "The click, counted as the maker counts.", Kind.Count(0, 200), "2", property: "Number");

    private static readonly Shape<DamperClick> ClickShape = new Shape(
        "click of a damper", "The forces at one click, as a rig measured them.", [Click, DamperWords.Bump, DamperWords.Rebound])
        .As(f => Sides(f) is { } law ? new DamperClick(f.Required(Click), law) : null);

    /// <summary>The clicks.</summary>
    public static readonly Key<IReadOnlyList<DamperClick>> Clicks = Key.Optional(
        "clicks",
        "The clicks that were measured, rising: between them the force at each velocity lies on a straight line, beyond them nothing is known.",
        Kind.List(ClickShape, 2),
        "[{click: 2, bump: [[0.1 m/s, 120 N]], rebound: [[0.1 m/s, 250 N]]}, {click: 10, bump: [[0.1 m/s, 190 N]], rebound: [[0.1 m/s, 420 N]]}]");

    private static readonly Key<Amount<Force>> GasForce = Key.Optional(
        "gas-force",
        "Force of its gas charge on the rod; that of the dampers that are there when left out, and those have none where their file gives none.",
        Kind.Amount<Force>(),
        "110 N")
        .Usually("0 N", "2000 N");

    private static readonly Key<Amount<Length>> Stroke = Key.Optional(
        "stroke", "Travel of the rod from open to closed.", Kind.Amount<Length>(), "190 mm")
        .Usually("20 mm", "500 mm");

    /// <summary>The group.</summary>
    public static readonly Shape<DamperPart> Shape = new Shape(
        "damper to buy",
        "A damper, by its rig sheet, or by a sheet for each click that was measured.",
        [.. PartWords.All, DamperWords.Bump, DamperWords.Rebound, Clicks, DamperWords.Doubt, GasForce, Stroke])
        .WithOneOf(DamperWords.Bump, Clicks)
        .As(Make);

    private static DamperPart? Make(Fields f)
    {
        IReadOnlyList<DamperClick>? clicks;
        if (f.Optional(Clicks) is { } given)
        {
            if (f.Has(DamperWords.Rebound))
            {
                f.Refuse(DamperWords.Rebound, "is given beside clicks, which hold both sides.", "Write it under its click.");
                return null;
            }

            for (var i = 1; i < given.Count; i++)
            {
                if (given[i].Number <= given[i - 1].Number)
                {
                    f.Refuse(
                        Clicks,
                        FormattableString.Invariant($"has click {given[i].Number} after click {given[i - 1].Number}; they must rise."),
                        "Sort the sheets by their click, each once.");
                    return null;
                }
            }

            clicks = given;
        }
        else
        {
            clicks = Sides(f) is { } law ? [new DamperClick(0, law)] : null;
        }

        if (clicks is null)
        {
            return null;
        }

        var factor = TableDoubt.Factor(f, DamperWords.Doubt, rig: null);
        return PartWords.With(
            new DamperPart
            {
                Name = "damper",
                Clicks = [.. clicks.Select(click => click with { Law = click.Law.Under(factor) })],
                GasForce = f.OptionalValue(GasForce),
                Stroke = f.OptionalValue(Stroke),
            },
            f);
    }

    private static TableDamper? Sides(Fields f)
    {
        foreach (var (side, other) in new[] { (DamperWords.Bump, DamperWords.Rebound), (DamperWords.Rebound, DamperWords.Bump) })
        {
            if (!f.Has(side))
            {
                f.Refuse($"has {other.Name} but no {side.Name}.", $"Add {side.Name}: {side.Example}.");
                return null;
            }
        }

        return new TableDamper(f.Required(DamperWords.Bump), f.Required(DamperWords.Rebound));
    }
}
