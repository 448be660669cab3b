using CsCheck;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Files.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Modes;

/// <summary>
/// Body modes followed over loads and between variants, against the two roots of the textbook equations in 200 steps of the load, or of the numbers
/// of the car, each root being the one nearest to where the last two steps point.
/// </summary>
public class FollowedLoadTests
{
    private const int Steps = 200;

    [Theory]
    [InlineData("thimble-city-car")]
    [InlineData("fern-saloon")]
    [InlineData("fern-saloon-cured")]
    [InlineData("sprig-kit-car")]
    [InlineData("drover-van")]
    [InlineData("tarn-off-roader")]
    public void The_first_mode_is_what_the_first_becomes_while_the_load_comes_aboard(string name)
    {
        var car = Garage(name);
        foreach (var load in car.LoadStates)
        {
            Expect(Roots(car, load), new CarAtRest(RideModel.Of(car, load)) { ModesLike = BodyModes.OfEmpty(car) }.Modes);
        }
    }

    /// <summary>
    /// Straight laws, so that the car between two loads is the one between their masses. Far from a meeting, where either name would do.
    /// </summary>
    [Fact]
    public void On_any_car_the_first_mode_is_what_the_first_becomes_while_the_load_comes_aboard() =>
        Gen.Select(AnyCar.Linear, AnyCar.Loads).Sample(
            (drawn, load) =>
            {
                var car = drawn with { Interconnection = null };
                var roots = Roots(car, load);
                if (roots.All(r => Math.Abs(r.First - r.Second) > 0.03 * r.First))
                {
                    Expect(roots, BodyModes.Of(RideModel.Of(car, load)).Like(BodyModes.Of(RideModel.Of(car))));
                }
            },
            iter: 60);

    /// <summary>Four up the saloon's body modes are near 1.06 and 1.13 Hz and never meet on the way to the cured car: lower to lower.</summary>
    [Fact]
    public void A_comparison_pairs_the_modes_that_become_one_another_on_the_way_from_car_to_car()
    {
        Car[] cars = [Garage("fern-saloon"), Garage("fern-saloon-cured")];
        LoadState[] loads = [.. cars.Select(car => car.LoadStates.Single(l => l.Name == "four up with luggage"))];
        var aboard = Roots(cars[0], loads[0])[^1];
        var (from, to) = (Numbers(RideModel.Of(cars[0], loads[0])), Numbers(RideModel.Of(cars[1], loads[1])));
        var way = Followed(share => Squares([.. from.Zip(to, (a, b) => a + (share * (b - a)))]), aboard);
        Assert.All(way, r => Assert.True(Math.Abs(r.First - r.Second) > 0.05));
        var study = JointStudy.Of([.. cars.Zip(loads, CarDoubts.Of)], RestCatalogue.Body, 10, 1);
        double Change(string key) => study.Changes[0].Single(r => r.Measure.Key == key).Stated;
        Assert.Equal(way[^1].First - way[0].First, Change("first-mode"), 1e-9);
        Assert.Equal(way[^1].Second - way[0].Second, Change("second-mode"), 1e-9);
        Assert.True(way[0].First < way[0].Second && way[^1].First < way[^1].Second);
    }

    /// <summary>
    /// With an index of 1 each axle has its own mode; softer rear springs make the rear's the slower one, and the front's
    /// stays first.
    /// A hair beside 1 the two roots only nearly meet, and it is the same car.
    /// </summary>
    [Theory]
    [InlineData(1.0)]
    [InlineData(0.999)]
    [InlineData(1.001)]
    public void Modes_that_cross_are_followed_through(double index)
    {
        var car = PlainCar.Saloon with
        {
            Body = PlainCar.Saloon.Body with { DynamicIndex = new(index) },
            Rear = PlainCar.RearAxle with { Spring = new Spring { Law = new LinearSpring { Rate = new(32000.0) } } },
        };
        var softer = car with { Rear = PlainCar.RearAxle with { Spring = new Spring { Law = new LinearSpring { Rate = new(12000.0) } } } };
        var (before, after) = (BodyModes.Of(RideModel.Of(car)), BodyModes.Of(RideModel.Of(softer)).Like(BodyModes.Of(RideModel.Of(car))));
        Assert.Equal((BodySwing.FrontEnd, BodySwing.RearEnd), (before.First.Swing, before.Second.Swing));
        Assert.Equal((BodySwing.FrontEnd, BodySwing.RearEnd), (after.First.Swing, after.Second.Swing));
        Assert.True(before.First.Frequency < before.Second.Frequency && after.First.Frequency > after.Second.Frequency);
        Assert.Equal(before.First.Frequency, after.First.Frequency, 0.002);
    }

