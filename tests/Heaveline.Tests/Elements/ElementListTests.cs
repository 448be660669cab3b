using CsCheck;
using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.Elements;

public class ElementListTests
{
    [Fact]
    public void The_kernel_pushes_wheels_and_fluid_as_the_list_says()
    {
        Gen.Select(AnyCar.Any, Gen.Double[-0.15, 0.08].Array[4], Gen.Double[-2.0, 2.0].Array[4], Gen.Double[-2e-5, 2e-5].Array[2])
            .Sample((car, travel, rate, flow) =>
            {
                var model = RideModel.Of(car);
                var n = model.Numbers;
                if (n.Elements.Line is null)
                {
                    flow = new double[2];
                }

                using var kernel = new OpenKernel(n, rubs: false);
                var sample = kernel.At([0.0, 0.0, 0.0, .. travel.Select((s, i) => s - n.TrimTravel[i]), .. flow], [0.0, 0.0, 0.0, .. rate, 0.0, 0.0]);
                double[] gone = [n.TrimFlow[0] + flow[0], n.TrimFlow[1] + flow[1]];
                var (force, pressure, size) = (new double[4], new double[2], 1.0);
                foreach (var element in n.Elements.All)
                {
                    var own = element.Force(new ScalarLane(element.Sight.Of(travel, gone)), new ScalarLane(element.Sight.Of(rate, [0.0, 0.0]))).Value;
                    for (var i = 0; i < 4; i++)
                    {
                        force[i] += element.Sight.Wheels[i] * own;
                        size = Math.Max(size, Math.Abs(element.Sight.Wheels[i] * own));
                    }

                    pressure[0] -= element.Sight.Flows[0] * own;
                    pressure[1] -= element.Sight.Flows[1] * own;
                }

                // A gas that is pressed to nothing has no force in either.
                if (!force.All(double.IsFinite))
                {
                    return;
                }

                for (var i = 0; i < 4; i++)
                {
                    Assert.Equal(force[i] - n.TrimForce[i], sample[Channel.Force + i], 1e-12 * size);
                }

                if (n.Elements.Line is { } line)
                {
                    var flows = (line.Resists ? Channel.Rates : Channel.Accelerations) + Channel.Flow;
                    Assert.Equal(pressure[0] / line.Scale, sample[flows], 1e-9 * Math.Max(1.0, Math.Abs(pressure[0] / line.Scale)));
                    Assert.Equal(pressure[1] / line.Scale, sample[flows + 1], 1e-9 * Math.Max(1.0, Math.Abs(pressure[1] / line.Scale)));
                }
            }, iter: 300);
    }

    [Fact]
    public void The_list_carries_the_body_in_the_reference_state()
    {
        // Wheel forces of all elements at S = 0 hold up what the scales say, less each wheel's own weight.
        AnyCar.Any.Sample(car =>
        {
            var elements = CarElements.Of(car);
            var force = new double[4];
            foreach (var element in elements.All)
            {
                for (var i = 0; i < 4; i++)
                {
                    force[i] += element.Sight.Wheels[i] * element.StandingAt(0.0);
                }
            }

            double[] weighed =
                [car.Weighing.FrontLeft.Si, car.Weighing.FrontRight.Si, car.Weighing.RearLeft.Si, car.Weighing.RearRight.Si];
            for (var i = 0; i < 4; i++)
            {
                var load = (weighed[i] - (0.5 * car.Axles[i / 2].UnsprungMass.Si)) * Gravity.Standard;
                Assert.Equal(load, force[i], 1e-9 * load);
            }
        }, iter: 200);
    }

    [Fact]
    public void Every_element_of_a_car_is_among_all()
    {
        // A kind of element that is forgotten in All would be there for nobody.
        AnyCar.Any.Sample(car =>
        {
            var list = CarElements.Of(car);
            var named = typeof(ElementList).GetProperties().Where(property => property.Name != nameof(ElementList.All))
                .Select(property => property.GetValue(list)).OfType<IEnumerable<Element?>>().SelectMany(elements => elements).OfType<Element>();
            Assert.True(named.ToHashSet(ReferenceEqualityComparer.Instance).SetEquals(list.All));
            Assert.Equal(list.All.Count, list.All.Distinct(ReferenceEqualityComparer.Instance).Count());
        }, iter: 20);
    }

    [Fact]
    public void Both_wheels_of_an_axle_have_one_law_where_they_carry_alike_and_their_own_where_not()
    {
        AnyCar.Any.Sample(car =>
        {
            var w = car.Weighing;
            var even = car with { Weighing = w with { FrontRight = w.FrontLeft, RearRight = w.RearLeft } };
            var uneven = car with { Weighing = w with { FrontRight = new(w.FrontLeft.Si * 1.05), RearRight = w.RearLeft } };
            var (alike, apart) = (CarElements.Of(even), CarElements.Of(uneven));
            foreach (var i in new[] { 0, 2 })
            {
                Assert.True(alike.Springs[i].HasLawsOf(alike.Springs[i + 1]));
                Assert.True(apart.Dampers[i].HasLawsOf(apart.Dampers[i + 1]));
            }

            Assert.False(apart.Springs[0].HasLawsOf(apart.Springs[1]));
            Assert.True(apart.Springs[2].HasLawsOf(apart.Springs[3]));
            Assert.NotEqual(apart.Springs[0].StandingAt(0.0), apart.Springs[1].StandingAt(0.0));
        }, iter: 50);
    }

    [Fact]
    public void An_element_with_more_than_the_kernel_has_room_for_is_refused_by_name()
    {
        var law = new PowerLaw("stop of powers") { Clearance = 0.05, Coefficient = 1e5, Exponent = 2.0, Direction = 1.0 };
        var hinged = new StraightLaw { Slope = 1e4, Opening = [new Hinge(0.05, 2e4)] };
        var slides = new Slider(50.0, 3e-4, 5e-3);
        Refused(Stop(law, law), KernelRoom.BumpStop);
        Refused(Stop(new PowerLaw("rebound") { Clearance = 0.05, Coefficient = 1e5, Exponent = 2.0, Direction = -1.0 }), KernelRoom.BumpStop);
        Refused(Stop() with { OnRate = [law] }, KernelRoom.BumpStop);
        Refused(Stop(law), KernelRoom.Volume);
        Refused(Stop(hinged), KernelRoom.Volume);
        Refused(Stop() with { OnRate = [hinged] }, KernelRoom.Damping);
        Refused(Stop() with { Ratio = new RatioCurve(1.0, 0.5) }, KernelRoom.BumpStop);
        Refused(Stop() with { Slider = slides }, KernelRoom.BumpStop);
        Assert.Equal(1e4, KernelSlot.Of(Stop(hinged, hinged), KernelRoom.Spring).OnTravel.Slope / 2.0, 1e-9);

        static Element Stop(params Law[] laws) => new()
        {
            Name = "bump stop", Cause = StepCause.BumpStop, Corner = 0, Sight = Sight.Along(0), Felt = [1.0, 0.0, 0.0, 0.0], OnTravel = laws,
        };

        static void Refused(Element element, KernelRoom room) =>
            Assert.Contains("bump stop", Assert.Throws<NotSupportedException>(() => KernelSlot.Of(element, room)).Message, StringComparison.Ordinal);
    }
}
