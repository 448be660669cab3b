using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Files.Roads;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Tests.House;
using Heaveline.Ties;

namespace Heaveline.Tests.Ties;

public class TieFitTests
{
    private static readonly Car Saloon = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!;
    private static readonly LoadState Laden = Saloon.LoadStates.Single(l => l.Name == "four up with luggage");
    private static readonly Road Hump = NamedRoads.All["village-hump"];

    // 90 % intervals: 8 cars and 6 numbers are 48 chances, of which 38 or fewer would be held once in 70 times. Bench `ties` runs 100 cars.
    [Fact]
    public void Intervals_hold_what_was_planted()
    {
        var (held, all, believed) = (0, 0, 0);
        for (ulong seed = 1; seed <= 8; seed++)
        {
            var planted = PlantedTies.Of(Saloon, Laden, Hump, PlantedTies.At(8, 15, 25, 35), seed)!;
            var fit = TieFit.Of(Saloon, Laden, Hump, planted.Readings);
            held += fit.Estimates.Zip(planted.Truth, (e, truth) => truth >= e.Low && truth <= e.High ? 1 : 0).Sum();
            all += planted.Truth.Length;
            believed += fit.IsBelieved ? 1 : 0;
        }

        Assert.Equal(48, all);
        Assert.InRange(held, 39, 48);
        Assert.InRange(believed, 7, 8);
    }

    [Fact]
    public void Weak_front_dampers_are_found_and_said()
    {
        var planted = PlantedTies.Of(Saloon, Laden, Hump, PlantedTies.At(8, 15, 25, 35), 3, [Math.Log(0.6) / TieScale.LeastDamping, 0, 0, 0, 0, 0])!;
        var front = TieFit.Of(Saloon, Laden, Hump, planted.Readings).Estimates[0];
        Assert.Equal((TieNumber.Damping, AxleEnd.Front, TieRefusal.None), (front.Number, front.End, front.Refusal));
        Assert.Equal(0.6, planted.Truth[0], 1e-9);
        Assert.InRange(0.6, front.Low, front.High);
        Assert.True(front.High < 1.0, $"{front.High}");
    }

    [Fact]
    public void Ties_of_exchanged_axles_are_no_ties_of_this_car()
    {
        var planted = PlantedTies.Of(Saloon, Laden, Hump, PlantedTies.At(10, 20, 30), 1, new double[6])!;
        var fit = TieFit.Of(Saloon, Laden, Hump, planted.Readings.Swapped);
        Assert.False(fit.IsBelieved);
        Assert.True(fit.FitsSwapped);
        Assert.All(fit.Estimates, e => Assert.Equal(TieRefusal.Misfit, e.Refusal));
        Assert.Null(fit.Advice);
    }

    [Fact]
    public void Ties_of_another_obstacle_are_no_ties_of_this_one()
    {
        var planted = PlantedTies.Of(Saloon, Laden, Hump, PlantedTies.At(8, 15, 25, 35), 1, new double[6])!;
        Assert.True(TieFit.Of(Saloon, Laden, Hump, planted.Readings).IsBelieved);
        Assert.False(TieFit.Of(Saloon, Laden, NamedRoads.All["village-hump-100"], planted.Readings).IsBelieved);
        Assert.False(TieFit.Of(Saloon, Laden, NamedRoads.All["plank"], planted.Readings).IsBelieved);
    }

    // The rear damper moves 39 mm for 50 mm at the wheel (the car file), from where the loaded car stands.
    [Fact]
    public void A_tie_shows_the_wheels_travel_by_the_dampers_ratio()
    {
        var fit = TieFit.Of(Saloon, Laden, Hump, PlantedTies.At(20));
        var model = RideModel.Of(Saloon, Laden);
        var bump = WheelMeasures.Of(Pass.Of(model, Hump, 20.0 / 3.6))[2].Bump;
        Assert.Equal(39.0 / 50.0 * (bump - model.Trim.Travel[2]), fit.Matches[1].ByFile, 1e-5);
    }

    // A driver alone leans the saloon: its left wheels stand deeper and go farther than its right ones, each from its own place.
    [Theory]
    [InlineData("village-hump")]
    [InlineData("cable-cover-right")]
    public void Of_the_ties_of_a_leaning_car_the_axles_is_the_farther_of_the_wheels(string over)
    {
        var road = NamedRoads.All.GetValueOrDefault(over) ?? RoadFile.Load(Path.Combine(Checkout.Root, "examples", "roads", $"{over}.yaml")).Value!;
        var driver = Saloon.LoadStates.Single(l => l.Name == "driver");
        TiePlace[] places = [TiePlace.Front, TiePlace.Rear, TiePlace.FrontLeft, TiePlace.FrontRight, TiePlace.RearLeft, TiePlace.RearRight];
        var asked = new TieReadings
        {
            Passes =
            [
                new TiePass
                {
                    Speed = new(20.0 / 3.6),
                    Readings = [.. places.Select(p => new TieReading { Place = p, Travel = new(0.03) })],
                },
            ],
        };
        double[] shown = [.. TieFit.Of(Saloon, driver, road, asked).Matches.Select(m => m.ByFile)];

        var model = RideModel.Of(Saloon, driver);
        Assert.True(model.Trim.Travel[0] > model.Trim.Travel[1] + 0.002, "it leans");
        var pass = Pass.Of(model, road, 20.0 / 3.6);
        double[] rods =
        [
            .. Enumerable.Range(0, 4).Select(i =>
                Saloon.Axles[i / 2].Damper.MotionRatio.AtReference.Si * (WheelMeasures.Of(pass)[i].Bump - model.Trim.Travel[i])),
        ];
        Assert.Equal(rods, shown[2..], (a, b) => Math.Abs(a - b) < 2e-5);
        Assert.Equal(Math.Max(shown[2], shown[3]), shown[0], 1e-9);
        Assert.Equal(Math.Max(shown[4], shown[5]), shown[1], 1e-9);
    }

