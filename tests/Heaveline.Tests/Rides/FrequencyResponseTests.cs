using System.Collections.Immutable;
using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Tests.Passes;
using Complex = System.Numerics.Complex;

namespace Heaveline.Tests.Rides;

public class FrequencyResponseTests
{
    [Fact]
    public void A_sine_road_driven_in_time_shows_every_transfer_function()
    {
        Gen.Select(AnyCar.Linear, Gen.Double[0.6, 12.0], Gen.Double[6.0, 35.0], Gen.Double[0.3, 2.8]).Sample((car, hertz, speed, lag) =>
        {
            var model = RideModel.Of(WithContact(car, 0.15));
            const double Amplitude = 5e-4;
            var wavelength = speed / hertz;
            var sine = SineRoad.Over(new(40.0 * speed), new(Amplitude), new(wavelength)) with { RightLag = new(lag) };
            var pass = Pass.Of(
                model, Road.From(sine), speed, new() { Method = FixedStep.Once with { LargestStep = 0.2e-3 }, Record = new() { Duration = 35.0 } });
            Assert.Equal(PassOutcome.Completed, pass.Outcome);
            var response = FrequencyResponse.Of(model, speed, [hertz]);
            foreach (var signal in EverySignal.Of(model))
            {
                var transfer = response.Of(signal);
                var expected = transfer.Left[0] + (transfer.Right[0] * Complex.FromPolarCoordinates(1.0, -lag));
                var found = Wave(pass, pass.Trace(signal), hertz) / Amplitude;
                var scale = transfer.Left[0].Magnitude + transfer.Right[0].Magnitude;
                Assert.True((found - expected).Magnitude < 1e-4 * scale, $"{signal.Name} at {hertz:F2} Hz: {found} in time, {expected} in frequency");
            }
        }, iter: 12);
    }

    [Fact]
    public void A_very_long_wave_lifts_the_whole_car_with_it()
    {
        AnyCar.FourWheeled.Sample(car =>
        {
            var model = RideModel.Of(car with { Body = car.Body with { PitchAxisHeight = null, RollAxisHeight = null } });
            var response = FrequencyResponse.Of(model, 100.0, [1e-3]);
            Assert.Equal(1.0, response.Of(RideSignal.Heave).Both[0].Magnitude, 1e-3);
            Assert.Equal(0.0, response.Of(RideSignal.Travel(model, 2)).Both[0].Magnitude, 1e-3);
        }, iter: 30);
    }

    [Fact]
    public void Left_and_right_exchange_when_the_car_is_mirrored()
    {
        AnyCar.FourWheeled.Sample(car =>
        {
            double[] at = [0.7, 3.0, 14.0];
            var one = FrequencyResponse.Of(RideModel.Of(car), 20.0, at);
            var other = FrequencyResponse.Of(RideModel.Of(AnyCar.Mirrored(car)), 20.0, at);
            for (var k = 0; k < at.Length; k++)
            {
                Near(one.Of(RideSignal.Heave).Left[k], other.Of(RideSignal.Heave).Right[k]);
                Near(one.Of(RideSignal.Pitch).Right[k], other.Of(RideSignal.Pitch).Left[k]);
                Near(one.Of(RideSignal.Roll).Left[k], -other.Of(RideSignal.Roll).Right[k]);
            }
        }, iter: 30);

        static void Near(Complex a, Complex b) => Assert.True((a - b).Magnitude < 1e-7 * (1e-6 + a.Magnitude), $"{a} against {b}");
    }

    [Fact]
    public void A_speed_or_frequency_out_of_range_is_named()
    {
        var model = RideModel.Of(PlainCar.Saloon);
        Assert.Contains("frequency", Assert.Throws<RefusedValueException>(() => FrequencyResponse.Of(model, 20.0, [1.0, 0.0])).Message);
        Assert.Contains("speed", Assert.Throws<RefusedValueException>(() => FrequencyResponse.Of(model, 0.0, [1.0])).Message);
    }

    [Fact]
    public void A_car_with_equal_ends_takes_the_nulls_of_its_wheelbase()
    {
        var car = EqualEnds();
        var model = RideModel.Of(car);
        var filter = new WheelbaseFilter { Wheelbase = car.Wheelbase, Speed = new(50.0 / 3.6) };
        Assert.Equal(2, filter.PitchNulls(12.0).Count);
        Assert.Equal(2, filter.HeaveNulls(12.0).Count);
        foreach (var f in filter.PitchNulls(12.0))
        {
            Assert.Equal(0.0, Gain(RideSignal.Pitch, f), 1e-9);
            Assert.True(Gain(RideSignal.Heave, f) > 1e-3);
            Assert.Equal(0.0, filter.PitchGain(f), 1e-12);
        }

        foreach (var f in filter.HeaveNulls(12.0))
        {
            Assert.Equal(0.0, Gain(RideSignal.Heave, f), 1e-9);
            Assert.True(Gain(RideSignal.Pitch, f) > 1e-3);
            Assert.Equal(0.0, filter.HeaveGain(f), 1e-12);
        }

        double Gain(RideSignal signal, double f) => FrequencyResponse.Of(model, 50.0 / 3.6, [f]).Of(signal).Both[0].Magnitude;
    }

    private static Car EqualEnds() => PlainCar.Saloon with { Weighing = Weighing.PerAxle(new(600.0), new(600.0)), Rear = PlainCar.Saloon.Front };

    internal static Car WithContact(Car car, double length) => car with
    {
        Front = car.Front with { Tyre = car.Front.Tyre with { ContactLength = new(length) } },
        Rear = car.Rear with { Tyre = car.Rear.Tyre with { ContactLength = new(1.2 * length) } },
    };

    // Im(Y·e^{iωt}) is the answer to a road sin(ωt): least squares over the last 8 s.
    private static Complex Wave(Pass pass, ImmutableArray<double> trace, double hertz)
    {
        var first = pass.Time.Count(t => t <= 27.0);
        var times = pass.Time[first..];
        var design = Matrix<double>.Build.Dense(times.Length, 3, (k, j) => j switch
        {
            0 => Math.Sin(2.0 * Math.PI * hertz * times[k]),
            1 => Math.Cos(2.0 * Math.PI * hertz * times[k]),
            _ => 1.0,
        });
        var fit = design.QR().Solve(Vector<double>.Build.DenseOfEnumerable(trace[first..]));
        return new Complex(fit[0], fit[1]);
    }
}
