using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.Rides;

public class RandomPassTests
{
    private static readonly RoadSpectrum ClassC = RoadSpectrum.Of(RoadClass.C);

    private static readonly RandomPassOptions Few = RandomPassOptions.Default with { Roads = 6, LeadTime = 4.0 };

    [Fact]
    public void A_linear_car_in_time_meets_its_frequency_response_within_chance()
    {
        var model = RideModel.Of(RandomResponseTests.Even(1.5));
        var pass = RandomPass.Of(model, ClassC, 20.0, RandomPassOptions.Default with { Roads = 12 });
        var response = RandomResponse.Of(model, ClassC, 20.0, RandomOptions.Default with { Tracks = pass.Tracks });
        foreach (var signal in EverySignal.Of(model))
        {
            var reading = pass.Of(signal, 0.999);
            Assert.InRange(response.Rms(signal), reading.Low, reading.High);
            Assert.InRange(reading.High / reading.Low, 1.001, 2.5);
        }
    }

    [Fact]
    public void Rebound_stiff_dampers_pull_the_car_down_in_time_as_predicted()
    {
        var model = RideModel.Of(PlainCar.Saloon);
        var pass = RandomPass.Of(model, ClassC, 20.0, Few);
        var response = RandomResponse.Of(model, ClassC, 20.0, RandomOptions.Default with { Tracks = pass.Tracks });
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(response.MeanTravel(i), pass.Of(RideSignal.Travel(model, i)).Mean, 0.15 * response.MeanTravel(i));
        }
    }

    /// <summary>
    /// What linearisation itself misses, chance taken off: the same road under the nonlinear car and under a linear one, against the same two by
    /// frequency. An independent implementation of the same method found 1.4 to 3.1 % on another car.
    /// </summary>
    [Fact]
    public void Equivalent_linearisation_is_a_few_percent_off_a_kinked_car()
    {
        var kinked = RideModel.Of(KinkedCar.Of());
        var straight = RideModel.Of(RandomResponseTests.Even(1.5));
        var (kinkedPass, straightPass) = (RandomPass.Of(kinked, ClassC, 20.0, Few), RandomPass.Of(straight, ClassC, 20.0, Few));
        var options = RandomOptions.Default with { Tracks = kinkedPass.Tracks };
        var (kinkedResponse, straightResponse) = (
            RandomResponse.Of(kinked, ClassC, 20.0, options), RandomResponse.Of(straight, ClassC, 20.0, options));
        Assert.Equal(RandomOutcome.Converged, kinkedResponse.Outcome);
        Assert.Empty(kinkedResponse.Cautions);
        var misses = new List<double>();
        foreach (var signal in EverySignal.Of(kinked))
        {
            var inTime = kinkedPass.Of(signal).Rms / straightPass.Of(signal).Rms;
            var byFrequency = kinkedResponse.Rms(signal) / straightResponse.Rms(signal);
            misses.Add((byFrequency / inTime) - 1.0);
            Assert.InRange(misses[^1], -0.06, 0.06);
        }

        // It is an approximation: nobody should take it for the pass.
        Assert.Contains(misses, m => Math.Abs(m) > 0.005);
    }
}
