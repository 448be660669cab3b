using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.Rides;

public class RandomResponseTests
{
    private static readonly RoadSpectrum ClassC = RoadSpectrum.Of(RoadClass.C);

    [Fact]
    public void A_car_without_bends_needs_one_solution()
    {
        var response = RandomResponse.Of(RideModel.Of(Even(2.0)), ClassC, 20.0);
        Assert.Equal(RandomOutcome.Linear, response.Outcome);
        Assert.Equal(0, response.Passes);
        Assert.True(response.RelativeError < 1e-6);
        Assert.Equal(0.0, response.MeanHeave);
    }

    [Fact]
    public void A_linear_car_doubles_its_answer_when_the_road_does()
    {
        var model = RideModel.Of(Even(2.0));
        var (one, four) = (
            RandomResponse.Of(model, ClassC, 20.0), RandomResponse.Of(model, ClassC with { Density = new(4.0 * ClassC.Density.Si) }, 20.0));
        foreach (var signal in EverySignal.Of(model))
        {
            Assert.Equal(2.0, four.Rms(signal) / one.Rms(signal), 1e-9);
        }
    }

    [Fact]
    public void The_density_integrates_to_the_mean_square()
    {
        var model = RideModel.Of(Even(2.0));
        var response = RandomResponse.Of(model, ClassC, 20.0);
        var density = response.Density(RideSignal.HeaveAcceleration);
        var sum = 0.0;
        for (var k = 1; k < density.Count; k++)
        {
            sum += 0.5 * (density[k] + density[k - 1]) * (response.Frequencies[k] - response.Frequencies[k - 1]);
        }

        Assert.Equal(response.Rms(RideSignal.HeaveAcceleration), Math.Sqrt(sum), 2e-3 * Math.Sqrt(sum));
    }

    [Fact]
    public void Two_slopes_through_zero_act_as_their_mean_and_pull_the_car_down()
    {
        // F = c_b·v or c_r·v: E[F′] = (c_b + c_r)/2 at every level, E[F] = −(c_r − c_b)·σ/√(2π).
        var model = RideModel.Of(PlainCar.Saloon);
        var response = RandomResponse.Of(model, ClassC, 20.0);
        Assert.Equal(RandomOutcome.Converged, response.Outcome);
        var atTrim = RandomResponse.Of(model, ClassC, 20.0, RandomOptions.Default with { AtOwnLevel = false });
        Assert.Equal(RandomOutcome.Linear, atTrim.Outcome);
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(atTrim.Rms(RideSignal.Travel(model, i)), response.Rms(RideSignal.Travel(model, i)), 1e-8);
            var sigma = response.Rms(RideSignal.TravelRate(model, i));
            var rate = i < 2 ? 21000.0 : 24000.0;
            Assert.Equal(1000.0 * sigma / Math.Sqrt(2.0 * Math.PI) / rate, response.MeanTravel(i), 1e-7);
            Assert.InRange(response.MeanTravel(i), 1e-3, 20e-3);
        }

