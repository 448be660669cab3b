using Heaveline.Cars;
using Heaveline.Models;

namespace Heaveline.Passes;

/// <summary>
/// The longest step that a car allows. The fourth-order Adams–Bashforth formula is stable on the negative real axis down to λh = −0.3 (Hairer,
/// Wanner, Solving Ordinary Differential Equations II, V.1); twice the step must be stable too, for the error estimate.
/// </summary>
internal static class StepChoice
{
    private const double Real = 0.14;
    private const double Oscillating = 0.20;

    // No wheel with its hub weighs less, kg: below this it is the mass that is told, whatever acts on it.
    private const double Lightest = 1.0;

    // A wheel at this speed, m/s, passes no more than the pre-sliding travel in a step, so that friction turns round over several; and the step, s,
    // that is short enough for all. Our choice.
    private const double FrictionSpeed = 0.7;
    private const double ShortestForFriction = 1e-4;

    public static double Largest(RideModel model, double limit) => Of(model, limit).Step;

    public static StepLimit Of(RideModel model, double limit)
    {
        var n = model.Numbers;
        var laws = n.Laws;
        var longest = new StepLimit(limit, StepCause.None, AxleEnd.Front);
        for (var i = 0; i < 4; i++)
        {
            var perMass = n.PerWheel[i] + Math.Abs(n.AcrossAxle[i]) + (1.0 / n.Body.Mass);
            (StepCause Cause, double Value)[] dampers =
            [
                (StepCause.Damper, Steepest(laws.DamperSlope[i], laws.DamperHinges, i) * Square(laws.DamperRatio[0][i])),
                (StepCause.TyreDamping, n.TyreDamping[i]),
            ];
            (StepCause Cause, double Value)[] springs =
            [
                (StepCause.Spring, Steepest(laws.SpringSlope[i], laws.SpringHinges, i) * Square(laws.SpringRatio[0][i])),
                (StepCause.TyreRate, n.TyreRate[i]),
                (StepCause.AntiRollBar, 2.0 * laws.Bar[i]),
                (StepCause.BumpStop, Steepest(0.0, laws.BumpHinges, i)),
                (StepCause.ReboundStop, Steepest(0.0, laws.ReboundHinges, i)),
                (StepCause.BumpStop, Curved(laws.CurvedBump, i)),
                (StepCause.ReboundStop, Curved(laws.CurvedRebound, i)),
                (StepCause.Spring, Gas(laws, i)),
                (StepCause.Interconnection, Fluid(laws, i)),
                (StepCause.Friction, laws.Friction[i] / laws.PreSliding[i]),
            ];
            // A common damper works at four wheels at once, and the body gives way to all of them.
            var common = LinkDamping(laws, i) * (perMass + (3.0 / n.Body.Mass));
            var light = 1.0 / perMass < Lightest;
            var own = Sum(dampers) * perMass;
            Shorten(Real / Math.Max(own + common, 1e-9), common > own ? StepCause.Interconnection : Greatest(dampers), light, i);
            Shorten(Oscillating / Math.Sqrt(Sum(springs) * perMass), Greatest(springs), light, i);
            if (laws.Friction[i] > 0.0)
            {
                Shorten(Math.Max(laws.PreSliding[i] / FrictionSpeed, ShortestForFriction), StepCause.Friction, false, i);
            }
        }

        if (laws.FluidFlows)
        {
            var stiffness = FluidStiffness(laws, 0) + FluidStiffness(laws, 2);
            if (laws.FluidResists)
            {
                Shorten(Real * laws.FluidResistance / stiffness, StepCause.Interconnection, false, 0);
                return longest;
            }

            Shorten(Oscillating / Math.Sqrt(stiffness / laws.FluidInertance), StepCause.Interconnection, false, 0);
            if (laws.FluidResistance > 0.0)
            {
                Shorten(Real * laws.FluidInertance / laws.FluidResistance, StepCause.Interconnection, false, 0);
            }
        }

        return longest;

        void Shorten(double step, StepCause cause, bool light, int corner)
        {
            if (step < longest.Step)
            {
                longest = new StepLimit(step, light ? StepCause.UnsprungMass : cause, corner < 2 ? AxleEnd.Front : AxleEnd.Rear);
            }
        }
    }

    private static double Sum((StepCause Cause, double Value)[] parts)
    {
        var sum = parts[0].Value;
        for (var k = 1; k < parts.Length; k++)
        {
            sum += parts[k].Value;
        }

        return sum;
    }

    private static StepCause Greatest((StepCause Cause, double Value)[] parts) => parts.MaxBy(part => part.Value).Cause;

    // The steepest piece of a hinge sum.
    private static double Steepest(double first, Hinges hinges, int i)
    {
        var slope = first;
        var steepest = first;
        foreach (var j in Enumerable.Range(0, hinges.Count).OrderBy(j => hinges.At[j][i]))
        {
            slope += hinges.Bend[j][i];
            steepest = Math.Max(steepest, slope);
        }

        return steepest;
    }

    // Slope of a curved stop 50 mm past its clearance.
    private static double Curved(double[][] stop, int i) => stop[1][i] * stop[2][i] * Math.Pow(0.05, stop[2][i] - 1.0);

    private static double Gas(CornerLaws laws, int i) =>
        4.0 * laws.GasForce[i] * laws.GasAreaPerVolume[i] * laws.GasExponent[i] * Square(laws.SpringRatio[0][i]);

    private static double FluidStiffness(CornerLaws laws, int i) =>
        laws.FluidStiffness[i] + (2.0 * laws.FluidGasPressure[i] * laws.FluidPerVolume[i] * laws.FluidExponent[i]);

    private static double Fluid(CornerLaws laws, int i) =>
        (Square(laws.FluidArea[i]) * FluidStiffness(laws, i))
        + (Square(laws.LinkRatio[i]) * (laws.LinkRate + (2.0 * laws.LinkGasPressure * laws.LinkPerVolume * laws.LinkExponent)));

    // Both wheels of a side moving together work the common damper at once: the whole row of c·ρ·ρᵀ.
    private static double LinkDamping(CornerLaws laws, int i) =>
        laws.LinkDamping * Math.Abs(laws.LinkRatio[i]) * (Math.Abs(laws.LinkRatio[i]) + Math.Abs(laws.LinkRatio[(i + 2) % 4]));

    private static double Square(double x) => x * x;
}
