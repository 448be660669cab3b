using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for one spring.</summary>
internal static class SpringWords
{
    /// <summary>The ratio to the wheel.</summary>
    public static readonly MotionWords Motion = new("spring");

    /// <summary>Rate at the spring.</summary>
    public static readonly Key<Amount<Stiffness>> Rate = Key.Optional(
        "rate", "Rate of one spring, measured at the spring itself. Needs its motion ratio.", Kind.Amount<Stiffness>(), "24.5 N/mm ± 5 %")
        .Usually("1 N/mm", "1000 N/mm");

    /// <summary>Rate at the wheel.</summary>
    public static readonly Key<Amount<Stiffness>> WheelRate = Key.Optional(
        "wheel-rate", "Rate of one spring as felt at its wheel. Takes no motion ratio.", Kind.Amount<Stiffness>(), "9.4 N/mm")
        .Usually("1 N/mm", "400 N/mm");

    /// <summary>Measured force against travel.</summary>
    public static readonly Key<ForceTable> Table = Key.Optional(
        "table",
        "Rows [compression, force] of one spring from any zero, for springs that stiffen. The load on it says where it stands.",
        new ForceTableKind<Length>(throughZero: false, ("-500 mm", "1000 mm"), ("0 N", "60000 N")),
        "[[0 mm, 0 N], [60 mm, 1500 N], [100 mm, 3100 N]]");

    /// <summary>Doubt of the table.</summary>
    public static readonly Key<Amount<Plain>> Doubt = TableDoubt.KeyFor("the table");

    /// <summary>Wire dimensions.</summary>
    public static readonly Key<CoilDimensions> Coil = Key.Optional(
        "coil", "A coil spring by its wire, instead of a rate.", SpringDimensionWords.Coil);

    /// <summary>Leaf dimensions.</summary>
    public static readonly Key<LeafDimensions> Leaf = Key.Optional(
        "leaf", "A leaf spring by its leaves, instead of a rate.", SpringDimensionWords.Leaf);

    /// <summary>Torsion bar dimensions.</summary>
    public static readonly Key<TorsionBarDimensions> TorsionBar = Key.Optional(
        "torsion-bar", "A torsion bar, its arm reaching to the wheel, instead of a rate. Takes no motion ratio.", SpringDimensionWords.TorsionBar);

    /// <summary>Gas spring.</summary>
    public static readonly Key<GasSpring> Gas = Key.Optional(
        "gas", "A gas spring. Its pressure follows from the load on it.", SpringDimensionWords.Gas);

    /// <summary>Name of the spring tester.</summary>
    public static readonly Key<string> Tester = Key.Optional(
        "tester",
        "Name of the tester that measured the rate or the table: what comes from one tester is off together.",
        Kind.Text(),
        "club spring press");

    /// <summary>The group.</summary>
    public static readonly Shape<Spring> Shape = new Shape(
        "spring",
        "One spring of the axle (a two-wheeler's fork counts as one), by its rate, a table or its dimensions, and how far it moves with the wheel.",
        [
            Rate, WheelRate, Table, Doubt, Coil, Leaf, TorsionBar, Gas, .. Motion.Keys, CoilLengths.Free, CoilLengths.Installed, CoilLengths.Block,
            CoilLengths.SeatDiameter, Tester,
        ])
        .WithOneOf(Rate, WheelRate, Table, Coil, Leaf, TorsionBar, Gas)
        .As(Make);

    private static readonly Key[] Lengths = [CoilLengths.Free, CoilLengths.Installed, CoilLengths.Block, CoilLengths.SeatDiameter];

    private static Spring? Make(Fields f)
    {
        var tester = f.Optional(Tester);
        if (!f.Has(Table) && TableDoubt.RefuseWithout(f, Doubt, $"{Rate.Name}: {Rate.Example}"))
        {
            return null;
        }

        if (RefuseLengths(f))
        {
            return null;
        }

        if (AtWheel(f, tester) is { } atWheel)
        {
            return Motion.RefuseBeside(f, f.Has(WheelRate) ? WheelRate.Name : TorsionBar.Name) ? null : new Spring { Law = atWheel };
        }

        var law = AtSpring(f, tester);
        if (CoilLengths.RefuseTable(f, CoilLengths.Free, law) || Motion.Read(f) is not { } ratio)
        {
            return null;
        }

        var spring = new Spring { Law = law, MotionRatio = ratio };
        return !Lengths.Any(f.Has) ? spring : spring with
        {
            SeatDiameter = f.OptionalValue(CoilLengths.SeatDiameter),
            FreeLength = f.OptionalValue(CoilLengths.Free),
            InstalledLength = f.OptionalValue(CoilLengths.Installed),
            BlockLength = f.OptionalValue(CoilLengths.Block),
        };
    }

