using CsCheck;
using Heaveline.Cars;
using Heaveline.Measures.Comfort;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.Tests.Rides;

/// <summary>Cars whose sides differ, evaluated in closed form: against the dense solution, the car alike on both sides and the mirror.</summary>
public class OneSidedRideTests
{
    private static readonly RoadSpectrum Road = RoadSpectrum.Of(RoadClass.C);

    private static readonly LoadState Driver = PlainCar.With(80.0, 1.2, left: 0.36, height: 0.6);

    [Fact]
    public void A_car_whose_sides_differ_is_solved_whole()
    {
        var (linked, plain) = (0, 0);
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads, Gen.Double[4.0, 40.0], Gen.Double[0.0, 2.5], Gen.Double[-0.6, 0.6])
            .Sample((car, load, speed, behind, left) =>
            {
                var model = RideModel.Of(FrequencyResponseTests.WithContact(car, 0.12), load);
                var ride = OneSidedRide.From(model);
                Assert.Equal(ride.IsOneSided, SymmetricRide.From(model) is null);
                linked += ride.IsOneSided && ride.Mean.IsLinked ? 1 : 0;
                plain += ride.IsOneSided && !ride.Mean.IsLinked ? 1 : 0;
                var seat = RideSpectrum.Vertical(model, Road, speed, behind, left, Weightings.Wk.Factor);
                Same(model, speed, RideSignal.VerticalAcceleration(model, behind, left), seat, ride, Weightings.Wk.Factor);
                Same(model, speed, RideSignal.PitchAcceleration, RideSpectrum.Pitch(model, Road, speed), ride, _ => 1.0);
                var head = RideSpectrum.ForeAft(model, Road, speed, 0.7, Weightings.Wd.Factor);
                Same(model, speed, RideSignal.ForeAftForce(0.7), head, ride, Weightings.Wd.Factor);
            }, iter: 60);
        Assert.True(linked > 2 && plain > 2, $"{linked} linked, {plain} plain");
    }

    [Fact]
    public void Sides_that_differ_by_nothing_have_the_bits_of_the_car_alike_on_both()
    {
        Gen.Select(AnyCar.Any, Gen.Double[8.0, 40.0]).Sample((drawn, speed) =>
        {
            var model = RideModel.Of(RideSpectrumTests.Even(drawn));
            var ride = OneSidedRide.From(model);
            Assert.False(ride.IsOneSided);
            Assert.Equal(SymmetricRide.From(model), ride.Mean);
            var spectrum = RideSpectrum.Vertical(model, Road, speed, 1.5, model.Rolls ? 0.35 : 0.0, Weightings.Wk.Factor);
            Assert.Equal(spectrum.Rms(SymmetricRide.From(model)!.Value), spectrum.Rms(ride));
        }, iter: 20);
    }

    [Fact]
    public void As_the_sides_grow_alike_the_answer_becomes_that_of_their_mean()
    {
        var linked = 0;
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads, Gen.Double[8.0, 40.0]).Sample((car, load, speed) =>
        {
            var model = RideModel.Of(car, load);
            var ride = OneSidedRide.From(model);
            linked += ride.Mean.IsLinked ? 1 : 0;
            foreach (var spectrum in new[]
            {
                RideSpectrum.Vertical(model, Road, speed, 1.5, 0.35, Weightings.Wk.Factor), RideSpectrum.Pitch(model, Road, speed),
            })
            {
                var mean = spectrum.Rms(ride.Mean);
                foreach (var share in new[] { 1e-3, 1e-6, 1e-9, 1e-13 })
                {
                    Assert.Equal(1.0, spectrum.Rms(Shrunk(ride, share)) / mean, (3.0 * share) + 1e-10);
                }
            }
        }, iter: 30);
        Assert.True(linked > 1, $"{linked}");
    }

    [Fact]
    public void A_mirrored_car_moves_its_mirrored_seat_alike()
    {
        var differing = 0;
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads, Gen.Double[8.0, 40.0], Gen.Double[-0.6, 0.6]).Sample((car, load, speed, left) =>
        {
            var (here, there) = (RideModel.Of(car, load), RideModel.Of(AnyCar.Mirrored(car), AnyCar.Mirrored(load)));
            double Seat(RideModel model, double side) =>
                RideSpectrum.Vertical(model, Road, speed, 1.3, side, Weightings.Wk.Factor).Rms(OneSidedRide.From(model));
            double Pitch(RideModel model) => RideSpectrum.Pitch(model, Road, speed).Rms(OneSidedRide.From(model));
            Assert.Equal(1.0, Seat(there, -left) / Seat(here, left), 1e-7);
            Assert.Equal(1.0, Pitch(there) / Pitch(here), 1e-7);
            differing += Math.Abs((Seat(here, -0.5) / Seat(here, 0.5)) - 1.0) > 1e-4 ? 1 : 0;
        }, iter: 30);
        Assert.True(differing > 3, $"{differing}");
    }

    [Theory]
    [InlineData(12)]
    [InlineData(80)]
    public void Registers_of_either_width_have_the_same_bits(int points)
    {
        var joined = PlainCar.Saloon with
        {
            Interconnection = new ElasticLink { Rate = new(5000.0), FrontRatio = new(1.0), RearRatio = new(1.0), Carried = new(0.0) },
        };
        foreach (var car in new[] { PlainCar.Saloon, joined })
        {
            var model = RideModel.Of(car, Driver);
            var ride = OneSidedRide.From(model);
            var table = RideSpectrum.Vertical(
                model, Road, 20.0, 1.3, 0.35, Weightings.Wk.Factor, SpectrumOptions.Default with { Points = points }).Table;
            Assert.Equal(
                OneSidedSpectrum.MeanSquare<Lane256>(table, ride, 1.0, 0.2, 0.35), OneSidedSpectrum.MeanSquare<Lane512>(table, ride, 1.0, 0.2, 0.35));
            Assert.Equal(
                OneSidedLinks.MeanSquare<Lane256>(table, ride, 1.0, 0.2, 0.35), OneSidedLinks.MeanSquare<Lane512>(table, ride, 1.0, 0.2, 0.35));
        }
    }

    [Fact]
    public void Both_ways_of_solving_agree_where_nothing_joins_the_axles()
    {
        Gen.Select(AnyCar.FourWheeled, AnyCar.Loads, Gen.Double[8.0, 40.0]).Sample((car, load, speed) =>
        {
            var model = RideModel.Of(car with { Interconnection = null }, load);
            var (table, ride) = (RideSpectrum.Pitch(model, Road, speed).Table, OneSidedRide.From(model));
            Assert.Equal(
                1.0, OneSidedSpectrum.MeanSquare(table, ride, 0.3, 1.0, -0.4) / OneSidedLinks.MeanSquare(table, ride, 0.3, 1.0, -0.4), 1e-10);
        }, iter: 20);
    }

    [Fact]
    public void A_driver_alone_shakes_his_own_side_less_than_the_mean_of_both_sides_says()
    {
        // What a twin alike on both sides leaves out; it is why there is none.
        var model = RideModel.Of(PlainCar.Saloon, Driver);
        var ride = OneSidedRide.From(model);
        double Off(double left)
        {
            var spectrum = RideSpectrum.Vertical(model, Road, 20.0, 1.2, left, Weightings.Wk.Factor);
            return spectrum.Rms(ride.Mean) / spectrum.Rms(ride);
        }

        Assert.InRange(Off(0.36), 1.002, 1.1);
        Assert.InRange(Off(-0.36), 0.9, 0.998);
    }

    private static OneSidedRide Shrunk(OneSidedRide ride, double by)
    {
        (double Front, double Rear, double Flow, double FlowRate) Line(
            (double Front, double Rear, double Flow, double FlowRate) own, (double Front, double Rear, double Flow, double FlowRate) mean) =>
            (mean.Front + (by * (own.Front - mean.Front)), mean.Rear + (by * (own.Rear - mean.Rear)),
                mean.Flow + (by * (own.Flow - mean.Flow)), mean.FlowRate + (by * (own.FlowRate - mean.FlowRate)));
        OneSidedAxle Axle(OneSidedAxle axle) => new() { Rate = by * axle.Rate, Damping = by * axle.Damping };
        return ride with
        {
            LeftOfMiddle = by * ride.LeftOfMiddle,
            InertiaProduct = by * ride.InertiaProduct,
            Front = Axle(ride.Front),
            Rear = Axle(ride.Rear),
            Link = by * ride.Link,
            LinkDamping = by * ride.LinkDamping,
            LeftLine = Line(ride.LeftLine, ride.Mean.Line),
            RightLine = Line(ride.RightLine, ride.Mean.Line),
        };
    }

    private static void Same(
        RideModel model, double speed, RideSignal signal, RideSpectrum spectrum, OneSidedRide ride, Func<double, double> factor) =>
        Assert.Equal(1.0, spectrum.Rms(ride) / RideSpectrumTests.Whole(model, speed, signal, spectrum, factor), 1e-10);
}
