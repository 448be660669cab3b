using Heaveline.Cars;
using Heaveline.Numerics;
using Heaveline.Quantities;
using MathNet.Numerics.LinearAlgebra;

namespace Heaveline.Models;

/// <summary>
/// Nonlinear static equilibrium of body, wheels and fluid by Newton's method on the kernel's own forces and their exact tangents. Unknowns: heave,
/// pitch, roll of the body, heights of the four wheels, fluid gone from front to rear on each side; all from the reference state, about the loaded
/// centre of gravity.
/// </summary>
internal static class TrimSolver
{
    private const int Unknowns = 9;
    private const double Tolerance = 1e-9;

    /// <param name="car">The car.</param>
    /// <param name="load">Its load state.</param>
    /// <param name="body">The loaded body.</param>
    /// <param name="laws">The car's elements.</param>
    /// <param name="push">What pushes it besides its weight; null for standing.</param>
    public static TrimSolution Solve(Car car, LoadState load, SprungBody body, CornerLaws laws, StaticPush? push = null)
    {
        push ??= StaticPush.None;
        RefuseTipping(car, load, body);
        var numbers = RideNumbers.Static(car, body, laws);
        var constants = RidePacking.Pack<Quad<DualLane>, DualLane>([numbers]);
        // The middle of the band in which friction holds it.
        constants.Needs &= ~Needs.Friction;
        var unknown = Vector<double>.Build.Dense(Unknowns);
        for (var pass = 0; pass < 100; pass++)
        {
            var (residual, tangent) = Evaluate(car, constants, numbers, unknown, push);
            var miss = Miss(residual);
            if (miss < Tolerance)
            {
                return Finish(car, load, constants, numbers, tangent, unknown);
            }

            var step = tangent.Solve(-residual);
            if (!step.All(double.IsFinite))
            {
                break;
            }

            unknown += step * Shorten(car, constants, numbers, unknown, step, miss, push);
        }

        throw new RefusedValueException(
            "load state",
            $"'{load.Name}'",
            "a load that the springs can carry in balance",
            "No standing position was found: the car would tip over or fall through its travel.");
    }

    // A step past the end of a gas spring makes NaN. The library's own norm lets it vanish (it compares before it adds) and would call that balance.
    private static double Miss(Vector<double> residual) => Math.Sqrt(residual.DotProduct(residual));

    // Halves the step until the imbalance falls; corners of the force laws can make a full step overshoot.
    private static double Shorten(
        Car car,
        RideConstants<Quad<DualLane>, DualLane> constants,
        RideNumbers numbers,
        Vector<double> at,
        Vector<double> step,
        double miss,
        StaticPush push)
    {
        var part = 1.0;
        while (part > 1e-4 && !(Miss(Evaluate(car, constants, numbers, at + (step * part), push).Residual) < miss))
        {
            part *= 0.5;
        }

        return part;
    }

    // A load outside the wheelbase or the track cannot be balanced by wheels that only push.
    private static void RefuseTipping(Car car, LoadState load, SprungBody body)
    {
        var unsprungFront = car.Front.UnsprungMass.Si;
        var unsprungRear = car.Rear.UnsprungMass.Si;
        var onRear = (body.Mass * body.BehindFrontAxle / car.Wheelbase.Si) + unsprungRear;
        var total = body.Mass + unsprungFront + unsprungRear;
        if (onRear <= 0.0 || onRear >= total)
        {
            throw new RefusedValueException(
                "load state",
                $"'{load.Name}' with {total - onRear:G4} kg on the front and {onRear:G4} kg on the rear axle",
                "above 0 kg on each axle",
                "The car would tip over an axle: move the load or make it lighter.");
        }
    }

