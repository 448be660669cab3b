using Heaveline.Cars;
using Heaveline.Elements;

namespace Heaveline.Models;

/// <summary>
/// What is left over of the forces on body, wheels and fluid at a position, and its slopes, row after row: what the trim makes nothing of.
/// </summary>
internal readonly ref struct TrimBalance
{
    /// <summary>Heave, pitch, roll, four wheels, two flows.</summary>
    public const int Unknowns = 9;

    private readonly Car car;
    private readonly StaticPush push;
    private readonly Element[] elements;

    // What each element sees, row after row.
    private readonly Span<double> rows;

    // What those give at rest that do not feel where they stand.
    private readonly Span<ElementMean> blind;
    private readonly double weight;

    /// <param name="car">The car.</param>
    /// <param name="numbers">Its numbers in the reference state.</param>
    /// <param name="push">What pushes it besides its weight.</param>
    /// <param name="rows">Room for nine numbers an element.</param>
    /// <param name="blind">Room for one an element.</param>
    public TrimBalance(Car car, RideNumbers numbers, StaticPush push, Span<double> rows, Span<ElementMean> blind)
    {
        (this.car, Numbers, this.push) = (car, numbers, push);
        elements = numbers.Elements.Each();
        this.rows = rows;
        this.blind = blind;
        rows.Clear();
        for (var k = 0; k < elements.Length; k++)
        {
            var element = elements[k];
            numbers.Row(element.Sight, rows.Slice(k * Unknowns, Unknowns));
            if (element.IsBlind)
            {
                var alike = k > 0 && element.HasLawsOf(elements[k - 1]) && element.Ratio == elements[k - 1].Ratio;
                blind[k] = alike ? blind[k - 1] : element.AtRest(0.0);
            }
        }

        weight = numbers.Body.Mass * Gravity.Standard;
    }

    /// <summary>The car's numbers.</summary>
    public RideNumbers Numbers { get; }

    /// <summary>
    /// What is left over, scaled to lengths and angles of order one: forces per weight, moments per weight and metre; and its slopes.
    /// </summary>
    /// <param name="unknown">The position.</param>
    /// <param name="residual">Receives what is left over, shape (9).</param>
    /// <param name="tangent">Receives its slopes, shape (9, 9).</param>
    public void At(ReadOnlySpan<double> unknown, Span<double> residual, Span<double> tangent)
    {
        var n = Numbers;
        residual.Clear();
        tangent.Clear();
        // By virtual work the elements push each position by −row·F; a wheel's equation stands in the list as its own.
        Span<int> seen = stackalloc int[Unknowns];
        for (var k = 0; k < elements.Length; k++)
        {
            var row = rows.Slice(k * Unknowns, Unknowns);
            var (at, count) = (0.0, 0);
            for (var i = 0; i < Unknowns; i++)
            {
                if (row[i] != 0.0)
                {
                    at += row[i] * unknown[i];
                    seen[count++] = i;
                }
            }

            var (force, rate, _) = AtRest(k, at);
            foreach (var i in seen[..count])
            {
                residual[i] -= row[i] * force;
                var slopes = tangent.Slice(i * Unknowns, Unknowns);
                var slope = row[i] * rate;
                foreach (var j in seen[..count])
                {
                    slopes[j] -= slope * row[j];
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

        foreach (ref var value in residual)
        {
            value /= weight;
        }

        foreach (ref var value in tangent)
        {
            value /= weight;
        }

        Release(residual, tangent, unknown);
    }

    /// <summary>The trim at a position in balance.</summary>
    public TrimSolution Solution(ReadOnlySpan<double> x)
    {
        var n = Numbers;
        var (travel, load) = (new double[4], new double[4]);
        for (var i = 0; i < 4; i++)
        {
            travel[i] = x[3 + i] - (x[0] - (n.X[i] * x[1]) + (n.Y[i] * x[2]));
            load[i] = TyreLoad(x, i).Load;
        }

        ReadOnlySpan<double> flow = [x[7], x[8]];
        var force = new double[4];
        for (var k = 0; k < elements.Length; k++)
        {
            var sight = elements[k].Sight;
            var own = AtRest(k, sight.Of(travel, flow)).Force;
            for (var i = 0; i < 4; i++)
            {
                force[i] += sight.Wheels[i] * own;
            }
        }

        return new TrimSolution(travel, force, load, [x[7], x[8], x[7], x[8]], Pressures(travel, flow), x[0], x[1], x[2]);
    }

    private ElementMean AtRest(int k, double sight) => elements[k].IsBlind ? blind[k] : elements[k].AtRest(sight);

    // Load of a tyre and its slope over the wheel's height: nothing once it is clear of the road.
    private (double Load, double Slope) TyreLoad(ReadOnlySpan<double> x, int i)
    {
        var load = Numbers.TrimLoad[i] - (Numbers.TyreRate[i] * x[3 + i]);
        return load > 0.0 ? (load, -Numbers.TyreRate[i]) : (0.0, 0.0);
    }

    // The tyre, the wheel's weight, and what the links carry between wheel and body beside the springs.
    private void AddWheel(Span<double> residual, Span<double> tangent, ReadOnlySpan<double> unknown, int i)
    {
        var n = Numbers;
        var link = push.Link[i];
        residual[0] += link;
        residual[1] -= n.X[i] * link;
        residual[2] += n.Y[i] * link;
        var (load, slope) = TyreLoad(unknown, i);
        residual[3 + i] += load - (0.5 * (i < 2 ? car.Front : car.Rear).UnsprungMass.Si * Gravity.Standard) - link;
        tangent[((3 + i) * Unknowns) + 3 + i] += slope;
    }

    // What has no equation of its own stays where it is: a two-wheeler's roll, and the flow where none flows.
    private void Release(Span<double> residual, Span<double> tangent, ReadOnlySpan<double> unknown)
    {
        var n = Numbers;
        if (!n.Rolls)
        {
            Fix(residual, tangent, unknown, 2);
        }

        if (n.Elements.Line is null)
        {
            Fix(residual, tangent, unknown, 7);
            Fix(residual, tangent, unknown, 8);
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
    }

    private static void Fix(Span<double> residual, Span<double> tangent, ReadOnlySpan<double> unknown, int k)
    {
        residual[k] = unknown[k];
        tangent.Slice(k * Unknowns, Unknowns).Clear();
        tangent[(k * Unknowns) + k] = 1.0;
    }

    // Gauge pressure at the four displacers: what an accumulator or the one common spring of a line wide open gives.
    private double[] Pressures(double[] travel, ReadOnlySpan<double> flow)
    {
        var pressure = new double[4];
        if (Numbers.Elements.HoldsFluid)
        {
            Press(Numbers.Elements.Accumulators, travel, flow, pressure);
            Press(Numbers.Elements.CommonSprings, travel, flow, pressure);
        }

        return pressure;
    }

    private static void Press(IReadOnlyList<Element> elements, double[] travel, ReadOnlySpan<double> flow, double[] pressure)
    {
        foreach (var element in elements)
        {
            for (var i = 0; i < 4; i++)
            {
                if (element.Sight.Wheels[i] != 0.0)
                {
                    pressure[i] = element.AtRest(element.Sight.Of(travel, flow)).Force;
                }
            }
        }
    }
}
