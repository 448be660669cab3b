using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for springs that are given by their dimensions.</summary>
internal static class SpringDimensionWords
{
    private static readonly Key<Amount<Length>> Wire = Key.Required("wire", "Diameter of the bare wire.", Kind.Amount<Length>(), "12.4 mm ± 0.1 mm")
        .Usually("2 mm", "40 mm");
    private static readonly Key<Amount<Length>> MeanDiameter = Key.Required(
        "mean-diameter", "Outer diameter of the coil less one wire.", Kind.Amount<Length>(), "118 mm ± 0.5 mm")
        .Usually("20 mm", "300 mm");
    private static readonly Key<Amount<Plain>> ActiveCoils = Key.Required(
        "active-coils", "Number of coils that move: all coils less about two for closed ends.", Kind.Amount<Plain>(), "5.5 ± 0.2")
        .Usually("1.5", "30");
    private static readonly Key<Amount<Pressure>> ShearModulus = Key.Optional(
        "shear-modulus", "Shear modulus; 79.3 GPa (spring steel) when left out.", Kind.Amount<Pressure>(), "79.3 GPa")
        .Usually("60 GPa", "90 GPa");

    private static readonly Key<Amount<Length>> Span = Key.Required("span", "Eye to eye, loaded flat.", Kind.Amount<Length>(), "1.22 m")
        .Usually("0.3 m", "2.5 m");
    private static readonly Key<Amount<Length>> Width = Key.Required("width", "Width of one leaf.", Kind.Amount<Length>(), "60 mm")
        .Usually("20 mm", "150 mm");
    private static readonly Key<Amount<Length>> Thickness = Key.Required(
        "thickness", "Thickness of one leaf.", Kind.Amount<Length>(), "7 mm ± 0.1 mm")
        .Usually("2 mm", "40 mm");
    private static readonly Key<int> Graduated = Key.Required(
        "graduated-leaves", "How many leaves are shorter than the main leaf.", Kind.Count(0, 50), "4", property: "Graduated");
    private static readonly Key<int> FullLength = Key.Optional(
        "full-length-leaves", "How many leaves are as long as the span; 1 when left out.", Kind.Count(0, 20), "1", property: "FullLength");
    private static readonly Key<Amount<Pressure>> Modulus = Key.Optional(
        "youngs-modulus", "Young's modulus; 207 GPa (spring steel) when left out.", Kind.Amount<Pressure>(), "207 GPa", property: "Modulus")
        .Usually("150 GPa", "230 GPa");

    private static readonly Key<Amount<Length>> BarDiameter = Key.Required(
        "diameter", "Diameter of the working part of the bar.", Kind.Amount<Length>(), "24 mm ± 0.1 mm")
        .Usually("8 mm", "70 mm");
    private static readonly Key<Amount<Length>> BarLength = Key.Required(
        "length", "Length of the part that twists.", Kind.Amount<Length>(), "950 mm")
        .Usually("200 mm", "2500 mm");
    private static readonly Key<Amount<Length>> Arm = Key.Required(
        "arm", "Level distance from the bar's axis to the wheel's centre.", Kind.Amount<Length>(), "380 mm")
        .Usually("80 mm", "800 mm");

    private static readonly Key<Amount<Area>> Area = Key.Required("area", "Effective area of the piston or bellows.", Kind.Amount<Area>(), "60 cm²")
        .Usually("5 cm²", "500 cm²");
    private static readonly Key<Amount<Volume>> Volume = Key.Required("volume", "Gas volume in the state described.", Kind.Amount<Volume>(), "1.8 L")
        .Usually("0.05 L", "40 L");
    private static readonly Key<Amount<Plain>> Exponent = Key.Optional(
        "exponent", "Exponent of the gas law: 1.0 for slow, about 1.38 (taken when left out) for fast motion.", Kind.Amount<Plain>(), "1.38")
        .Usually("1", "1.67");

    /// <summary>A coil by its wire.</summary>
    public static readonly Shape<CoilDimensions> Coil =
        new Shape("coil", "A coil spring by its wire: rate G·d⁴/(8·n·D³).", Wire, MeanDiameter, ActiveCoils, ShearModulus).As(MakeCoil);

    /// <summary>A leaf spring by its leaves.</summary>
    public static readonly Shape<LeafDimensions> Leaf = new Shape(
        "leaf", "A semi-elliptic leaf spring, the axle at its middle.", Span, Width, Thickness, Graduated, FullLength, Modulus).As(MakeLeaf);

    /// <summary>A torsion bar.</summary>
    public static readonly Shape<TorsionBarDimensions> TorsionBar =
        new Shape("torsion bar", "A round torsion bar with a level arm to the wheel.", BarDiameter, BarLength, Arm, ShearModulus).As(MakeBar);

    /// <summary>A gas spring.</summary>
    public static readonly Shape<GasSpring> Gas = new Shape("gas spring", "Gas under a piston or bellows of constant area.", Area, Volume, Exponent)
        .As(f => new GasSpring
        {
            Area = f.Required(Area),
            Volume = f.Required(Volume),
            Exponent = f.Optional(Exponent, new Amount<Plain>(1.38)),
        });

    private static CoilDimensions? MakeCoil(Fields f)
    {
        var coil = new CoilDimensions { Wire = f.Required(Wire), MeanDiameter = f.Required(MeanDiameter), ActiveCoils = f.Required(ActiveCoils) };
        if (coil.Index <= 1.0)
        {
            f.Refuse(
                MeanDiameter,
                $"is {f.Node.At(MeanDiameter.Name)?.Text}; it must be above the wire's diameter.",
                "Take the outer diameter of the coil and subtract one wire.");
            return null;
        }

        return f.OptionalValue(ShearModulus) is { } modulus ? coil with { ShearModulus = modulus } : coil;
    }

    private static LeafDimensions? MakeLeaf(Fields f)
    {
        var leaf = new LeafDimensions
        {
            Span = f.Required(Span),
            Width = f.Required(Width),
            Thickness = f.Required(Thickness),
            Graduated = f.Required(Graduated),
            FullLength = f.OptionalValue(FullLength) ?? 1,
        };
        if (leaf.Graduated + leaf.FullLength == 0)
        {
            f.Refuse(Graduated, "is 0 and there is no full-length leaf; there must be at least one leaf.", "Count the leaves.");
            return null;
        }

        return f.OptionalValue(Modulus) is { } modulus ? leaf with { Modulus = modulus } : leaf;
    }

    private static TorsionBarDimensions MakeBar(Fields f)
    {
        var bar = new TorsionBarDimensions { Diameter = f.Required(BarDiameter), Length = f.Required(BarLength), Arm = f.Required(Arm) };
        return f.OptionalValue(ShearModulus) is { } modulus ? bar with { ShearModulus = modulus } : bar;
    }
}
