using CsCheck;
using Heaveline.Cars;
using Heaveline.Measures.Comfort;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Tests.Passes;

namespace Heaveline.Tests.Rides;

public class RideSpectrumTests
{
    private static readonly RoadSpectrum Road = RoadSpectrum.Of(RoadClass.C);

    [Fact]
    public void The_closed_form_equals_the_full_solution()
    {
        var linked = 0;
        Gen.Select(AnyCar.Any, Gen.Double[4.0, 40.0], Gen.Double[0.0, 2.5], Gen.Double[-0.6, 0.6]).Sample((drawn, speed, behind, left) =>
        {
            var model = RideModel.Of(FrequencyResponseTests.WithContact(Even(drawn), 0.12));
            var ride = SymmetricRide.From(model) ?? throw new InvalidOperationException("The car is even.");
            linked += ride.IsLinked ? 1 : 0;
            left = model.Rolls ? left : 0.0;
            Same(
                model,
                speed,
                RideSignal.VerticalAcceleration(model, behind, left),
                RideSpectrum.Vertical(model, Road, speed, behind, left, Weightings.Wk.Factor),
                ride,
                Weightings.Wk.Factor);
            Same(model, speed, RideSignal.PitchAcceleration, RideSpectrum.Pitch(model, Road, speed), ride, _ => 1.0);
            Same(
                model,
                speed,
                RideSignal.ForeAftForce(0.7),
                RideSpectrum.ForeAft(model, Road, speed, 0.7, Weightings.Wd.Factor),
                ride,
                Weightings.Wd.Factor);
        }, iter: 60);
        Assert.True(linked > 5);
    }

    [Fact]
    public void A_line_that_only_resists_is_in_the_closed_form_and_in_the_full_solution_as_its_states_say()
    {
        var model = RideModel.Of(ExactCars.OnResistingLine);
        var ride = SymmetricRide.From(model)!.Value;
        Assert.True(ride.IsLinked);
        Same(model, 20.0, RideSignal.PitchAcceleration, RideSpectrum.Pitch(model, Road, 20.0), ride, _ => 1.0);

        // (iω − A)⁻¹·B of the sixteen states.
        var tangent = model.Tangent;
        foreach (var hertz in new[] { 0.5, 1.3, 4.0, 12.0, 40.0 })
        {
            var iw = new System.Numerics.Complex(0.0, 2.0 * Math.PI * hertz);
            var states = MathNet.Numerics.LinearAlgebra.Matrix<System.Numerics.Complex>.Build.Dense(
                16, 16, (i, j) => (i == j ? iw : 0.0) - tangent.State[i, j]);
            var drive = MathNet.Numerics.LinearAlgebra.Matrix<System.Numerics.Complex>.Build.Dense(
                16, 4, (i, j) => tangent.Road[i, j] + (iw * tangent.Road[i, 4 + j]));
            var expected = states.Solve(drive);
            var answer = LinearRide.Of(model).Answer(2.0 * Math.PI * hertz);
            for (var i = 0; i < 9; i++)
            {
                Assert.True((expected.Row(i) - answer.Row(i)).L2Norm() <= 1e-9 * expected.Row(i).L2Norm() + 1e-18, $"position {i} at {hertz} Hz");
            }
        }
    }

    [Fact]
    public void Eighty_frequencies_come_within_1e_5_of_the_weighted_root_mean_square_of_a_damped_car()
    {
        Gen.Select(Gen.Double[0.7, 1.4], Gen.Double[0.25, 0.5], Gen.Double[30.0, 120.0]).Sample((springs, zeta, kilometres) =>
        {
            var damper = new Damper { Law = new RatioDamper { Ratio = new(zeta) } };
            var car = PlainCar.Saloon with
            {
                Front = PlainCar.FrontAxle with { Damper = damper, Spring = new Spring { Law = new LinearSpring { Rate = new(springs * 21000.0) } } },
                Rear = PlainCar.RearAxle with { Damper = damper, Spring = new Spring { Law = new LinearSpring { Rate = new(springs * 24000.0) } } },
            };
            Assert.Equal(1.0, Ratio(car, kilometres / 3.6), 1e-5);
        }, iter: 60);
    }

