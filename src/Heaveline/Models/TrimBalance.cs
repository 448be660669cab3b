using Heaveline.Cars;
using Heaveline.Elements;

namespace Heaveline.Models;

/// <summary>
/// What is left over of the forces on body, wheels and fluid at a position, and its slopes, row after row: what the trim makes nothing of.
/// </summary>
internal sealed class TrimBalance
{
    /// <summary>Heave, pitch, roll, four wheels, two flows.</summary>
    public const int Unknowns = 9;

    private readonly Car car;
    private readonly StaticPush push;
    private readonly (Element Element, double[] Row)[] placed;
    private readonly double weight;

    /// <param name="car">The car.</param>
    /// <param name="numbers">Its numbers in the reference state.</param>
    /// <param name="push">What pushes it besides its weight.</param>
    public TrimBalance(Car car, RideNumbers numbers, StaticPush push)
    {
        (this.car, Numbers, this.push) = (car, numbers, push);
        placed = [.. numbers.Elements.All.Select(element => (element, numbers.Row(element.Sight, Unknowns)))];
        weight = numbers.Body.Mass * Gravity.Standard;
    }

    /// <summary>The car's numbers.</summary>
    public RideNumbers Numbers { get; }

    /// <summary>
    /// What is left over, scaled to lengths and angles of order one: forces per weight, moments per weight and metre; and its slopes.
    /// </summary>
    public (double[] Residual, double[] Tangent) At(double[] unknown)
    {
        var n = Numbers;
        var residual = new double[Unknowns];
        var tangent = new double[Unknowns * Unknowns];
        // By virtual work the elements push each position by −row·F; a wheel's equation stands in the list as its own.
        foreach (var (element, row) in placed)
        {
            var at = 0.0;
            for (var i = 0; i < Unknowns; i++)
            {
                at += row[i] * unknown[i];
            }

            var (force, rate, _) = element.AtRest(at);
            for (var i = 0; i < Unknowns; i++)
            {
                if (row[i] != 0.0)
                {
                    residual[i] -= row[i] * force;
                    for (var j = 0; j < Unknowns; j++)
                    {
                        tangent[(i * Unknowns) + j] -= row[i] * rate * row[j];
                    }
                }
            }
        }

        residual[0] -= weight;
        residual[1] += push.PitchMoment + (n.PitchGravity * unknown[1]);
        tangent[Unknowns + 1] += n.PitchGravity;
        residual[2] += push.RollMoment + (n.RollGravity * unknown[2]);
        tangent[(2 * Unknowns) + 2] += n.RollGravity;
        for (var i = 0; i < 4; i++)
        {
            AddWheel(residual, tangent, unknown, i);
        }

        for (var i = 0; i < Unknowns; i++)
        {
            residual[i] /= weight;
        }

        for (var i = 0; i < tangent.Length; i++)
        {
            tangent[i] /= weight;
        }

        Release(residual, tangent, unknown);
        return (residual, tangent);
    }

    /// <summary>The trim at a position in balance.</summary>
    public TrimSolution Solution(double[] x)
    {
        var n = Numbers;
        var travel = new double[4];
        for (var i = 0; i < 4; i++)
        {
            travel[i] = x[3 + i] - (x[0] - (n.X[i] * x[1]) + (n.Y[i] * x[2]));
        }

        double[] flow = [x[7], x[8]];
        var force = new double[4];
        foreach (var (element, _) in placed)
        {
            var own = element.AtRest(element.Sight.Of(travel, flow)).Force;
            for (var i = 0; i < 4; i++)
            {
                force[i] += element.Sight.Wheels[i] * own;
            }
        }

        double[] load = [.. Enumerable.Range(0, 4).Select(i => TyreLoad(x, i).Load)];
        return new TrimSolution(travel, force, load, [x[7], x[8], x[7], x[8]], Pressures(travel, flow), x[0], x[1], x[2]);
    }

    // Load of a tyre and its slope over the wheel's height: nothing once it is clear of the road.
    private (double Load, double Slope) TyreLoad(double[] x, int i)
    {
        var load = Numbers.TrimLoad[i] - (Numbers.TyreRate[i] * x[3 + i]);
        return load > 0.0 ? (load, -Numbers.TyreRate[i]) : (0.0, 0.0);
    }

    // The tyre, the wheel's weight, and what the links carry between wheel and body beside the springs.
    private void AddWheel(double[] residual, double[] tangent, double[] unknown, int i)
    {
        var n = Numbers;
        var link = push.Link[i];
        residual[0] += link;
        residual[1] -= n.X[i] * link;
        residual[2] += n.Y[i] * link;
        var (load, slope) = TyreLoad(unknown, i);
        residual[3 + i] += load - (0.5 * car.Axles[i / 2].UnsprungMass.Si * Gravity.Standard) - link;
        tangent[((3 + i) * Unknowns) + 3 + i] += slope;
    }

    // What has no equation of its own stays where it is: a two-wheeler's roll, and the flow where none flows.
    private void Release(double[] residual, double[] tangent, double[] unknown)
    {
        var n = Numbers;
        if (!n.Rolls)
        {
            Fix(2, 1.0);
        }

        if (n.Elements.Line is null)
        {
            Fix(7, 1.0);
            Fix(8, 1.0);
            return;
        }

        // Still fluid has one pressure in each line: the difference over the base pressure.
        var scale = weight / n.Elements.Accumulators[0].AtRest(0.0).Force;
        for (var q = 7; q < Unknowns; q++)
        {
            residual[q] *= scale;
            for (var j = 0; j < Unknowns; j++)
            {
                tangent[(q * Unknowns) + j] *= scale;
            }
        }

        void Fix(int k, double slope)
        {
            residual[k] = unknown[k];
            for (var j = 0; j < Unknowns; j++)
            {
                tangent[(k * Unknowns) + j] = 0.0;
            }

            tangent[(k * Unknowns) + k] = slope;
        }
    }

    // Gauge pressure at the four displacers: what an accumulator or the one common spring of a line wide open gives.
    private double[] Pressures(double[] travel, double[] flow)
    {
        var pressure = new double[4];
        var elements = Numbers.Elements;
        if (elements.HoldsFluid)
        {
            foreach (var (element, i) in elements.Accumulators.Concat(elements.CommonSprings).SelectMany(WheelsOf))
            {
                pressure[i] = element.AtRest(element.Sight.Of(travel, flow)).Force;
            }
        }

        return pressure;
    }

    private static IEnumerable<(Element Element, int Wheel)> WheelsOf(Element element) =>
        from i in Enumerable.Range(0, 4) where element.Sight.Wheels[i] != 0.0 select (element, i);
}
