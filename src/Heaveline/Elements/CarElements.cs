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
        TakeOff(joints.CommonSprings, sprung);
        TakeOff(joints.Accumulators, sprung);
        var (springs, dampers) = (new Element[4], new Element[4]);
        var stances = new SpringStance?[4];
        var (bumps, rebounds, frictions) = (new Element?[4], new Element?[4], new Element?[4]);
        for (var i = 0; i < 4; i++)
        {
            // A law that both wheels of an axle have is made once.
            var beside = i % 2 == 1 ? i - 1 : -1;
            var place = CornerPlace.Of(car, i);
            var carried = Carried(place, sprung, i);
            var alike = beside >= 0 && carried == Carried(place, sprung, beside);
            var mean = SpringElement.Carried(place, 0.5 * (sprung[i] + sprung[i ^ 1]));
            stances[i] = SpringStance.Of(place.Axle, carried, mean);
            springs[i] = SpringElement.Of(place, carried, stances[i], StopElement.Ends(place), alike ? springs[beside] : null);
            dampers[i] = beside >= 0 ? DamperElement.Of(place, dampers[beside].TravelLaws, dampers[beside].RateLaws) : DamperElement.Of(
                place, SpringStance.Of(place.Axle, mean, mean)?.Carried ?? mean, 0.5 * (onWheel[i] + onWheel[i ^ 1]));
            bumps[i] = StopElement.Bump(place, springs[i].Range, beside >= 0 ? bumps[beside] : null);
            rebounds[i] = StopElement.Rebound(place, springs[i].Range, beside >= 0 ? rebounds[beside] : null);
            frictions[i] = FrictionElement.Of(place, beside >= 0 ? frictions[beside] : null);
        }

        return new ElementList
        {
            Springs = springs,
            Stances = stances,
            Dampers = dampers,
            BumpStops = bumps,
            ReboundStops = rebounds,
            Frictions = frictions,
            Bars = [BarElement.Of(car, AxleEnd.Front), BarElement.Of(car, AxleEnd.Rear)],
            CommonSprings = joints.CommonSprings,
            CommonDampers = joints.CommonDampers,
            Accumulators = joints.Accumulators,
            Resistances = joints.Line is { Resistance: > 0.0 } line ? FluidElement.Resistances(line) : [],
            Line = joints.Line,
            HoldsFluid = car.Interconnection is FluidLink,
        };
    }

    /// <summary>
    /// What the springs of an axle that stood on the scales carried there, left and right, N: the sprung load less what the gas of the dampers
    /// weighed and the interconnection carried.
    /// </summary>
    /// <param name="car">The car as it was weighed, or on other springs and dampers.</param>
    /// <param name="end">Which axle.</param>
    public static (double Left, double Right) Weighed(Car car, AxleEnd end)
    {
        double[] sprung =
        [
            SprungLoad(car.Weighing.FrontLeft.Si, car.Front), SprungLoad(car.Weighing.FrontRight.Si, car.Front),
            SprungLoad(car.Weighing.RearLeft.Si, car.Rear), SprungLoad(car.Weighing.RearRight.Si, car.Rear),
        ];
        if (car.Interconnection is not null)
        {
            var joints = Joints(car);
            TakeOff(joints.CommonSprings, sprung);
            TakeOff(joints.Accumulators, sprung);
        }

        var left = 2 * (int)end;
        var place = CornerPlace.Of(car, left);
        return (Carried(place, sprung, left), Carried(place, sprung, left + 1));
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

    // What an interconnection carries in the reference state the springs do not.
    private static void TakeOff(Element[] joints, double[] sprung)
    {
        foreach (var joint in joints)
        {
            var carried = joint.AtRest(0.0).Force;
            for (var i = 0; i < 4; i++)
            {
                sprung[i] -= joint.Sight.Wheels[i] * carried;
            }
        }
    }

    // What the spring of a corner carries; the place may be that of the axle's other wheel.
    private static double Carried(CornerPlace place, double[] sprung, int i) =>
        SpringElement.Carried(place, AtPlace(sprung, i, place.SpringShare));

    // Load at the element's place that holds up the wheels' loads: F_wheel = share·F + (1 − share)·F_other.
    private static double AtPlace(double[] wheel, int i, double share)
    {
        var other = wheel[i ^ 1];
        var own = wheel[i];
        return share >= 1.0 ? own : (0.5 * (own + other)) + (0.5 * (own - other) / ((2.0 * share) - 1.0));
    }
}