    private static void Expect(IReadOnlyList<(double First, double Second)> roots, BodyModes modes)
    {
        Assert.Equal(roots[^1].First, modes.First.Frequency, 1e-9);
        Assert.Equal(roots[^1].Second, modes.Second.Frequency, 1e-9);
    }

    private static IReadOnlyList<(double First, double Second)> Roots(Car car, LoadState load)
    {
        double[] At(double share) => Squares(Numbers(RideModel.Of(car, load with
        {
            Loads = [.. share > 0.0 ? load.Loads.Select(l => l with { Mass = new(share * l.Mass.Si) }) : []],
        })));
        var empty = At(0.0);
        return Followed(At, (Hertz(empty[0]), Hertz(empty[1])));
    }

    // From the first pair on, each square near where the last two steps point.
    private static List<(double First, double Second)> Followed(Func<double, double[]> squares, (double First, double Second) from)
    {
        var start = squares(0.0);
        var (one, other) = from.First < from.Second ? (start[0], start[1]) : (start[1], start[0]);
        var (oneBefore, otherBefore) = (one, other);
        var way = new List<(double, double)> { (Hertz(one), Hertz(other)) };
        for (var step = 1; step <= Steps; step++)
        {
            var now = squares((double)step / Steps);
            var (toOne, toOther) = ((2.0 * one) - oneBefore, (2.0 * other) - otherBefore);
            var straight = Math.Abs(now[0] - toOne) + Math.Abs(now[1] - toOther);
            var crossed = Math.Abs(now[1] - toOne) + Math.Abs(now[0] - toOther);
            (oneBefore, otherBefore) = (one, other);
            (one, other) = straight <= crossed ? (now[0], now[1]) : (now[1], now[0]);
            way.Add((Hertz(one), Hertz(other)));
        }

        return way;
    }

    // Mass, inertia, arms to the axles, both axles' rates on their tyres, gravity's moment.
    private static double[] Numbers(RideModel model)
    {
        double Axle(int at)
        {
            var rates = model.Tangent.SuspensionRate;
            int[] wheels = [2 * at, (2 * at) + 1];
            var springs = wheels.Sum(i => wheels.Sum(j => rates[i, j]));
            var tyres = (model.Rolls ? 2.0 : 1.0) * model.Car.Axles[at].Tyre.Rate.Si;
            return springs * tyres / (springs + tyres);
        }

        return [model.Body.Mass, model.Body.PitchInertia, model.X[0], -model.X[2], Axle(0), Axle(1), model.PitchGravity];
    }

    // Roots of ω⁴ − (A + D)·ω² + A·D − B·C = 0 of the equations of heave and pitch, the smaller first.
    private static double[] Squares(double[] n)
    {
        var (m, inertia, b, c, front, rear, gravity) = (n[0], n[1], n[2], n[3], n[4], n[5], n[6]);
        var (heave, pitch) = ((front + rear) / m, ((b * b * front) + (c * c * rear) - gravity) / inertia);
        var coupling = ((b * front) - (c * rear)) * ((b * front) - (c * rear)) / (m * inertia);
        var root = Math.Sqrt(((heave - pitch) * (heave - pitch)) + (4.0 * coupling));
        return [0.5 * (heave + pitch - root), 0.5 * (heave + pitch + root)];
    }

    private static double Hertz(double square) => Math.Sqrt(square) / (2.0 * Math.PI);

    private static Car Garage(string name) => CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", $"{name}.yaml")).Value!;
}
