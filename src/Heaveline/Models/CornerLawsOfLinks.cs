using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Models;

internal sealed partial class CornerLaws
{
    // Sets the interconnection and takes what it carries in the reference state off the loads that the corner springs must carry.
    private void SetInterconnection(Car car, double[] sprung)
    {
        switch (car.Interconnection)
        {
            case null:
                return;
            case ElasticLink link:
                if (link.Rate.Si == 0.0 && link.Damping.Si == 0.0)
                {
                    throw new RefusedValueException(
                        "interconnection", "without rate and damping", "a link with either", "Leave it out when nothing joins front and rear.");
                }

                Needs |= Needs.ElasticLink;
                LinkRate = PerHalf * link.Rate.Si;
                LinkDamping = PerHalf * link.Damping.Si;
                LinkCarried = PerHalf * link.Carried.Si;
                Spread(LinkRatio, link.FrontRatio.Si, link.RearRatio.Si);
                TakeOff(sprung, LinkRatio, LinkCarried);
                return;
            case FluidLink fluid:
                SetFluid(fluid);
                TakeOff(sprung, FluidArea, fluid.BasePressure.Si);
                return;
            default:
                throw new InvalidOperationException($"An interconnection {car.Interconnection.GetType().Name} has no place in the model.");
        }
    }

    private void SetFluid(FluidLink fluid)
    {
        Spread(FluidArea, PerHalf * fluid.FrontArea.Si, PerHalf * fluid.RearArea.Si);
        FluidPressure = fluid.BasePressure.Si;
        if (fluid.Line.State == LineState.Open)
        {
            SetOpenLine(fluid);
            return;
        }

        Needs |= Needs.FluidLink;
        FluidFlows = fluid.Line.State == LineState.Pipe;
        for (var i = 0; i < 4; i++)
        {
            SetAccumulator(i < 2 ? fluid.Front : fluid.Rear, i);
        }

        if (FluidFlows)
        {
            // Half a two-wheeler's line carries half the flow at the same pressures: twice the inertance and resistance.
            FluidInertance = fluid.Line.Inertance.Si / PerHalf;
            FluidResistance = fluid.Line.Resistance.Si / PerHalf;
            if (FluidInertance == 0.0)
            {
                SetResistiveLine(fluid.Line);
            }
        }
    }

    // The flow settles with the time constant R/(1/C_f + 1/C_r). Below a tenth of a millisecond, far faster than a wheel hops, it is a line wide
    // open, and the run would need endless steps.
    private void SetResistiveLine(FluidLine line)
    {
        const double Fastest = 1e-4;
        Needs |= Needs.ResistiveLine;
        var stiffness = new[] { 0, 2 }.Sum(i => FluidStiffness[i] + (FluidGasPressure[i] * FluidPerVolume[i] * FluidExponent[i]));
        if (!(FluidResistance >= Fastest * stiffness))
        {
            throw new RefusedValueException(
                "line resistance",
                line.Resistance.ToString(),
                FormattableString.Invariant($"at least {Fastest * stiffness * PerHalf:G3} Pa s/m³ for a line without inertance"),
                "So little resistance is a line wide open: write state: open, or give bore, length and fluid.");
        }
    }

    private void SetAccumulator(Accumulator unit, int i)
    {
        if (unit.GasVolume is { } volume)
        {
            Needs |= Needs.FluidGas;
            FluidGasPressure[i] = FluidPressure + GasSpring.Atmosphere;
            FluidPerVolume[i] = 1.0 / (PerHalf * volume.Si);
            FluidExponent[i] = unit.Exponent.Si;
        }
        else
        {
            FluidStiffness[i] = 1.0 / (PerHalf * Constant(unit).Si);
        }
    }

    // Wide open there is one pressure: one common spring per side, of constant compliance or of gas.
    private void SetOpenLine(FluidLink fluid)
    {
        Needs |= Needs.ElasticLink;
        FluidOpen = true;
        for (var i = 0; i < 4; i++)
        {
            LinkRatio[i] = FluidArea[i];
        }

        LinkCarried = FluidPressure;
        if (fluid.Front.GasVolume is { } front && fluid.Rear.GasVolume is { } rear)
        {
            if (fluid.Front.Exponent.Si != fluid.Rear.Exponent.Si)
            {
                throw new RefusedValueException(
                    "gas exponents",
                    $"{fluid.Front.Exponent.Si:G4} and {fluid.Rear.Exponent.Si:G4}",
                    "equal for an open line",
                    "Gas volumes at one pressure act as one volume: give both the same exponent.");
            }

            Needs |= Needs.FluidGas;
            LinkGasPressure = FluidPressure + GasSpring.Atmosphere;
            LinkPerVolume = 1.0 / (PerHalf * (front.Si + rear.Si));
            LinkExponent = fluid.Front.Exponent.Si;
        }
        else if (fluid.Front.GasVolume is null && fluid.Rear.GasVolume is null)
        {
            LinkRate = 1.0 / (PerHalf * (Constant(fluid.Front).Si + Constant(fluid.Rear).Si));
        }
        else
        {
            throw new RefusedValueException(
                "accumulators",
                "one of gas and one of constant compliance",
                "of one kind for an open line",
                "Give both as gas volumes or both as compliances.");
        }
    }

    private static Amount<Compliance> Constant(Accumulator unit) =>
        unit.Compliance ?? throw new RefusedValueException("accumulator", "without compliance and gas volume", "one of the two", "Give either.");

    private static void Spread(double[] corners, double front, double rear)
    {
        corners[0] = corners[1] = front;
        corners[2] = corners[3] = rear;
    }

    private static void TakeOff(double[] sprung, double[] ratio, double carried)
    {
        for (var i = 0; i < 4; i++)
        {
            sprung[i] -= ratio[i] * carried;
        }
    }
}
