using System.Collections;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Quantities;

namespace Heaveline.Tests.Doubts;

public class CarDoubtsTests
{
    [Fact]
    public void Every_amount_of_a_car_and_its_load_is_visited() => Gen.Select(AnyCar.Any, AnyCar.Loads).Sample((car, load) =>
    {
        var visited = new Counting();
        new CarAmounts(visited).Through(car, load);
        // The estimates of the roll inertia and the wheel radius are no amounts of the car; an index is not looked at beside a given inertia.
        var estimate = (car.Body.RollInertia is null && car.Kind == VehicleKind.Car ? 1 : 0) + (car.Brakes is null ? 1 : 0);
        var unused = car.Body.PitchInertia is null ? 0 : 1;
        var others = Amounts(car with { LoadStates = [] }) + Amounts(load) - unused;
        Assert.Equal(others + estimate, visited.Count);
    }, iter: 200);

    [Fact]
    public void Values_that_share_an_instrument_are_one_source_and_move_together()
    {
        var doubts = CarDoubts.Of(MeasuredCar.With(MeasuredCar.Saloon, 0.1, 0.06, 0.04, scale: "scale A"));
        Assert.Equal(
            ["scale A", "front spring rate", "front spring motion ratio", "rear spring rate", "rear spring motion ratio", "wheel radius guess"],
            doubts.Sources.Select(s => s.Name));
        Assert.Equal(4, doubts.Sources[0].Amounts.Count);
        var (car, _) = doubts.At([1.0, 0.0, 0.0, -2.0, 0.0, 0.0]);
        Assert.Equal(1.02 * doubts.Car.Weighing.Front, car.Weighing.Front, 1e-9);
        Assert.Equal(1.02 * doubts.Car.Weighing.Rear, car.Weighing.Rear, 1e-9);
        Assert.Equal(0.9 * Rate(doubts.Car.Rear), Rate(car.Rear), 1e-9 * Rate(car.Rear));
        Assert.Equal(Rate(doubts.Car.Front), Rate(car.Front));
    }

    [Fact]
    public void A_car_without_stated_doubts_but_for_its_estimates_has_those_as_sources()
    {
        var bare = PlainCar.Saloon with { Body = new Body { CentreHeight = new(0.55) } };
        Assert.Equal(["inertia database", "roll gyration rule", "wheel radius guess"], CarDoubts.Of(bare).Sources.Select(s => s.Name));
    }

    [Fact]
    public void A_load_in_hand_brings_its_own_doubts()
    {
        var load = new LoadState
        {
            Name = "boot",
            Loads = [new Load { Name = "boot", Mass = new Amount<Mass>(80.0).WithDoubt(10.0), BehindFrontAxle = new(3.0), Height = new(0.7) }],
        };
        var doubts = CarDoubts.Of(
            MeasuredCar.Saloon.ToCar() with { Body = MeasuredCar.Saloon.ToCar().Body with { RollInertia = new Amount<Inertia>(400.0) } }, load);
        Assert.Equal(["boot mass", "wheel radius guess (wheel radius)"], doubts.Sources.Select(s => s.Words));
        Assert.Equal(85.0, doubts.At([1.0, 0.0]).Load.Loads[0].Mass.Si, 1e-12);
    }

    [Fact]
    public void Draws_repeat_and_have_the_stated_standard_deviation()
    {
        var doubts = CarDoubts.Of(MeasuredCar.With(MeasuredCar.Saloon, 0.1, 0.0, 0.0));
        double RateOf(ulong seed, int i) => Rate(JointDraw.Of(JointDoubts.Of([doubts]), seed, i).Models[0].Car.Front);
        double[] rates = [.. Enumerable.Range(0, 1000).Select(i => RateOf(5, i))];
        Assert.Equal(rates[17], RateOf(5, 17));
        Assert.NotEqual(rates[17], RateOf(6, 17));
        var mean = rates.Average();
        var deviation = Math.Sqrt(rates.Average(r => (r - mean) * (r - mean)));
        // 1000 draws give a standard deviation to 1/√2000 = 2.2 %: five of those.
        Assert.InRange(deviation / Rate(doubts.Car.Front), 0.05 * 0.89, 0.05 * 1.11);
    }

    [Fact]
    public void A_draw_that_no_car_can_have_is_drawn_again()
    {
        // A spring rate of 100 ± 200 %: one in six draws is negative.
        var doubts = CarDoubts.Of(MeasuredCar.With(MeasuredCar.Saloon, 2.0, 0.0, 0.0));
        JointDraw[] draws = [.. Enumerable.Range(0, 200).Select(i => JointDraw.Of(JointDoubts.Of([doubts]), 3, i))];
        Assert.All(draws, d => Assert.True(Rate(d.Models[0].Car.Front) > 0.0));
        Assert.Contains(draws, d => d.Refused > 0);
    }

    private static double Rate(Axle axle) => Assert.IsType<LinearSpring>(axle.Spring.Law).Rate.Si;

    // All amounts in the graph of a record, by their types: computed properties without a setter do not count.
    private static int Amounts(object? thing)
    {
        if (thing is null or string || thing.GetType().IsEnum || thing.GetType().IsPrimitive)
        {
            return 0;
        }

        if (thing is ForceTable or TableDamper)
        {
            return 1;
        }

        if (thing.GetType() is { IsGenericType: true } type && type.GetGenericTypeDefinition() == typeof(Amount<>))
        {
            return 1;
        }

        return thing is IEnumerable many
            ? many.Cast<object?>().Sum(Amounts)
            : thing.GetType().GetProperties().Where(p => p.CanWrite && p.GetIndexParameters().Length == 0).Sum(p => Amounts(p.GetValue(thing)));
    }

    private sealed class Counting : IAmountVisitor
    {
        public int Count { get; private set; }

        public Amount<TDimension> Visit<TDimension>(string path, Amount<TDimension> amount)
            where TDimension : struct, IDimension
        {
            Count++;
            return amount;
        }
    }
}
