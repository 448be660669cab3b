using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Parts;
using Heaveline.Quantities;

namespace Heaveline.Files.Parts;

/// <summary>The words for a coil spring that can be bought.</summary>
internal static class CoilPartWords
{
    /// <summary>Rate.</summary>
    public static readonly Key<Amount<Stiffness>> Rate = Key.Optional(
        "rate",
        "Rate of one spring, at the spring itself. Beside coil it counts, and the wire tells the stress.",
        Kind.Amount<Stiffness>(),
        "20.7 N/mm ± 3 %")
        .Usually("1 N/mm", "1000 N/mm");

    /// <summary>Allowed stress.</summary>
    public static readonly Key<Amount<Pressure>> AllowedStress = Key.Optional(
        "allowed-stress", "Largest shear stress of the wire that its maker allows.", Kind.Amount<Pressure>(), "900 MPa")
        .Usually("300 MPa", "1600 MPa");

    /// <summary>The group.</summary>
    public static readonly Shape<CoilPart> Shape = new Shape(
        "spring to buy",
        "A coil spring out of a box, by its rate, a table or its wire.",
        [
            .. PartWords.All, Rate, SpringWords.Table, SpringWords.Doubt, SpringWords.Coil, CoilLengths.Free, CoilLengths.Block,
            CoilLengths.SeatDiameter, AllowedStress,
        ])
        .As(Make);

    /// <summary>The law of a rate and a wire: the rate counts, the wire tells the stress, and its doubts stand behind those of the rate.</summary>
    public static LinearSpring Law(Amount<Stiffness> rate, CoilDimensions? coil) => new()
    {
        Rate = rate,
        Origin = "as bought",
        Dimensions = coil is null ? null : coil with
        {
            Wire = coil.Wire.WithDoubt(0.0),
            MeanDiameter = coil.MeanDiameter.WithDoubt(0.0),
            ActiveCoils = coil.ActiveCoils.WithDoubt(0.0),
            ShearModulus = coil.ShearModulus.WithDoubt(0.0),
        },
    };

    private static CoilPart? Make(Fields f)
    {
        if (!f.Has(SpringWords.Table) && TableDoubt.RefuseWithout(f, SpringWords.Doubt, $"{Rate.Name}: {Rate.Example}"))
        {
            return null;
        }

        if (f.Has(SpringWords.Table) && new Key[] { Rate, SpringWords.Coil }.FirstOrDefault(f.Has) is { } beside)
        {
            f.Refuse(beside, "is given beside a table, which holds the rate.", "Keep the one that was measured.");
            return null;
        }

        if (!f.Has(Rate) && !f.Has(SpringWords.Table) && !f.Has(SpringWords.Coil))
        {
            f.Refuse("has no rate.", $"Add {Rate.Name}: {Rate.Example}, or a {SpringWords.Table.Name}, or the wire under {SpringWords.Coil.Name}.");
            return null;
        }

        SpringLaw law = f.OptionalValue(Rate) is { } rate
            ? Law(Checked.Positive(rate, "Give the rate of one spring as a positive number.", Rate.Property), f.Optional(SpringWords.Coil))
            : SpringWords.TableOrCoil(f, null)!;
        if (CoilLengths.RefuseTable(f, CoilLengths.Free, law)
            || CoilLengths.RefuseNotBelow(f, CoilLengths.Block, CoilLengths.Free, "Measure both out of the car, without load and pressed solid."))
        {
            return null;
        }

        return PartWords.With(
            new CoilPart
            {
                Name = "spring",
                Law = law,
                FreeLength = f.OptionalValue(CoilLengths.Free),
                BlockLength = f.OptionalValue(CoilLengths.Block),
                SeatDiameter = f.OptionalValue(CoilLengths.SeatDiameter),
                AllowedStress = f.OptionalValue(AllowedStress),
            },
            f);
    }
}
