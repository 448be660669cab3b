using Heaveline.Cars;
using Heaveline.Quantities;

namespace Heaveline.Elements;

/// <summary>From a car as described to the list of its elements.</summary>
internal static class CarElements
{
    /// <summary>
    /// Compiles a car's elements. What the corner springs carry in the reference state is the sprung load less
    /// what dampers' gas and interconnection carry.
    /// </summary>
    /// <exception cref="RefusedValueException">An element that cannot stand as described: named.</exception>
    public static ElementList Of(Car car)
    {
        double[] onWheel =
        [
            SprungLoad(car.Weighing.FrontLeft.Si, car.Front), SprungLoad(car.Weighing.FrontRight.Si, car.Front),
            SprungLoad(car.Weighing.RearLeft.Si, car.Rear), SprungLoad(car.Weighing.RearRight.Si, car.Rear),
        ];
        var joints = Joints(car);
        double[] sprung = [.. onWheel];
        foreach (var joint in joints.CommonSprings.Concat(joints.Accumulators))
        {
            var carried = joint.AtRest(0.0).Force;
            for (var i = 0; i < 4; i++)
            {
                sprung[i] -= joint.Sight.Wheels[i] * carried;
            }
        }

        var corners = Enumerable.Range(0, 4).Select(i => Corner(CornerPlace.Of(car, i), sprung, onWheel)).ToArray();
        return new ElementList
        {
            Springs = [.. corners.Select(corner => corner.Spring)],
            Dampers = [.. corners.Select(corner => corner.Damper)],
            BumpStops = [.. corners.Select(corner => corner.Bump)],
            ReboundStops = [.. corners.Select(corner => corner.Rebound)],
            Frictions = [.. corners.Select(corner => corner.Friction)],
            Bars = [BarElement.Of(car, AxleEnd.Front), BarElement.Of(car, AxleEnd.Rear)],
            CommonSprings = joints.CommonSprings,
            CommonDampers = joints.CommonDampers,
            Accumulators = joints.Accumulators,
            Resistances = joints.Line is { Resistance: > 0.0 } line ? FluidElement.Resistances(line) : [],
            Line = joints.Line,
            HoldsFluid = car.Interconnection is FluidLink,
        };
    }

    private static double SprungLoad(double weighed, Axle axle) => (weighed - (0.5 * axle.UnsprungMass.Si)) * Gravity.Standard;

    private static (Element[] CommonSprings, Element[] CommonDampers, Element[] Accumulators, SideLine? Line) Joints(Car car)
    {
        var half = car.Kind == VehicleKind.TwoWheeler ? 0.5 : 1.0;
        switch (car.Interconnection)
        {
            case null:
                return ([], [], [], null);
            case ElasticLink link:
                return (ElasticElement.Springs(link, half), ElasticElement.Dampers(link, half), [], null);
            case FluidLink { Line.State: LineState.Open } fluid:
                return (FluidElement.Open(fluid, half), [], [], null);
            case FluidLink fluid:
                var accumulators = FluidElement.Accumulators(fluid, half);
                return ([], [], accumulators, fluid.Line.State == LineState.Pipe ? FluidElement.Line(fluid.Line, half, accumulators) : null);
            default:
                throw new InvalidOperationException($"An interconnection {car.Interconnection.GetType().Name} has no place in the model.");
        }
    }

    private static (Element Spring, Element Damper, Element? Bump, Element? Rebound, Element? Friction) Corner(
        CornerPlace place, double[] sprung, double[] onWheel)
    {
        var i = place.Corner;
        var spring = SpringElement.Of(place, SpringElement.Carried(place, AtPlace(sprung, i, place.SpringShare)));
        var damper = DamperElement.Of(place, SpringElement.Carried(place, 0.5 * (sprung[i] + sprung[i ^ 1])), 0.5 * (onWheel[i] + onWheel[i ^ 1]));
        var (bump, rebound) = (StopElement.Bump(place), StopElement.Rebound(place));
        var within = ElementList.Limits([spring, bump, rebound]);
        return (
            spring with { Range = within },
            damper,
            bump is null ? null : bump with { Range = within },
            rebound is null ? null : rebound with { Range = within },
            FrictionElement.Of(place));
    }

    // Load at the element's place that holds up the wheels' loads: F_wheel = share·F + (1 − share)·F_other.
    private static double AtPlace(double[] wheel, int i, double share)
    {
        var other = wheel[i ^ 1];
        var own = wheel[i];
        return share >= 1.0 ? own : (0.5 * (own + other)) + (0.5 * (own - other) / ((2.0 * share) - 1.0));
    }
}