        Assert.True(response.MeanHeave < 0.0);
    }

    [Fact]
    public void Every_car_settles_on_every_road_and_balances_its_mean_forces()
    {
        Gen.Select(AnyCar.Any, Gen.Double[5.0, 30.0], Gen.Int[0, 2]).Sample((car, speed, grade) =>
        {
            var response = RandomResponse.Of(
                RideModel.Of(car), RoadSpectrum.Of(RoadClass.All[grade]), speed, RandomOptions.Default with { Tolerance = 1e-4 });
            Assert.True(response.Outcome is RandomOutcome.Converged or RandomOutcome.Linear, response.OutcomeSentence);
            Assert.All(EverySignal.Of(response.Model), s => Assert.True(response.Rms(s) > 0.0 || s.Name.Contains("roll"), s.Name));
        }, iter: 25);
    }

    [Fact]
    public void Rough_roads_settle_too_unless_a_car_has_no_mean_position_there()
    {
        // The same 25 cars every time. What is left are gas springs that such a road would press to nothing.
        var chance = new PCG(7, 12345);
        var settled = 0;
        for (var k = 0; k < 25; k++)
        {
            var model = RideModel.Of(AnyCar.Any.Generate(chance, null, out _));
            foreach (var rough in new[] { RoadClass.E, RoadClass.F, RoadClass.G, RoadClass.H })
            {
                var response = RandomResponse.Of(model, RoadSpectrum.Of(rough), 15.0);
                settled += response.Outcome == RandomOutcome.NotConverged ? 0 : 1;
                Assert.True(
                    response.Outcome != RandomOutcome.NotConverged
                    || model.Numbers.Elements.All.Any(element => element.OnTravel.Any(law => law is Heaveline.Elements.GasLaw)),
                    $"car {k} on {rough}");
            }
        }

        Assert.InRange(settled, 85, 100);
    }

    [Theory]
    [InlineData(22.0)]
    [InlineData(60.0)]
    public void The_roughest_class_has_an_answer_with_its_caution_and_a_car_on_gas_is_refused_there(double speed)
    {
        var fern = RandomResponse.Of(RideModel.Of(GasFern.Fern, GasFern.Fern.LoadStates[0]), RoadSpectrum.Of(RoadClass.H), speed);
        Assert.Equal(RandomOutcome.Converged, fern.Outcome);
        Assert.Equal("lift-off", Assert.Single(fern.Cautions).Id);
        var gas = RandomResponse.Of(RideModel.Of(GasFern.OnGas, GasFern.OnGas.LoadStates[0]), RoadSpectrum.Of(RoadClass.H), speed);
        Assert.Equal(RandomOutcome.NotConverged, gas.Outcome);
        Assert.Contains("No number", gas.OutcomeSentence);
    }

    [Fact]
    public void A_gentle_road_leaves_a_car_without_friction_at_its_tangent()
    {
        var gentle = new RoadSpectrum { Density = new(1e-16) };
        AnyCar.Any.Sample(drawn =>
        {
            var model = RideModel.Of(
                drawn with { Front = drawn.Front with { Friction = Friction.None }, Rear = drawn.Rear with { Friction = Friction.None } });
            var own = RandomResponse.Of(model, gentle, 20.0, RandomOptions.Default with { Tolerance = 1e-4 });
            var trim = RandomResponse.Of(model, gentle, 20.0, RandomOptions.Default with { AtOwnLevel = false, Tolerance = 1e-4 });
            foreach (var signal in EverySignal.Of(model))
            {
                Assert.Equal(trim.Rms(signal), own.Rms(signal), 2e-3 * trim.Rms(signal));
            }
        }, iter: 15);
    }

    [Fact]
    public void One_track_does_not_roll_an_even_car_and_unlike_tracks_do()
    {
        var model = RideModel.Of(Even(2.0));
        var one = RandomResponse.Of(model, ClassC, 20.0, RandomOptions.Default with { Tracks = new TrackCoherence { Track = new(0.0) } });
        var two = RandomResponse.Of(model, ClassC, 20.0);
        Assert.True(one.Rms(RideSignal.Roll) < 1e-9 * one.Rms(RideSignal.Pitch));
        Assert.True(two.Rms(RideSignal.Roll) > 0.1 * two.Rms(RideSignal.Pitch));
        Assert.True(one.Rms(RideSignal.Heave) > two.Rms(RideSignal.Heave));
    }

    [Fact]
    public void Equal_wheel_tracks_are_the_same_road_as_two_stated_tracks()
    {
        var model = RideModel.Of(Even(2.0));
        var free = RandomResponse.Of(model, ClassC, 20.0);
        var stated = RandomResponse.Of(model, ClassC, 20.0, RandomOptions.Default with { Tracks = new TrackCoherence { Track = new(1.5) } });
        foreach (var signal in EverySignal.Of(model))
        {
            Assert.Equal(free.Rms(signal), stated.Rms(signal), 1e-9 * free.Rms(signal));
        }
    }

    [Fact]
    public void The_waves_of_four_unlike_tracks_make_their_coherences()
    {
        var car = PlainCar.Saloon with { Rear = PlainCar.RearAxle with { Track = new(1.3) } };
        var model = RideModel.Of(car, PlainCar.With(80.0, 1.2, left: 0.3));
        var drive = new RoadDrive(model, ClassC, null);
        foreach (var n in new[] { 0.02, 0.2, 2.0 })
        {
            var (gamma, waves) = (drive.Together(n), drive.Waves(n));
            for (var i = 0; i < 4; i++)
            {
                for (var j = 0; j < 4; j++)
                {
                    var cross = waves.Aggregate(System.Numerics.Complex.Zero, (sum, w) => sum + (w[i] * System.Numerics.Complex.Conjugate(w[j])));
                    var back = (i < 2 ? 0.0 : 2.6) - (j < 2 ? 0.0 : 2.6);
                    var expected = gamma[i, j] * System.Numerics.Complex.FromPolarCoordinates(1.0, -2.0 * Math.PI * n * back);
                    Assert.Equal(0.0, (cross - expected).Magnitude, 1e-12);
                }
            }
        }
    }

    [Fact]
    public void A_road_that_lifts_wheels_is_cautioned_about()
    {
        var model = RideModel.Of(Even(2.0));
        Assert.Empty(RandomResponse.Of(model, RoadSpectrum.Of(RoadClass.B), 20.0).Cautions);
        var rough = RandomResponse.Of(model, RoadSpectrum.Of(RoadClass.E), 20.0);
        var caution = Assert.Single(rough.Cautions);
        Assert.Equal("lift-off", caution.Id);
        Assert.Contains("Those wheels leave the road", caution.Text);
    }

    /// <summary>
    /// Against the car in time: wherever no friction is told to stick travel is within a tenth of it or the interval of chance, and where it is told
    /// travel comes out too small.
    /// </summary>
    [Theory]
    [InlineData('A', 30.0, 300.0, true)]
    [InlineData('A', 100.0, 200.0, true)]
    [InlineData('A', 100.0, 50.0, false)]
    [InlineData('B', 30.0, 50.0, false)]
    [InlineData('C', 30.0, 100.0, false)]
    public void Friction_that_sticks_is_cautioned_about(char letter, double kilometresPerHour, double newtons, bool sticks)
    {
        var friction = new Friction { HalfWidth = new(newtons) };
        var model = RideModel.Of(PlainCar.Saloon with
        {
            Front = PlainCar.FrontAxle with { Friction = friction },
            Rear = PlainCar.RearAxle with { Friction = friction },
        });
        var roadClass = letter switch
        {
            'A' => RoadClass.A,
            'B' => RoadClass.B,
            _ => RoadClass.C,
        };
        var (road, speed) = (RoadSpectrum.Of(roadClass), kilometresPerHour / 3.6);
        var pass = RandomPass.Of(model, road, speed, RandomPassOptions.Default with { Roads = 6 });
        var response = RandomResponse.Of(model, road, speed, RandomOptions.Default with { Tracks = pass.Tracks });
        var travel = response.Rms(RideSignal.Travel(model, 0)) / pass.Of(RideSignal.Travel(model, 0)).Rms;
        if (sticks)
        {
            var caution = Assert.Single(response.Cautions);
            Assert.Equal("sticking-friction", caution.Id);
            Assert.Contains(FormattableString.Invariant($"front {newtons:F0} N, "), caution.Text);
            Assert.True(travel < 0.85);
        }
        else
        {
            Assert.Empty(response.Cautions);
            Assert.InRange(travel, 0.9, 1.1);
        }
    }

    [Fact]
    public void A_car_without_friction_or_on_a_rough_road_is_not_cautioned_about_it()
    {
        foreach (var roadClass in new[] { RoadClass.A, RoadClass.B, RoadClass.C })
        {
            Assert.Empty(RandomResponse.Of(RideModel.Of(PlainCar.Saloon), RoadSpectrum.Of(roadClass), 10.0).Cautions);
        }
    }

    // The plain saloon with straight dampers: their rate in bump and rebound, kN s/m.
    internal static Car Even(double slope)
    {
        var damper = new Damper
        {
            Law = new TableDamper(
                new ForceTable([1.0, 2.0], [1000.0 * slope, 2000.0 * slope]), new ForceTable([1.0, 2.0], [1000.0 * slope, 2000.0 * slope])),
        };
        return PlainCar.Saloon with { Front = PlainCar.FrontAxle with { Damper = damper }, Rear = PlainCar.RearAxle with { Damper = damper } };
    }
}
