using CsCheck;
using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Tests.Passes;
using MathNet.Numerics.Distributions;

namespace Heaveline.Tests.Rides;

/// <summary>Cars under loads of one side on random roads: every wheel of its own, against time and the mirror.</summary>
public class OneSidedRandomTests
{
    private static readonly RoadSpectrum ClassC = RoadSpectrum.Of(RoadClass.C);

    // A heavy driver far out, so that the sides differ by more than chance.
    private static readonly LoadState Aside = PlainCar.With(160.0, 1.1, left: 0.5, height: 0.7);

    [Fact]
    public void Every_wheel_of_a_linear_car_in_time_meets_its_response_within_chance()
    {
        var (model, pass, response) = Linear(12, 12.0);
        Assert.NotEqual(1.0, response.Rms(RideSignal.Travel(model, 0)) / response.Rms(RideSignal.Travel(model, 1)), 5e-3);
        foreach (var signal in EverySignal.Of(model))
        {
            var reading = pass.Of(signal, 0.999);
            Assert.InRange(response.Rms(signal), reading.Low, reading.High);
            Assert.InRange(reading.High / reading.Low, 1.001, 2.5);
        }
    }

    [Fact]
    public void Its_spectra_in_time_are_those_of_the_response_band_by_band()
    {
        var (model, pass, response) = Linear(24, 20.0);
        RideSignal[] signals =
        [
            RideSignal.HeaveAcceleration, RideSignal.PitchAcceleration, RideSignal.RollAcceleration,
            RideSignal.TyreLoad(model, 0), RideSignal.TyreLoad(model, 1), RideSignal.TyreLoad(model, 3),
        ];
        foreach (var signal in signals)
        {
            foreach (var middle in new[] { 1.0, 1.6, 2.5, 4.0, 6.3, 10.0, 16.0 })
            {
                var share = Band(middle);
                double[] powers = [.. pass.Passes.Select(p => Power(p, signal, share))];
                var (mean, count) = (powers.Average(), powers.Length);
                var scatter = Math.Sqrt(powers.Sum(v => (v - mean) * (v - mean)) / (count * (count - 1.0)));
                // Of 42 such intervals one in ten thousand misses by chance.
                var reach = scatter * StudentT.InvCDF(0.0, 1.0, count - 1.0, 1.0 - 0.5e-4);
                var expected = Math.Pow(response.Rms(signal, share), 2);
                Assert.True(Math.Abs(expected - mean) <= reach, $"{signal.Name} at {middle} Hz: {expected:G4} against {mean:G4} ± {reach:G2}");
                Assert.True(reach < mean, "The test would see nothing.");
            }
        }
    }

    /// <summary>What linearisation itself misses, chance taken off by a linear car under the same load on the same roads.</summary>
    [Fact]
    public void Dampers_and_stops_that_bend_bend_at_each_corner_by_its_own_mean()
    {
        var (kinked, straight) = (RideModel.Of(KinkedCar.Of(), Aside), RideModel.Of(RandomResponseTests.Even(1.5), Aside));
        var few = RandomPassOptions.Default with { Roads = 8, LeadTime = 4.0 };
        var (kinkedPass, straightPass) = (RandomPass.Of(kinked, ClassC, 20.0, few), RandomPass.Of(straight, ClassC, 20.0, few));
        var options = RandomOptions.Default with { Tracks = kinkedPass.Tracks };
        var (bent, plain) = (RandomResponse.Of(kinked, ClassC, 20.0, options), RandomResponse.Of(straight, ClassC, 20.0, options));
        Assert.Equal(RandomOutcome.Converged, bent.Outcome);
        foreach (var signal in EverySignal.Of(kinked))
        {
            var inTime = kinkedPass.Of(signal).Rms / straightPass.Of(signal).Rms;
            Assert.InRange(bent.Rms(signal) / plain.Rms(signal) / inTime, 0.94, 1.06);
        }

        for (var i = 0; i < 4; i++)
        {
            var mean = kinkedPass.Of(RideSignal.Travel(kinked, i)).Mean;
            Assert.Equal(mean, bent.MeanTravel(i), 0.15 * Math.Abs(mean));
        }

        // The bump stop of the laden corner is met sooner.
        Assert.True(kinked.Trim.Travel[0] - kinked.Trim.Travel[1] > 2e-3);
        Assert.NotEqual(1.0, bent.MeanTravel(0) / bent.MeanTravel(1), 0.02);
    }