    [Fact]
    public void A_tie_that_went_as_far_as_it_could_pulls_one_way_only()
    {
        var planted = PlantedTies.Of(Saloon, Laden, Hump, PlantedTies.At(10, 20, 30), 1, new double[6])!.Readings;
        TieReadings With(double least) => planted with
        {
            Passes = [.. planted.Passes.Select((p, k) => k > 0 ? p : p with
            {
                Readings = [p.Readings[0] with { Travel = new Amount<Length>(least), IsAtLeast = true }, p.Readings[1]],
            })],
        };
        var (low, lower) = (TieFit.Of(Saloon, Laden, Hump, With(0.005)), TieFit.Of(Saloon, Laden, Hump, With(0.001)));
        Assert.Equal(lower.Estimates.Select(e => e.Value), low.Estimates.Select(e => e.Value));
        Assert.Equal(0.0, low.Matches[0].Miss);
        var high = TieFit.Of(Saloon, Laden, Hump, With(0.034));
        Assert.True(high.Estimates[0].Value < low.Estimates[0].Value, "a tie farther than the car goes asks for weaker dampers");
    }

    // Heights before and after the load: the springs carry what the load adds, so that a softer spring sinks farther.
    [Fact]
    public void Heights_and_swings_tell_the_springs()
    {
        var asked = PlantedTies.At(10, 20, 30) with
        {
            Heights = [new AxleHeights { End = AxleEnd.Rear, Before = new(0.392, new Doubt(1e-3)), After = new(0.35, new Doubt(1e-3)) }],
            Swings = [new AxleSwings { End = AxleEnd.Rear, Count = new(3.0, new Doubt(0.1)), Time = new(3.0, new Doubt(0.05)) }],
        };
        var spread = TieScale.Of(Saloon, asked).Single(s => s.Number == TieNumber.Spring).Spread;
        Assert.Equal(TieScale.LeastSpring, spread);
        var planted = PlantedTies.Of(Saloon, Laden, Hump, asked, 2, [0, 0, 0, 0, 0, 0, Math.Log(0.88) / spread])!;
        var spring = TieFit.Of(Saloon, Laden, Hump, planted.Readings).Estimates[^1];
        Assert.Equal((TieNumber.Spring, AxleEnd.Rear), (spring.Number, spring.End));
        Assert.InRange(0.88, spring.Low, spring.High);
        Assert.True(spring.High < 1.0, $"{spring.High}");
    }

    [Fact]
    public void Two_readings_of_a_plank_say_nothing_and_name_what_would()
    {
        var planted = PlantedTies.Of(Saloon, Laden, NamedRoads.All["short-bump"], PlantedTies.At(30), 1, new double[6])!;
        var fit = TieFit.Of(Saloon, Laden, NamedRoads.All["short-bump"], planted.Readings);
        Assert.True(fit.IsBelieved);
        Assert.DoesNotContain(fit.Estimates, e => e.IsSaid);
        Assert.NotNull(fit.Advice);
        Assert.True(fit.Advice.Learned > fit.Estimates.Single(e => e.Number == fit.Advice.Number && e.End == fit.Advice.End).Learned);
    }

    [Fact]
    public void An_axle_without_ties_is_not_spoken_of()
    {
        var asked = PlantedTies.At(10, 20, 30);
        asked = asked with { Passes = [.. asked.Passes.Select(p => p with { Readings = [p.Readings[0]] })] };
        var fit = TieFit.Of(Saloon, Laden, Hump, PlantedTies.Of(Saloon, Laden, Hump, asked, 1, new double[6])!.Readings);
        Assert.All(fit.Estimates.Where(e => e.End == AxleEnd.Rear), e => Assert.Equal(TieRefusal.NoTie, e.Refusal));
    }

    [Fact]
    public void A_reading_whose_doubt_has_no_bound_is_refused_as_it_is_read_on_a_rod()
    {
        var refused = Assert.Throws<RefusedValueException>(
            () => new TieReading { Place = TiePlace.Front, Travel = new(0.012, new Doubt(1e6)) });
        Assert.Contains("12 mm ± 1000000000 mm", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_does_not_go_together_is_refused()
    {
        var city = CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", "thimble-city-car.yaml")).Value!;
        Assert.Contains("damper", Refused(city, LoadState.Reference, Hump, PlantedTies.At(20)), StringComparison.Ordinal);
        Assert.Contains("obstacle", Refused(Saloon, Laden, Road.Flat, PlantedTies.At(20)), StringComparison.Ordinal);
        var heights = PlantedTies.At(20) with { Heights = [new AxleHeights { End = AxleEnd.Front, Before = new(0.4), After = new(0.38) }] };
        Assert.Contains("load", Refused(Saloon, LoadState.Reference, Hump, heights), StringComparison.Ordinal);
        var moves = PlantedTies.At(20) with { FrontRatio = MotionRatio.One };
        Assert.Contains("front-damper-moves", Refused(Saloon, Laden, Hump, moves), StringComparison.Ordinal);
    }

    private static string Refused(Car car, LoadState load, Road road, TieReadings readings)
    {
        var refused = Assert.Throws<RefusedValueException>(() => TieFit.Of(car, load, road, readings));
        return refused.Message + refused.Advice + refused.Limit;
    }
}
