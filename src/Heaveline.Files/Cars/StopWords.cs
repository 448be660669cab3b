using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for a bump or rebound stop.</summary>
internal static class StopWords
{
    /// <summary>Free travel.</summary>
    public static readonly Key<Amount<Length>> Clearance = Key.Required(
        "clearance",
        "Wheel travel from the state described until the stop touches; 0 mm when it touches already.",
        Kind.Amount<Length>(),
        "55 mm ± 5 mm")
        .Usually("0 mm", "250 mm");

    /// <summary>Rate.</summary>
    public static readonly Key<Amount<Stiffness>> Rate = Key.Optional(
        "rate", "Rate of the stop at the wheel; with an exponent: the mean rate over its first 10 mm.", Kind.Amount<Stiffness>(), "60 N/mm")
        .Usually("1 N/mm", "3000 N/mm");

    /// <summary>Exponent.</summary>
    public static readonly Key<Amount<Plain>> Exponent = Key.Optional(
        "exponent", "How the force grows with travel past the clearance: 1 (when left out) straight, 1.5 to 3 rubber.", Kind.Amount<Plain>(), "2")
        .Usually("1", "5");

    /// <summary>Table.</summary>
    public static readonly Key<ForceTable> Table = Key.Optional(
        "table",
        "Rows [travel past the clearance, force] at the wheel, instead of a rate; zero need not be written.",
        new ForceTableKind<Length>(throughZero: true, ("0 mm", "250 mm"), ("0 N", "100000 N")),
        "[[10 mm, 300 N], [25 mm, 1500 N]]");

    /// <summary>Doubt of the table.</summary>
    public static readonly Key<Amount<Plain>> Doubt = TableDoubt.KeyFor("the table");

    /// <summary>Hard end.</summary>
    public static readonly Key<Amount<Length>> SolidAfter = Key.Optional(
        "solid-after", "Travel past the clearance at which metal meets metal; no such end when left out.", Kind.Amount<Length>(), "35 mm")
        .Usually("1 mm", "250 mm");

    /// <summary>Length.</summary>
    public static readonly Key<Amount<Length>> Length = Key.Optional(
        "length", "Length of the stop itself without load, by which another one finds its clearance.", Kind.Amount<Length>(), "55 mm ± 1 mm")
        .Usually("10 mm", "200 mm");

    /// <summary>The group.</summary>
    public static readonly Shape<Stop> Shape = new Shape(
        "stop", "A bump or rebound stop, everything in wheel travel.", Clearance, Rate, Exponent, Table, Doubt, SolidAfter, Length)
        .WithOneOf(Rate, Table).As(Make);

    private static Stop? Make(Fields f)
    {
        if (f.Has(Table) && f.Has(Exponent))
        {
            f.Refuse(Exponent, "is given beside a table, which holds the shape.", "Leave it out.");
            return null;
        }

        var table = f.Optional(Table);
        if (table is null && TableDoubt.RefuseWithout(f, Doubt, $"{Rate.Name}: {Rate.Example} ± 10 %"))
        {
            return null;
        }

        return new Stop
        {
            Clearance = f.Required(Clearance),
            Rate = f.OptionalValue(Rate),
            Exponent = f.Optional(Exponent, new Amount<Plain>(1.0)),
            Table = table?.Under(TableDoubt.Factor(f, Doubt, rig: null)),
            SolidAfter = f.OptionalValue(SolidAfter),
            Length = f.OptionalValue(Length),
        };
    }
}