    [Fact]
    public void A_mirrored_car_has_the_mirrored_answers()
    {
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads, Gen.Double[8.0, 30.0]).Sample((car, load, speed) =>
        {
            RandomResponse Of(Car which, LoadState under) =>
                RandomResponse.Of(RideModel.Of(which, under), ClassC, speed, RandomOptions.Default with { Tolerance = 1e-4 });
            var (here, there) = (Of(car, load), Of(AnyCar.Mirrored(car), AnyCar.Mirrored(load)));
            Assert.Equal(here.Outcome, there.Outcome);
            Assert.Equal(1.0, there.Rms(RideSignal.PitchAcceleration) / here.Rms(RideSignal.PitchAcceleration), 1e-6);
            for (var i = 0; i < 4; i++)
            {
                Assert.Equal(1.0, there.Rms(RideSignal.Travel(there.Model, i ^ 1)) / here.Rms(RideSignal.Travel(here.Model, i)), 1e-6);
                Assert.Equal(1.0, there.LoadVariation(i ^ 1) / here.LoadVariation(i), 1e-6);
                Assert.Equal(here.MeanTravel(i), there.MeanTravel(i ^ 1), 1e-8);
            }

            // And so has every number of the table: none is of the left side alone.
            foreach (var measure in RideCatalogue.Of(car))
            {
                var (a, b) = (measure.Of(new CarOnRoad(here)), measure.Of(new CarOnRoad(there)));
                Assert.True(Math.Abs(a - b) <= 1e-6 * Math.Abs(a) + 1e-9, measure.Key);
            }
        }, iter: 12);
    }

    private static (RideModel Model, RandomPass Pass, RandomResponse Response) Linear(int roads, double duration)
    {
        var model = RideModel.Of(RandomResponseTests.Even(1.5), Aside);
        var pass = RandomPass.Of(model, ClassC, 20.0, RandomPassOptions.Default with { Roads = roads, Duration = duration });
        return (model, pass, RandomResponse.Of(model, ClassC, 20.0, RandomOptions.Default with { Tracks = pass.Tracks }));
    }

    // A third of an octave to each side, falling off smoothly.
    private static Func<double, double> Band(double middle) => f =>
    {
        var octaves = 3.0 * Math.Log2(f / middle);
        return Math.Abs(octaves) < 1.0 ? Math.Cos(0.5 * Math.PI * octaves) : 0.0;
    };

    // Mean square of what a band leaves of the last part of a pass, under a Hann window.
    private static double Power(Pass pass, RideSignal signal, Func<double, double> share)
    {
        const double LeadTime = 8.0;
        var trace = pass.Trace(signal).AsSpan()[pass.Time.Count(t => t < LeadTime)..].ToArray();
        var (n, mean, step) = (trace.Length, trace.Average(), pass.Time[1] - pass.Time[0]);
        double[] window = [.. Enumerable.Range(0, n).Select(k => 0.5 - (0.5 * Math.Cos(2.0 * Math.PI * k / n)))];
        var lines = RealFourier.Of([.. trace.Select((v, k) => (v - mean) * window[k])]);
        var sum = 0.0;
        for (var k = 1; k < lines.Length - 1; k++)
        {
            var weight = share(k / (n * step));
            sum += weight * weight * 2.0 * Math.Pow(lines[k].Magnitude, 2);
        }

        return sum / (n * window.Sum(w => w * w));
    }
}
