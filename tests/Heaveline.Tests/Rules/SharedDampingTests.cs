using Heaveline.Cars;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Rules;
using Heaveline.Tests.Doubts;
using Heaveline.Tuning;

namespace Heaveline.Tests.Rules;

/// <summary>
/// A common damper of front and rear. Numbers named as such are an earlier computation of our own (a linear half car of another program, printed to
/// two or three digits); no published source. That car cannot lift a wheel, so the bump is a hundredth as high here and the result multiplied.
/// </summary>
public class SharedDampingTests
{
    private const double Scale = 100.0;

    private static readonly Road Versine = Road.From(new Versine { Height = new(0.05 / Scale), Length = new(1.0) });

    private static SimpleCar Even => MeasuredCar.Saloon with { BehindFrontAxle = 1.3 };

    // Class C at its geometric mean, 0.3 to 15 Hz, both sides alike; pitch accelerations in rad/s² and heave accelerations in m/s² at 14 and 22 m/s,
    // pitch later than 0.8 s after the rear wheels have left the bump at 14 m/s in mrad·s^0.5.
    [Theory]
    [InlineData(0.00, 0.0, 0.670, 0.819, 0.35)]
    [InlineData(0.00, 0.5, 0.597, 0.721, 1.26)]
    [InlineData(0.25, 0.0, 0.626, 0.782, 0.22)]
    [InlineData(0.25, 0.5, 0.500, 0.648, 0.93)]
    [InlineData(0.50, 0.0, 0.596, 0.756, 0.19)]
    [InlineData(0.50, 0.5, 0.429, 0.595, 0.70)]
    [InlineData(0.65, 0.5, 0.401, 0.575, 0.46)]
    public void Accelerations_and_late_pitch_are_those_of_an_earlier_half_car(
        double springs, double damping, double pitch14, double pitch22, double late)
    {
        var model = (Even with { SharedSprings = springs, SharedDamping = damping }).Model();
        var (slow, fast) = (OnClassC(model, 14.0), OnClassC(model, 22.0));
        var measured = 1000.0 * Scale * SettlingCatalogue.LatePitch.Of(Pass.Of(model, Versine, 14.0));
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"{springs} {damping}: pitch {slow.Rms(RideSignal.PitchAcceleration):F4} {fast.Rms(RideSignal.PitchAcceleration):F4}, "
            + $"heave {slow.Rms(RideSignal.HeaveAcceleration):F4} {fast.Rms(RideSignal.HeaveAcceleration):F4}, late {measured:F3}");
        Assert.Equal(pitch14, slow.Rms(RideSignal.PitchAcceleration), 0.001);
        Assert.Equal(pitch22, fast.Rms(RideSignal.PitchAcceleration), 0.001);
        Assert.Equal(0.801, slow.Rms(RideSignal.HeaveAcceleration), 0.001);
        Assert.Equal(1.031, fast.Rms(RideSignal.HeaveAcceleration), 0.001);
        Assert.Equal(late, measured, 0.0075);
    }

    [Fact]
    public void Joined_dampers_pitch_less_on_a_road_and_longer_after_a_bump()
    {
        var map = RuleMap.Of(Even.Model(), Versine, RuleAxis.SharedDamping([0.0, 0.25, 0.5]), [14.0], [SettlingCatalogue.LatePitch])[0];
        Assert.Equal([RuleVerdict.Fails, RuleVerdict.Fails], [map.Verdict(0, 1), map.Verdict(0, 2)]);
        Assert.Equal(map.Measured[0].Order(), map.Measured[0]);
        double[] road =
            [.. new[] { 0.0, 0.25, 0.5 }.Select(q => OnClassC((Even with { SharedDamping = q }).Model(), 14.0).Rms(RideSignal.PitchAcceleration))];
        Assert.Equal(road.OrderDescending(), road);
    }

    // What each axle gives up it gets back from the link in heave, whatever the ratios of the link.
    [Fact]
    public void Heave_keeps_its_damping_at_both_ends()
    {
        var car = MeasuredCar.Saloon with { Ratio = 1.2, FrontDamping = 0.25, RearDamping = 0.32 };
        var (apart, joined) = (
            SuspensionRates.ByAxle(car.Model().Tangent.SuspensionDamping),
            SuspensionRates.ByAxle((car with { SharedDamping = 0.4 }).Model().Tangent.SuspensionDamping));
        for (var i = 0; i < 2; i++)
        {
            Assert.Equal(apart[i, i], joined[i, 0] + joined[i, 1], 1e-8 * apart[i, i]);
            Assert.True(joined[i, 1 - i] > 0.1 * apart[i, i]);
        }

        Assert.Throws<RefusedValueException>(() => (car with { RearDamping = 0.05, SharedDamping = 0.9 }).Model());
    }

    [Fact]
    public void The_closed_form_of_joined_axles_is_the_full_response()
    {
        var model = (MeasuredCar.Saloon with { Ratio = 1.2, SharedSprings = 0.2, SharedDamping = 0.4 }).Model();
        var spectrum = RideSpectrum.Pitch(
            model, ClassC(22.0), 22.0, options: SpectrumOptions.Default with { Low = 0.3, High = 15.0, Tracks = Together });
        Assert.Equal(1.0, spectrum.Rms(SymmetricRide.From(model)!.Value) / OnClassC(model, 22.0).Rms(RideSignal.PitchAcceleration), 2e-6);
        var apart = SymmetricRide.From(model)!.Value with { LinkDamping = 0.0 };
        Assert.NotEqual(1.0, spectrum.Rms(apart) / OnClassC(model, 22.0).Rms(RideSignal.PitchAcceleration), 1e-3);
    }

    [Fact]
    public void Taking_the_link_out_leaves_heave_as_stiff_and_as_damped()
    {
        var model = (MeasuredCar.Saloon with { SharedSprings = 0.3, SharedDamping = 0.5 }).Model();
        var plain = MeasuredCar.Saloon.Model();
        var without = ModelChange.WithoutLink(model);
        Assert.Null(without.Car.Interconnection);
        for (var i = 0; i < 4; i++)
        {
            Assert.Equal(
                plain.Tangent.SuspensionDamping[i, i], without.Tangent.SuspensionDamping[i, i], 1e-6 * plain.Tangent.SuspensionDamping[i, i]);
            Assert.Equal(plain.Tangent.SuspensionRate[i, i], without.Tangent.SuspensionRate[i, i], 1e-6 * plain.Tangent.SuspensionRate[i, i]);
        }
    }

    // The link's damper stays; the axles' own make up the rest, and cannot go below none.
    [Fact]
    public void A_tuning_reaches_its_damping_beside_a_common_damper()
    {
        var model = (MeasuredCar.Saloon with { SharedDamping = 0.4 }).Model();
        var tuning = RideTuning.Of(model);
        var stronger = RideTuning.Of(tuning.WithDamping(0.35).ApplyTo(model));
        Assert.Equal(0.35, stronger.MeanDamping, 1e-6);
        Assert.Equal(tuning.DampingSplit, stronger.DampingSplit, 1e-6);
        Assert.Throws<RefusedValueException>(() => tuning.WithDamping(0.01).ApplyTo(model));
    }

    // Adams–Bashforth of order four is stable down to λh = −0.3 (Hairer, Wanner, Solving Ordinary Differential
    // Equations II, V.1).
    [Theory]
    [InlineData(1.0)]
    [InlineData(-0.8)]
    public void The_step_is_stable_with_a_strong_common_damper(double rear)
    {
        var car = Even.ToCar() with { Interconnection = new ElasticLink { Rate = new(0.0), Damping = new(20000.0), RearRatio = new(rear) } };
        var model = RideModel.Of(car);
        var fastest = model.Tangent.State.Evd().EigenValues.Min(e => e.Real);
        var step = StepChoice.Of(model, 0.001).Step;
        Assert.InRange(step * fastest, -0.28, -0.12);
    }

    [Fact]
    public void A_link_of_nothing_is_refused()
    {
        var car = Even.ToCar() with { Interconnection = new ElasticLink { Rate = new(0.0) } };
        Assert.Contains("without rate and damping", Assert.Throws<RefusedValueException>(() => RideModel.Of(car)).Message, StringComparison.Ordinal);
    }

    private static TrackCoherence Together => new() { Track = new(0.0) };

    private static RoadSpectrum ClassC(double speed) => RoadSpectrum.Of(RoadClass.C) with { Band = new SpatialBand(0.3 / speed, 15.0 / speed) };

    private static RandomResponse OnClassC(RideModel model, double speed) =>
        RandomResponse.Of(model, ClassC(speed), speed, RandomOptions.Default with { Tracks = Together, Tolerance = 1e-8 });
}
