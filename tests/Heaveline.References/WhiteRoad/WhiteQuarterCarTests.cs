using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;

namespace Heaveline.References.WhiteRoad;

/// <summary>Closed forms of a quarter car on a road with white slopes: see source.md.</summary>
public class WhiteQuarterCarTests
{
    private const double Speed = 20.0;
    private const double Sprung = 300.0;
    private const double TyreRate = 160e3;

    // Waves of 10 km to 1 cm: 0.002 to 2000 Hz at 20 m/s.
    private static readonly RoadSpectrum Wide = RoadSpectrum.Of(RoadClass.C) with { Band = new SpatialBand(1e-4, 100.0) };

    private static readonly RandomOptions Sharp = RandomOptions.Default with { Tolerance = 1e-7 };

    // A least value is flat: its place takes the same error at every damping.
    private static readonly RandomOptions Plain = RandomOptions.Default with { Tolerance = 1e-5 };

    private static double VelocityDensity => Wide.VelocitiesAt(1.0, Speed);

    [Fact]
    public void The_road_has_the_stated_velocity_density() => Assert.Equal(2.02129e-3, VelocityDensity, 5e-9);

    [Fact]
    public void Acceleration_travel_and_tyre_deflection_have_their_closed_variances()
    {
        var model = Quarter(30.0, 20e3, TyreRate, 1500.0);
        var response = RandomResponse.Of(model, Wide, Speed, Sharp);
        Assert.Equal(RandomOutcome.Linear, response.Outcome);
        Near(1.357065, response.Rms(RideSignal.VerticalAcceleration(model, 0.0, 0.0)));
        Near(10.54378e-3, response.Rms(RideSignal.Travel(model, 0)));
        var tyre = response.Rms(RideSignal.TyreLoad(model, 0)) / TyreRate;
        Near(3.89375e-3, Math.Sqrt((tyre * tyre) + TyreTail(2000.0)));
        Assert.Equal(0.1924, response.LoadVariation(0), 5e-5 + 2e-4);

        static void Near(double expected, double actual) => Assert.Equal(1.0, actual / expected, 1e-6);
    }

    [Fact]
    public void The_damper_takes_half_of_tyre_rate_times_intensity_whatever_it_is()
    {
        foreach (var damping in new[] { 600.0, 1500.0, 4000.0 })
        {
            var model = Quarter(30.0, 20e3, TyreRate, damping);
            var rate = RandomResponse.Of(model, Wide, Speed, Sharp).Rms(RideSignal.TravelRate(model, 0));
            Assert.Equal(TyreRate * 0.5 * VelocityDensity / 2.0, damping * rate * rate, 0.01);
        }
    }

    [Fact]
    public void A_pass_in_time_holds_the_closed_forms_in_its_intervals()
    {
        var model = Quarter(30.0, 20e3, TyreRate, 1500.0);
        var road = RoadSpectrum.Of(RoadClass.C);
        var pass = RandomPass.Of(model, road, Speed, RandomPassOptions.Default);
        // The road ends at 56.6 Hz; what lies beyond in the closed forms: 0.1 % of the acceleration's variance,
        // none of the travel's, 6 % of the tyre's.
        Holds(pass.Of(RideSignal.VerticalAcceleration(model, 0.0, 0.0)), 1.357065);
        Holds(pass.Of(RideSignal.Travel(model, 0)), 10.54378e-3);
        Holds(pass.Of(RideSignal.TyreLoad(model, 0)), TyreRate * Math.Sqrt((3.89375e-3 * 3.89375e-3) - TyreTail(Speed * road.Band.High)));

        static void Holds(RandomReading reading, double value)
        {
            Assert.InRange(value, reading.Low, reading.High);
            Assert.InRange(reading.High / reading.Low, 1.01, 1.25);
        }
    }

    [Theory]
    [InlineData(30.0, 20e3, 160e3, 908.3, 0.05)]
    [InlineData(36.0, 18e3, 180e3, 778.0, 0.5)]
    [InlineData(36.0, 30e3, 180e3, 1296.0, 0.5)]
    [InlineData(36.0, 18e3, 120e3, 952.0, 0.5)]
    public void The_least_acceleration_lies_at_the_published_damping(double unsprung, double spring, double tyre, double damping, double tolerance)
    {
        var best = Least(400.0, 2500.0, c =>
        {
            var model = Quarter(unsprung, spring, tyre, c);
            return RandomResponse.Of(model, Wide, Speed, Plain).Rms(RideSignal.VerticalAcceleration(model, 0.0, 0.0));
        });
        Assert.Equal(damping, best, tolerance);
        Assert.Equal(spring * Math.Sqrt((Sprung + unsprung) / tyre), best, 1e-3 * best);
    }

    [Theory]
    [InlineData(30.0, 20e3, 160e3, 1923.8 / 4898.979, 3e-5)]
    [InlineData(36.0, 18e3, 180e3, 0.462, 5e-4)]
    [InlineData(36.0, 30e3, 180e3, 0.370, 5e-4)]
    [InlineData(36.0, 18e3, 120e3, 0.385, 5e-4)]
    public void The_least_tyre_variation_lies_at_the_stated_damping_ratio(double unsprung, double spring, double tyre, double ratio, double tolerance)
    {
        var best = Least(800.0, 4000.0, c =>
        {
            var model = Quarter(unsprung, spring, tyre, c);
            return RandomResponse.Of(model, Wide, Speed, Plain).Rms(RideSignal.TyreLoad(model, 0));
        });
        Assert.Equal(ratio, best / (2.0 * Math.Sqrt(spring * Sprung)), tolerance);
    }

    // Past the road's end the wheel stands still: all of the road's height is tyre deflection, ∫ G/(4π²f²) df.
    private static double TyreTail(double from) => VelocityDensity / (4.0 * Math.PI * Math.PI * from);

    private static RideModel Quarter(double unsprung, double spring, double tyre, double damping) => new HalfCar
    {
        Mass = 2.0 * Sprung,
        PitchInertia = 2.0 * Sprung,
        FrontArm = 1.0,
        RearArm = 1.0,
        FrontRate = spring,
        RearRate = spring,
        FrontDamping = damping,
        RearDamping = damping,
        UnsprungPerAxle = unsprung,
        TyreRate = tyre,
    }.Model();

    // Golden sections of the interval until its middle is known to 1e-5.
    private static double Least(double low, double high, Func<double, double> of)
    {
        var ratio = 0.5 * (Math.Sqrt(5.0) - 1.0);
        var (a, b) = (high - (ratio * (high - low)), low + (ratio * (high - low)));
        var (atA, atB) = (of(a), of(b));
        while (high - low > 2e-5 * high)
        {
            if (atA < atB)
            {
                (high, b, atB) = (b, a, atA);
                a = high - (ratio * (high - low));
                atA = of(a);
            }
            else
            {
                (low, a, atA) = (a, b, atB);
                b = low + (ratio * (high - low));
                atB = of(b);
            }
        }

        return 0.5 * (low + high);
    }
}