    /// <summary>The law of a group that gives a table or a coil; null when it gives neither.</summary>
    /// <param name="f">The group.</param>
    /// <param name="tester">Name of the tester; null for none.</param>
    public static SpringLaw? TableOrCoil(Fields f, string? tester)
    {
        if (f.Optional(Table) is { } table)
        {
            return new TableSpring(table.Under(TableDoubt.Factor(f, Doubt, tester)));
        }

        return f.Optional(Coil) is not { } coil ? null : new LinearSpring
        {
            Rate = ProductDoubt.Of<Stiffness>(
                coil.Rate,
                (ProductDoubt.Part(coil.Wire), 4.0),
                (ProductDoubt.Part(coil.MeanDiameter), -3.0),
                (ProductDoubt.Part(coil.ActiveCoils), -1.0),
                (ProductDoubt.Part(coil.ShearModulus), 1.0)),
            Origin = "from the wire",
            Dimensions = coil,
        };
    }

    // Lengths are of a coil spring between two seats.
    private static bool RefuseLengths(Fields f)
    {
        var other = new Key[] { WheelRate, Leaf, TorsionBar, Gas }.FirstOrDefault(f.Has);
        if (other is not null && Lengths.FirstOrDefault(f.Has) is { } length)
        {
            f.Refuse(
                length,
                $"is given beside {other.Name}; it is of a coil spring that is described at itself.",
                $"Give {Rate.Name}, {Table.Name} or {Coil.Name}, and how far the spring moves with its wheel; or leave the length out.");
            return true;
        }

        const string advice = "Free out of the car, then installed between the seats, then pressed solid: each is shorter than the one before.";
        return CoilLengths.RefuseNotBelow(f, CoilLengths.Installed, CoilLengths.Free, advice)
            || CoilLengths.RefuseNotBelow(f, CoilLengths.Block, CoilLengths.Installed, advice)
            || CoilLengths.RefuseNotBelow(f, CoilLengths.Block, CoilLengths.Free, advice);
    }

    private static LinearSpring? AtWheel(Fields f, string? tester)
    {
        if (f.OptionalValue(WheelRate) is { } rate)
        {
            Checked.Positive(rate, "Give the rate of one spring at its wheel as a positive number.", nameof(WheelRate));
            return new LinearSpring { Rate = ProductDoubt.Under(rate, tester), Origin = LinearSpring.AtWheel };
        }

        return f.Optional(TorsionBar) is not { } bar ? null : new LinearSpring
        {
            Rate = ProductDoubt.Of<Stiffness>(
                bar.Rate,
                (ProductDoubt.Part(bar.Diameter), 4.0),
                (ProductDoubt.Part(bar.Length), -1.0),
                (ProductDoubt.Part(bar.Arm), -2.0),
                (ProductDoubt.Part(bar.ShearModulus), 1.0)),
            Origin = "from the torsion bar",
            Dimensions = bar,
        };
    }

    private static SpringLaw AtSpring(Fields f, string? tester)
    {
        if (TableOrCoil(f, tester) is { } coil)
        {
            return coil;
        }

        if (f.Optional(Gas) is { } gas)
        {
            return gas;
        }

        return f.Optional(Leaf) is { } leaf
            ? new LinearSpring
            {
                Rate = ProductDoubt.Of<Stiffness>(
                    leaf.Rate,
                    (ProductDoubt.Part(leaf.Thickness), 3.0),
                    (ProductDoubt.Part(leaf.Span), -3.0),
                    (ProductDoubt.Part(leaf.Width), 1.0),
                    (ProductDoubt.Part(leaf.Modulus), 1.0)),
                Origin = "from the leaves",
                Dimensions = leaf,
            }
            : new LinearSpring { Rate = ProductDoubt.Under(f.Required(Rate), tester), Origin = "as measured at the spring" };
    }
}
