using Heaveline.Cars;
using Heaveline.Files.Yaml;
using Heaveline.Quantities;

namespace Heaveline.Files.Cars;

/// <summary>The words for what joins front and rear.</summary>
internal static class InterconnectionWords
{
    /// <summary>Rate of the common spring.</summary>
    public static readonly Key<Amount<Stiffness>> Rate = Key.Required(
        "rate", "Rate of the common spring of one side; 0 N/mm when only a damper joins front and rear.", Kind.Amount<Stiffness>(), "12 N/mm")
        .Usually("0 N/mm", "400 N/mm");
    /// <summary>Damping.</summary>
    public static readonly Key<Amount<DampingRate>> Damping = Key.Optional(
        "damping",
        "Damping of a common damper of one side, force divided by the rate of travel of the common spring; none when left out.",
        Kind.Amount<DampingRate>(),
        "400 N s/m")
        .Usually("0 N s/m", "50000 N s/m");
    /// <summary>Travel of the common spring per front wheel travel.</summary>
    public static readonly Key<Amount<Plain>> FrontRatio = Key.Optional(
        "front-per-wheel",
        "Travel of the common spring divided by front wheel travel; 1 when left out.",
        Kind.Amount<Plain>(),
        "0.6")
        .Usually("-2", "2");
    /// <summary>The same at the rear.</summary>
    public static readonly Key<Amount<Plain>> RearRatio = Key.Optional(
        "rear-per-wheel",
        "Travel of the common spring divided by rear wheel travel, negative when the rear works against the front; 1 when left out.",
        Kind.Amount<Plain>(),
        "0.6")
        .Usually("-2", "2");
    private static readonly Key<Amount<Force>> Carried = Key.Optional(
        "carried-force",
        "Force in the common spring in the state described, pressing positive; none when left out.",
        Kind.Amount<Force>(),
        "900 N",
        property: "Carried")
        .Usually("-30000 N", "30000 N");

    private static readonly Key<Amount<Area>> FrontArea = Key.Required(
        "front-area",
        "Volume that the front unit displaces for each travel of its wheel: piston area times its motion ratio.",
        Kind.Amount<Area>(),
        "12 cm²")
        .Usually("0.5 cm²", "300 cm²");
    private static readonly Key<Amount<Area>> RearArea = Key.Required("rear-area", "The same at the rear.", Kind.Amount<Area>(), "12 cm²")
        .Usually("0.5 cm²", "300 cm²");
    private static readonly Key<Amount<Compliance>> Compliance = Key.Optional(
        "compliance", "Volume that the unit takes for each pressure, when it is constant.", Kind.Amount<Compliance>(), "4 cm³/bar")
        .Usually("0.01 cm³/bar", "200 cm³/bar");
    private static readonly Key<Amount<Volume>> GasVolume = Key.Optional(
        "gas-volume", "Gas volume in the state described.", Kind.Amount<Volume>(), "0.35 L")
        .Usually("0.01 L", "20 L");
    private static readonly Key<Amount<Plain>> Exponent = Key.Optional(
        "exponent", "Exponent of the gas law; 1.38 when left out.", Kind.Amount<Plain>(), "1.38")
        .Usually("1", "1.67");
    private static readonly Key<Amount<Pressure>> Pressure = Key.Required(
        "pressure", "Pressure in the state described, above the air's.", Kind.Amount<Pressure>(), "18 bar", property: "BasePressure")
        .Usually("0.5 bar", "300 bar");

    private static readonly Key<LineState> State = Key.Optional(
        "state",
        "Whether the line is a pipe (when left out), shut or wide open.",
        Kind.Choice(("pipe", LineState.Pipe), ("shut", LineState.Shut), ("open", LineState.Open)),
        "pipe");
    private static readonly Key<Amount<Length>> Bore = Key.Optional("bore", "Inner diameter of the pipe.", Kind.Amount<Length>(), "8 mm")
        .Usually("1 mm", "60 mm");
    private static readonly Key<Amount<Length>> PipeLength = Key.Optional("length", "Length of the pipe.", Kind.Amount<Length>(), "2.4 m")
        .Usually("0.2 m", "10 m");
    private static readonly Key<Amount<Density>> Density = Key.Optional(
        "density", "Density of the fluid; 1030 kg/m³ (water with glycol) when left out.", Kind.Amount<Density>(), "1030 kg/m³")
        .Usually("600 kg/m³", "1600 kg/m³");
    private static readonly Key<Amount<Viscosity>> Viscosity = Key.Optional(
        "viscosity", "Viscosity of the fluid; 2.5 mPa s (water with glycol) when left out.", Kind.Amount<Viscosity>(), "2.5 mPa s")
        .Usually("0.2 mPa s", "1000 mPa s");
    private static readonly Key<Amount<Inertance>> Inertance = Key.Optional(
        "inertance",
        "Instead of a bore: pressure difference for each acceleration of the flow; none when left out beside a resistance.",
        Kind.Amount<Inertance>(),
        "5e7 kg/m⁴")
        .Usually("1e4 kg/m⁴", "1e11 kg/m⁴");
    private static readonly Key<Amount<Resistance>> Resistance = Key.Optional(
        "resistance",
        "With inertance, or alone for a line that only resists: pressure difference for each flow.",
        Kind.Amount<Resistance>(),
        "2e8 Pa s/m³")
        .Usually("1e4 Pa s/m³", "1e13 Pa s/m³");