    private static (Vector<double> Residual, Matrix<double> Tangent) Evaluate(
        Car car, RideConstants<Quad<DualLane>, DualLane> c, RideNumbers n, Vector<double> unknown, StaticPush push)
    {
        var residual = Vector<double>.Build.Dense(Unknowns);
        var tangent = Matrix<double>.Build.Dense(Unknowns, Unknowns);
        for (var k = 0; k < Unknowns; k++)
        {
            DualLane D(int i) => new(unknown[i], i == k ? 1.0 : 0.0);
            Quad<DualLane> u = new(D(3), D(4), D(5), D(6));
            var travel = Quad<DualLane>.Fma(c.X, Quad<DualLane>.All(D(1)), u - Quad<DualLane>.All(D(0))) - (c.Y * Quad<DualLane>.All(D(2)));
            var state = new RideState<Quad<DualLane>, DualLane> { U = u, Travel = travel, Flow = new(D(7), D(8), D(7), D(8)) };
            ElementForces<Quad<DualLane>, DualLane>.Suspension(c, state);
            RideKernel<Quad<DualLane>, DualLane>.TyreForce(c, state, default, default);
            // What the links carry acts between wheel and body beside the springs.
            var force = state.Force
                + new Quad<DualLane>(DualLane.Of(push.Link[0]), DualLane.Of(push.Link[1]), DualLane.Of(push.Link[2]), DualLane.Of(push.Link[3]));
            var tyre = state.Tyre;
            var weight = n.Body.Mass * Gravity.Standard;
            var rows = new DualLane[Unknowns];
            // Scaled to lengths and angles of order one: forces per weight, moments per weight and metre.
            rows[0] = (Quad<DualLane>.Sum(force) - DualLane.Of(weight)) / DualLane.Of(weight);
            rows[1] = (DualLane.Of(push.PitchMoment) + (c.PitchGravity * D(1)) - Quad<DualLane>.Sum(c.X * force)) / DualLane.Of(weight);
            rows[2] = n.Rolls
                ? (DualLane.Of(push.RollMoment) + (c.RollGravity * D(2)) + Quad<DualLane>.Sum(c.Y * force)) / DualLane.Of(weight)
                : D(2);
            for (var i = 0; i < 4; i++)
            {
                var unsprung = 0.5 * car.Axles[i / 2].UnsprungMass.Si * Gravity.Standard;
                rows[3 + i] = (tyre.At(i) + DualLane.Of(n.TrimLoad[i] - unsprung) - force.At(i)) / DualLane.Of(weight);
            }

            rows[7] = D(7);
            rows[8] = D(8);
            if (n.Laws.FluidFlows)
            {
                // Still fluid has one pressure in each line.
                var pressure = LinkForces<Quad<DualLane>, DualLane>.Pressure(c, state);
                var scale = DualLane.Of(n.Laws.FluidPressure);
                rows[7] = (pressure.At(0) - pressure.At(2)) / scale;
                rows[8] = (pressure.At(1) - pressure.At(3)) / scale;
            }

            for (var i = 0; i < Unknowns; i++)
            {
                residual[i] = rows[i].Value;
                tangent[i, k] = rows[i].Slope;
            }
        }

        return (residual, tangent);
    }

    private static TrimSolution Finish(
        Car car, LoadState load, RideConstants<Quad<DualLane>, DualLane> c, RideNumbers n, Matrix<double> tangent, Vector<double> x)
    {
        Quad<DualLane> Fixed(double a, double b, double d, double e) => new(DualLane.Of(a), DualLane.Of(b), DualLane.Of(d), DualLane.Of(e));
        var travel = new double[4];
        for (var i = 0; i < 4; i++)
        {
            travel[i] = x[3 + i] - (x[0] - (n.X[i] * x[1]) + (n.Y[i] * x[2]));
        }

        double[] flow = [x[7], x[8], x[7], x[8]];
        var state = new RideState<Quad<DualLane>, DualLane>
        {
            Travel = Fixed(travel[0], travel[1], travel[2], travel[3]),
            Flow = Fixed(flow[0], flow[1], flow[2], flow[3]),
        };
        ElementForces<Quad<DualLane>, DualLane>.Suspension(c, state);
        var pressure = LinePressure(c, n, state);
        var loads = new double[4];
        for (var i = 0; i < 4; i++)
        {
            loads[i] = n.TrimLoad[i] - (n.TyreRate[i] * x[3 + i]);
        }

        double[] Values(Quad<DualLane> q) => [q.At(0).Value, q.At(1).Value, q.At(2).Value, q.At(3).Value];
        var trim = new TrimSolution(travel, Values(state.Force), loads, flow, Values(pressure), x[0], x[1], x[2]);
        // A wheel in the air leaves no stiffness under it: say that first.
        TrimChecks.RefuseOutOfTravel(car, load, n.Laws, trim);
        TrimChecks.RefuseUnstable(load, n, tangent);
        return trim;
    }

    private static Quad<DualLane> LinePressure(RideConstants<Quad<DualLane>, DualLane> c, RideNumbers n, RideState<Quad<DualLane>, DualLane> state)
    {
        if (!n.Laws.FluidOpen)
        {
            return LinkForces<Quad<DualLane>, DualLane>.Pressure(c, state);
        }

        // A line wide open is the common spring: its pressure is the force on each displacer over its area.
        var alone = new RideState<Quad<DualLane>, DualLane> { Travel = state.Travel };
        LinkForces<Quad<DualLane>, DualLane>.Elastic(c, alone);
        return alone.Force / c.LinkRatio;
    }
}
