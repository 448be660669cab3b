using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Elements;

/// <summary>
/// The parts of a fluid interconnection: an accumulator at each displacer and the line of each side, or one common spring where it is wide open.
/// </summary>
internal static class FluidElement
{
    // A run must reckon with twice the rate of a gas volume in the reference state: a choice of ours.
    private const double Stiffening = 2.0;

    /// <summary>Accumulators at the four corners: pressures over the volume that is pushed into each.</summary>
    public static Element[] Accumulators(FluidLink fluid, double half) => [.. Enumerable.Range(0, 4).Select(i =>
    {
        var (unit, area) = i < 2 ? (fluid.Front, half * fluid.FrontArea.Si) : (fluid.Rear, half * fluid.RearArea.Si);
        var felt = new double[4];
        felt[i] = area * area;
        var (laws, most) = unit.GasVolume is { } volume
            ? Gas("gas accumulator", fluid.BasePressure.Si, half * volume.Si, unit.Exponent.Si)
            : ([new StraightLaw { Slope = 1.0 / (half * Constant(unit).Si), Constant = fluid.BasePressure.Si }], double.PositiveInfinity);
        return new Element
        {
            Name = "accumulator",
            Cause = StepCause.Interconnection,
            Corner = i,
            Sight = Sight.Volume(i, area, fluid.Line.State == LineState.Pipe),
            OnTravel = laws,
            Range = (double.NegativeInfinity, most),
            Felt = felt,
        };
    })];

    /// <summary>Wide open there is one pressure: one common spring per side, of constant compliance or of gas.</summary>
    /// <exception cref="RefusedValueException">Volumes that do not act as one.</exception>
    public static Element[] Open(FluidLink fluid, double half)
    {
        var (front, rear) = (half * fluid.FrontArea.Si, half * fluid.RearArea.Si);
        if (fluid.Front.GasVolume is { } frontGas && fluid.Rear.GasVolume is { } rearGas)
        {
            if (fluid.Front.Exponent.Si != fluid.Rear.Exponent.Si)
            {
                throw new RefusedValueException(
                    "gas exponents",
                    $"{fluid.Front.Exponent.Si:G4} and {fluid.Rear.Exponent.Si:G4}",
                    "equal for an open line",
                    "Gas volumes at one pressure act as one volume: give both the same exponent.");
            }

            var (laws, most) = Gas("gas of the open line", fluid.BasePressure.Si, half * (frontGas.Si + rearGas.Si), fluid.Front.Exponent.Si);
            return ElasticElement.Spring(front, rear, laws, most);
        }

        if (fluid.Front.GasVolume is not null || fluid.Rear.GasVolume is not null)
        {
            throw new RefusedValueException(
                "accumulators",
                "one of gas and one of constant compliance",
                "of one kind for an open line",
                "Give both as gas volumes or both as compliances.");
        }

        var slope = 1.0 / (half * (Constant(fluid.Front).Si + Constant(fluid.Rear).Si));
        return ElasticElement.Spring(front, rear, [new StraightLaw { Slope = slope, Constant = fluid.BasePressure.Si }]);
    }

    /// <summary>Each side's line: half a two-wheeler's carries half the flow at the same pressures, so twice the inertance and resistance.</summary>
    /// <param name="line">The line as described.</param>
    /// <param name="half">1, or 0.5 for each half of a two-wheeler.</param>
    /// <param name="accumulators">What stands at its ends.</param>
    /// <exception cref="RefusedValueException">So little resistance without inertance that it is a line wide open.</exception>
    public static SideLine Line(FluidLine line, double half, IReadOnlyList<Element> accumulators)
    {
        // The flow settles with the time constant R/(1/C_f + 1/C_r). Below a tenth of a millisecond, far faster than a wheel hops, it is a line wide
        // open, and the run would need endless steps.
        const double Fastest = 1e-4;
        var side = new SideLine(line.Inertance.Si / half, line.Resistance.Si / half);
        if (side.Resists)
        {
            var stiffness = accumulators[0].AtRest(0.0).Rate + accumulators[2].AtRest(0.0).Rate;
            if (!(side.Resistance >= Fastest * stiffness))
            {
                throw new RefusedValueException(
                    "line resistance",
                    line.Resistance.ToString(),
                    FormattableString.Invariant($"at least {Fastest * stiffness * half:G3} Pa s/m³ for a line without inertance"),
                    "So little resistance is a line wide open: write state: open, or give bore, length and fluid.");
            }
        }

        return side;
    }

    /// <summary>What resists the flow of each side.</summary>
    public static Element[] Resistances(SideLine line) => [.. Enumerable.Range(0, 2).Select(side => new Element
    {
        Name = "line",
        Cause = StepCause.Interconnection,
        Corner = side,
        Sight = Sight.Flow(side),
        OnRate = [new StraightLaw { Slope = line.Resistance }],
        Felt = new double[4],
    })];

    // Gauge pressure of a gas volume.
    private static (Law[] Laws, double Most) Gas(string what, double pressure, double volume, double exponent)
    {
        var absolute = pressure + GasSpring.Atmosphere;
        var gas = new GasLaw(what, Stiffening) { Reference = absolute, PerVolume = 1.0 / volume, Exponent = exponent };
        return ([new StraightLaw { Constant = pressure - absolute }, gas], gas.Most);
    }

    private static Amount<Compliance> Constant(Accumulator unit) =>
        unit.Compliance ?? throw new RefusedValueException("accumulator", "without compliance and gas volume", "one of the two", "Give either.");
}
