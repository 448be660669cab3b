using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for the lengths of a coil spring, and what they must say about one another.</summary>
internal static class CoilLengths
{
    /// <summary>Length without load.</summary>
    public static readonly Key<Amount<Length>> Free = Key.Optional(
        "free-length", "Length of a coil spring out of the car, without any load.", Kind.Amount<Length>(), "382 mm ± 2 mm")
        .Usually("60 mm", "900 mm");

    /// <summary>Length in the car.</summary>
    public static readonly Key<Amount<Length>> Installed = Key.Optional(
        "installed-length",
        "Length of a coil spring between its seats, the car standing as it was weighed; mean of both sides.",
        Kind.Amount<Length>(),
        "226 mm ± 2 mm")
        .Usually("50 mm", "800 mm");

    /// <summary>Length when solid.</summary>
    public static readonly Key<Amount<Length>> Block = Key.Optional(
        "block-length", "Length at which all its coils touch: all coils, ends too, times the wire, for ground ends.", Kind.Amount<Length>(), "142 mm")
        .Usually("20 mm", "500 mm");

    /// <summary>Diameter at the ends.</summary>
    public static readonly Key<Amount<Length>> SeatDiameter = Key.Optional(
        "seat-diameter", "Inside diameter of a coil spring at its ends, as its seats take it.", Kind.Amount<Length>(), "120 mm")
        .Usually("30 mm", "250 mm");

    /// <summary>Refuses a free length whose table does not begin where the spring is free.</summary>
    /// <returns>Whether it was refused.</returns>
    public static bool RefuseTable(Fields f, Key key, SpringLaw law)
    {
        if (!f.Has(key) || law is not TableSpring { Table: var table } || (table.Force[0] == 0.0 && table.Force[1] > 0.0))
        {
            return false;
        }

        f.Refuse(
            key,
            "is given beside a table that does not begin where the spring is free: its first row must have 0 N, its second one more.",
            "Begin the table with the length at which the spring just takes load: [0 mm, 0 N].");
        return true;
    }

    /// <summary>Refuses a length that must be below another one of the same group and is not.</summary>
    /// <returns>Whether it was refused.</returns>
    public static bool RefuseNotBelow(Fields f, Key<Amount<Length>> shorter, Key<Amount<Length>> longer, string advice)
    {
        if (f.OptionalValue(shorter) is not { } less || f.OptionalValue(longer) is not { } more || less.Si < more.Si)
        {
            return false;
        }

        f.Refuse(shorter, $"is {f.Node.At(shorter.Name)?.Text}; it must be below {longer.Name}, {f.Node.At(longer.Name)?.Text}.", advice);
        return true;
    }
}
