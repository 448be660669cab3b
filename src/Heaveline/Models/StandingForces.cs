using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Numerics;

namespace Heaveline.Models;

/// <summary>
/// A car's forces at rest at a position, over any lane: what is left over of them there, which is nothing where it stands, and what it stands by.
/// The same balance as <see cref="TrimBalance"/>, whose slopes come out of its elements one by one; here they come out of lanes that carry them.
/// </summary>
/// <param name="car">The car.</param>
/// <param name="numbers">Its numbers in the reference state.</param>
internal sealed class StandingForces<T>(Car car, RideNumbers numbers)
    where T : unmanaged, ILane<T>
{
    private readonly T[] force = new T[4];
    private readonly T[] load = new T[4];
    private readonly T[] travel = new T[4];
    private readonly T[] flow = new T[2];

    /// <summary>Travel of the wheels there, m.</summary>
    public ReadOnlySpan<T> Travel => travel;

    /// <summary>Force of the suspension at the wheels, N.</summary>
    public ReadOnlySpan<T> Force => force;

    /// <summary>Loads of the tyres, N.</summary>
    public ReadOnlySpan<T> Load => load;

    /// <summary>
    /// How far all that a trim must keep to is kept to, each of its own kind, above 0 where it is: tyres pressed on the road, wheels within their
    /// travel, lines under pressure.
    /// </summary>
    public List<T> Margins { get; } = [];

    /// <summary>What is left over, scaled as that of <see cref="TrimBalance"/>.</summary>
    /// <param name="position">Heave, pitch, roll, four wheels, two flows.</param>
    /// <param name="left">Receives what is left over, shape (9).</param>
    public void At(ReadOnlySpan<T> position, Span<T> left)
    {
        var n = numbers;
        var weight = n.Body.Mass * Gravity.Standard;
        var perWeight = T.Of(1.0 / weight);
        Move(position);
        Push(position);
        T Sum(Func<int, T> of) => (of(0) + of(1)) + (of(2) + of(3));
        var (pitch, roll) = (position[1], position[2]);
        left[0] = (Sum(i => force[i]) - T.Of(weight)) * perWeight;
        left[1] = ((T.Of(n.PitchGravity) * pitch) - Sum(i => T.Of(n.X[i]) * force[i])) * perWeight;
        left[2] = n.Rolls ? ((T.Of(n.RollGravity) * roll) + Sum(i => T.Of(n.Y[i]) * force[i])) * perWeight : roll;
        for (var i = 0; i < 4; i++)
        {
            load[i] = T.Max(T.Of(0.0), T.Of(n.TrimLoad[i]) - (T.Of(n.TyreRate[i]) * position[3 + i]));
            var hung = 0.5 * (i < 2 ? car.Front : car.Rear).UnsprungMass.Si * Gravity.Standard;
            left[3 + i] = (load[i] - T.Of(hung) - force[i]) * perWeight;
        }

        for (var q = 0; q < 2; q++)
        {
            left[7 + q] = n.Elements.Line is null ? position[7 + q] : -flow[q] / T.Of(n.Elements.Accumulators[0].AtRest(0.0).Force);
        }
    }

    /// <summary>Works out <see cref="Margins"/> where it stands.</summary>
    /// <param name="position">Where it stands.</param>
    public void Check(ReadOnlySpan<T> position)
    {
        Margins.Clear();
        var elements = numbers.Elements;
        for (var i = 0; i < 4; i++)
        {
            Margins.Add(load[i]);
            Margins.Add(T.Of(Within(elements.BumpLimit[i])) - travel[i]);
            Margins.Add(travel[i] + T.Of(Within(-elements.ReboundLimit[i])));
        }

        if (elements.HoldsFluid)
        {
            foreach (var joint in elements.Accumulators.Concat(elements.CommonSprings))
            {
                Margins.Add(joint.Force(Sight(joint, position), default));
            }
        }
    }

    // Farther than any wheel moves, m, where nothing ends its travel.
    private static double Within(double limit) => Math.Min(limit, 1e3);

    private void Move(ReadOnlySpan<T> position)
    {
        for (var i = 0; i < 4; i++)
        {
            var body = position[0] - (T.Of(numbers.X[i]) * position[1]) + (T.Of(numbers.Y[i]) * position[2]);
            travel[i] = position[3 + i] - body;
        }
    }

    // By virtual work each element pushes what it sees by the shares by which it sees it.
    private void Push(ReadOnlySpan<T> position)
    {
        Array.Clear(force);
        Array.Clear(flow);
        foreach (var element in numbers.Elements.Each())
        {
            var own = element.Force(Sight(element, position), default);
            for (var i = 0; i < 4; i++)
            {
                if (element.Sight.Wheels[i] != 0.0)
                {
                    force[i] += T.Of(element.Sight.Wheels[i]) * own;
                }
            }

            for (var q = 0; q < 2; q++)
            {
                if (element.Sight.Flows[q] != 0.0)
                {
                    flow[q] += T.Of(element.Sight.Flows[q]) * own;
                }
            }
        }
    }

    private T Sight(Element element, ReadOnlySpan<T> position)
    {
        var sight = default(T);
        for (var i = 0; i < 4; i++)
        {
            if (element.Sight.Wheels[i] != 0.0)
            {
                sight += T.Of(element.Sight.Wheels[i]) * travel[i];
            }
        }

        for (var q = 0; q < 2; q++)
        {
            if (element.Sight.Flows[q] != 0.0)
            {
                sight += T.Of(element.Sight.Flows[q]) * position[7 + q];
            }
        }

        return sight;
    }
}
