using CsCheck;
using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Tests.Models;

/// <summary>The balance at rest over lanes against the one that the trim is solved on: left over, and slopes.</summary>
public class StandingForcesTests
{
    private const int Unknowns = TrimBalance.Unknowns;

    [Fact]
    public void Any_car_at_any_position_leaves_over_what_its_balance_leaves() => Gen.Select(AnyCar.Any, Gen.Double[-0.005, 0.005].Array[Unknowns])
        .Sample((car, position) =>
        {
            var elements = CarElements.Of(car);
            var numbers = RideNumbers.Static(car, SprungBody.Of(car).With(LoadState.Reference), elements);
            // A litre is much fluid.
            (position[7], position[8]) = (1e-2 * position[7], 1e-2 * position[8]);
            var count = elements.Each().Length;
            var balance = new TrimBalance(car, numbers, StaticPush.None, new double[count * Unknowns], new ElementMean[count]);
            var (left, slopes) = (new double[Unknowns], new double[Unknowns * Unknowns]);
            balance.At(position, left, slopes);
            if (Array.Exists(left, double.IsNaN))
            {
                // A gas spring past its own end: neither has a force there.
                return;
            }

            var forces = new StandingForces<Dual<ScalarLane>>(car, numbers);
            var there = new Dual<ScalarLane>[Unknowns];
            for (var along = 0; along < Unknowns; along++)
            {
                forces.At([.. position.Select((x, i) => new Dual<ScalarLane>(new(x), new(i == along ? 1.0 : 0.0)))], there);
                for (var i = 0; i < Unknowns; i++)
                {
                    Near(left[i], there[i].Value.Value);
                    Near(slopes[(i * Unknowns) + along], there[i].Slope.Value);
                }
            }
        });

    private static void Near(double expected, double actual)
    {
        var near = 1e-9 * Math.Max(1.0, Math.Abs(expected));
        Assert.InRange(actual, expected - near, expected + near);
    }
}