    [Fact]
    public void Two_hundred_and_fifty_six_frequencies_serve_every_car()
    {
        // A wheel that hops long, with hardly any damping, takes more than 80. One car drawn here (seed c7V42zjpwhb2) missed 1e-5 by 6 %.
        Gen.Select(AnyCar.Any, Gen.Double[30.0, 120.0])
            .Sample((car, kilometres) => Assert.Equal(1.0, Ratio(Even(car), kilometres / 3.6, 256), 2e-5), iter: 40);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(80)]
    public void Registers_of_either_width_have_the_same_bits(int points)
    {
        var model = RideModel.Of(PlainCar.Saloon);
        var ride = SymmetricRide.From(model)!.Value;
        var few = RideSpectrum.Vertical(model, Road, 20.0, 1.3, 0.35, Weightings.Wk.Factor, SpectrumOptions.Default with { Points = points });
        Assert.Equal(
            PlainSpectrum.MeanSquare<Heaveline.Numerics.Lane256>(few.Table, ride, 1.0, 0.2, 0.35),
            PlainSpectrum.MeanSquare<Heaveline.Numerics.Lane512>(few.Table, ride, 1.0, 0.2, 0.35));
    }

    [Fact]
    public void Many_frequencies_reach_the_error_controlled_response()
    {
        Gen.Select(AnyCar.Any, Gen.Double[30.0, 120.0]).Sample((drawn, kilometres) =>
        {
            var model = RideModel.Of(FrequencyResponseTests.WithContact(Even(drawn), 0.12));
            var (speed, left) = (kilometres / 3.6, model.Rolls ? 0.35 : 0.0);
            var band = Road with { Band = new SpatialBand(Math.Max(Road.Band.Low, 0.2 / speed), Math.Min(Road.Band.High, 40.0 / speed)) };
            var dense = RandomResponse.Of(model, band, speed, RandomOptions.Default with { AtOwnLevel = false });
            var many = RideSpectrum.Vertical(model, Road, speed, 1.5, left, Weightings.Wk.Factor, SpectrumOptions.Default with { Points = 512 });
            Assert.Equal(
                1.0,
                dense.Rms(RideSignal.VerticalAcceleration(model, 1.5, left), Weightings.Wk.Factor) / many.Rms(SymmetricRide.From(model)!.Value),
                3e-6);
        }, iter: 10);
    }

    // The root mean square by a dense complex solution of all equations at the spectrum's frequencies.
    internal static double Whole(RideModel model, double speed, RideSignal signal, RideSpectrum spectrum, Func<double, double> factor)
    {
        var drive = new RoadDrive(model, Road, null);
        var linear = LinearRide.Of(model);
        var sum = 0.0;
        for (var k = 0; k < spectrum.Frequencies.Count; k++)
        {
            var f = spectrum.Frequencies[k];
            var answer = linear.Answer(2.0 * Math.PI * f);
            foreach (var wave in drive.Waves(f / speed))
            {
                var positions = answer * MathNet.Numerics.LinearAlgebra.Vector<System.Numerics.Complex>.Build.DenseOfArray(wave);
                var value = LinearRide.Read(signal, 2.0 * Math.PI * f, positions.ToArray(), wave).Magnitude * factor(f);
                sum += value * value * Road.HeightsAt(f, speed) * spectrum.Widths[k];
            }
        }

        return Math.Sqrt(sum);
    }

    private static void Same(
        RideModel model, double speed, RideSignal signal, RideSpectrum spectrum, SymmetricRide ride, Func<double, double> factor) =>
        Assert.Equal(1.0, spectrum.Rms(ride) / Whole(model, speed, signal, spectrum, factor), 1e-10);

    // Few frequencies against 1024.
    private static double Ratio(Car car, double speed, int points = 80)
    {
        var model = RideModel.Of(FrequencyResponseTests.WithContact(car, 0.12));
        var left = model.Rolls ? 0.35 : 0.0;
        var ride = SymmetricRide.From(model)!.Value;
        var few = RideSpectrum.Vertical(model, Road, speed, 1.5, left, Weightings.Wk.Factor, SpectrumOptions.Default with { Points = points });
        return few.Rms(ride)
            / RideSpectrum.Vertical(model, Road, speed, 1.5, left, Weightings.Wk.Factor, SpectrumOptions.Default with { Points = 1024 }).Rms(ride);
    }

    internal static Car Even(Car car) => car with { Weighing = Weighing.PerAxle(new(car.Weighing.Front), new(car.Weighing.Rear)) };
}