    private static readonly Shape<Accumulator> Accumulator = new Shape(
        "accumulator", "How the unit gives way: a constant compliance or a gas charge.", Compliance, GasVolume, Exponent)
        .WithOneOf(GasVolume, Compliance)
        .As(f => new Accumulator
        {
            Compliance = f.OptionalValue(Compliance),
            GasVolume = f.OptionalValue(GasVolume),
            Exponent = ProductDoubt.UnderOwn(f.Optional(Exponent, new Amount<Plain>(1.38)), "gas exponent"),
        });

    private static readonly Key<Accumulator> Front = Key.Required("front", "The front unit.", Accumulator);
    private static readonly Key<Accumulator> Rear = Key.Required("rear", "The rear unit.", Accumulator);
    private static readonly Shape<FluidLine> LineShape = new Shape(
        "line", "The line between the two units of one side.", State, Bore, PipeLength, Density, Viscosity, Inertance, Resistance).As(MakeLine);
    private static readonly Key<FluidLine> Line = Key.Required("line", "The line between them.", LineShape, "{bore: 8 mm, length: 2.4 m}");

    private static readonly Shape<ElasticLink> ElasticShape = new Shape(
        "elastic",
        "A common spring that front and rear wheel of one side press together, with a damper beside it.",
        Rate,
        Damping,
        FrontRatio,
        RearRatio,
        Carried)
        .As(MakeElastic);
    private static readonly Shape<FluidLink> FluidShape = new Shape(
        "fluid", "A displacer at each wheel of one side, joined by a line.", FrontArea, RearArea, Front, Rear, Pressure, Line)
        .As(f => new FluidLink
        {
            FrontArea = f.Required(FrontArea),
            RearArea = f.Required(RearArea),
            Front = f.Required(Front),
            Rear = f.Required(Rear),
            BasePressure = f.Required(Pressure),
            Line = f.Required(Line),
        });

    private static readonly Key<ElasticLink> Elastic = Key.Optional("elastic", "A common spring.", ElasticShape);
    private static readonly Key<FluidLink> Fluid = Key.Optional("fluid", "Fluid and a line.", FluidShape);

    /// <summary>The group.</summary>
    public static readonly Shape<Interconnection> Shape = new Shape(
        "interconnection", "What joins front and rear of each side, in addition to the springs.", Elastic, Fluid)
        .WithOneOf(Elastic, Fluid)
        .As(f => f.Optional(Elastic) ?? (Interconnection?)f.Optional(Fluid));

    private static ElasticLink? MakeElastic(Fields f) => MakeElastic(f, f.Optional(Carried, default));

    /// <summary>A common spring that carries a force in the state described.</summary>
    public static ElasticLink? MakeElastic(Fields f, Amount<Force> carried)
    {
        var one = new Amount<Plain>(1.0);
        foreach (var key in new[] { FrontRatio, RearRatio })
        {
            if (f.Optional(key, one) is { } ratio && !(Math.Abs(ratio.Si) is > 0.0 and <= 2.0))
            {
                f.Refuse(key, new ValueLimit("between -2 and 2 and not 0", -2.0, 2.0), "Leave the interconnection out when one end is not joined.");
                return null;
            }
        }

        var (rate, damping) = (f.Required(Rate), f.Optional(Damping, default));
        if (rate.Si == 0.0 && damping.Si == 0.0)
        {
            f.Refuse(Rate, "is 0 and there is no damping.", "Leave the interconnection out when nothing joins front and rear.");
            return null;
        }

        return new ElasticLink
        {
            Rate = rate,
            Damping = damping,
            FrontRatio = f.Optional(FrontRatio, one),
            RearRatio = f.Optional(RearRatio, one),
            Carried = carried,
        };
    }

    private static FluidLine? MakeLine(Fields f)
    {
        var state = f.Optional(State, LineState.Pipe);
        var sizes = new Key[] { Bore, PipeLength, Density, Viscosity, Inertance, Resistance };
        if (state != LineState.Pipe)
        {
            if (sizes.FirstOrDefault(f.Has) is { } size)
            {
                f.Refuse(size, "belongs to a pipe, and this line is shut or open.", "Write state: pipe, or leave it out.");
                return null;
            }

            return new FluidLine { State = state };
        }

        if (f.Has(Inertance) || f.Has(Resistance))
        {
            if (sizes.Take(4).FirstOrDefault(f.Has) is { } size)
            {
                f.Refuse(
                    size,
                    $"is given beside {(f.Has(Inertance) ? Inertance.Name : Resistance.Name)}.",
                    "Give bore and length, or inertance and resistance.");
                return null;
            }

            // A line without inertance is one that only resists; how little it may resist hangs on the units at its ends.
            return new FluidLine { Inertance = f.Optional(Inertance, default), Resistance = f.Optional(Resistance, default) };
        }

        if (f.OptionalValue(Bore) is not { } bore || f.OptionalValue(PipeLength) is not { } length)
        {
            f.Refuse("is a pipe without bore and length.", "Add bore: 8 mm and length: 2.4 m, or write state: open or state: shut.");
            return null;
        }

        return FluidLine.FromPipe(
            bore, length, f.Optional(Density, new Amount<Density>(1030.0)), f.Optional(Viscosity, new Amount<Viscosity>(2.5e-3)));
    }
}
