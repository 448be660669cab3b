using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Quantities;
using Heaveline.Rules;

namespace Heaveline.Tests.Doubts;

/// <summary>Doubts of tables, dimensions, bars and links, carried to the numbers that hang on them.</summary>
public class CarriedDoubtsTests
{
    private static SimpleCar Bare { get; } =
        MeasuredCar.Saloon with { FrontUnsprung = 0.01, RearUnsprung = 0.01, FrontTyreRate = 1e10, RearTyreRate = 1e10 };

    // f ∝ √k, so the relative doubt of a frequency is half the rate's; the rate of a straight table goes with its factor.
    [Fact]
    public void A_straight_table_with_a_doubt_is_a_rate_with_the_same_doubt()
    {
        var car = MeasuredCar.With(Bare, 0.06, 0.0, 0.0);
        var rate = Assert.IsType<LinearSpring>(car.Front.Spring.Law).Rate.Si;
        var table = Front(car, a => a with
        {
            Spring = a.Spring with { Law = new TableSpring(new ForceTable([0.0, 1.0], [0.0, rate]).Under(new Amount<Plain>(1.0, new Doubt(0.06)))) },
        });
        Measure<CarAtRest>[] outputs = [AxleCatalogue.Frequency(AxleEnd.Front)];
        var (by, of) = (FirstOrder.Of(table, null, outputs), FirstOrder.Of(car, null, outputs));
        Assert.Equal("front spring table", by.Doubts.Sources[0].Words);
        Assert.Equal(of.Results[0].StandardDeviation, by.Results[0].StandardDeviation, 1e-6 * of.Results[0].StandardDeviation);
        Assert.Equal(0.5 * 0.03, by.Results[0].StandardDeviation / by.Results[0].Stated, 1e-5);
        var drawn = (
            JointStudy.Of([CarDoubts.Of(table)], outputs, 200, 6).Cars[0][0], JointStudy.Of([CarDoubts.Of(car)], outputs, 200, 6).Cars[0][0]);
        Assert.All(drawn.Item1.Values.Zip(drawn.Item2.Values), pair => Assert.Equal(pair.Second, pair.First, 1e-6));
    }

    // ζ = c/(2√(km)): its relative doubt is the damper's.
    [Fact]
    public void A_damper_table_puts_the_damping_ratio_off_by_its_own_share()
    {
        var simple = MeasuredCar.With(Bare, 0.0, 0.0, 0.0);
        var car = Front(simple, a => a with
        {
            Damper = new Damper
            {
                Law = new TableDamper(new([0.1, 0.4], [100.0, 300.0]), new([0.1, 0.4], [200.0, 600.0]))
                    .Under(new Amount<Plain>(1.0, new Doubt(0.08))),
            },
        });
        var result = FirstOrder.Of(car, null, [AxleCatalogue.Damping(AxleEnd.Front)]).Results[0];
        Assert.Equal(0.04, result.StandardDeviation / result.Stated, 1e-6);
        Assert.Equal(1.0, result.Shares.Single(s => s.Source.Name == "front damper table").Share, 1e-9);
    }

    [Fact]
    public void A_stop_table_puts_its_own_force_off()
    {
        var car = Front(MeasuredCar.Saloon.ToCar(), a => a with
        {
            BumpStop =
                new Stop { Clearance = new(0.05), Table = new ForceTable([0.0, 0.02], [0.0, 400.0]).Under(new Amount<Plain>(1.0, new Doubt(0.2))) },
        });
        var doubts = CarDoubts.Of(car);
        var at = doubts.Sources.Select((s, i) => (s.Name, i)).Single(s => s.Name == "front bump stop table").i;
        var errors = new double[doubts.Sources.Count];
        errors[at] = 1.5;
        Assert.Equal(460.0, doubts.At(errors).Car.Front.BumpStop!.Table!.Force[^1], 1e-9);
    }

    // On rigid tyres K = Σ t²(k_spring/2 + k_bar) as the bars act, so the bars alone make u(K)² = Σ (t²·u(k_bar))²; the springs' part is sure.
    [Fact]
    public void Two_bars_make_the_doubt_of_the_roll_stiffness()
    {
        var bare = Bare.ToCar();
        var car = bare with
        {
            Body = bare.Body with { RollInertia = new Amount<Inertia>(400.0) },
            Front = bare.Front with { AntiRollBar = new(12000.0, new Doubt(1200.0)) },
            Rear = bare.Rear with { AntiRollBar = new(5000.0, new Doubt(1000.0)) },
        };
        var (f, r) = (car.Front.Track.Si, car.Rear.Track.Si);
        var expected = Math.Sqrt(Math.Pow(f * f * 600.0, 2) + Math.Pow(r * r * 500.0, 2));
        Assert.Equal(expected, FirstOrder.Of(car, null, [AtRest.Of("roll-stiffness")]).Results[0].StandardDeviation, 1e-4 * expected);
        var drawn = JointStudy.Of([CarDoubts.Of(car)], [AtRest.Of("roll-stiffness")], 4000, 12, degree: 2).Cars[0][0];
        // 4000 draws: 1.1 % for a standard deviation; four of those.
        Assert.Equal(expected, drawn.StandardDeviation, 0.045 * expected);
        // Taking one bar off leaves a change that only that bar makes doubtful.
        var without = car with { Front = car.Front with { AntiRollBar = new(0.0) } };
        var change = JointStudy.Of([CarDoubts.Of(car), CarDoubts.Of(without)], [AtRest.Of("roll-stiffness")], 4000, 12, degree: 2).Changes[0][0];
        Assert.Equal(-f * f * 12000.0, change.Stated, 1e-4 * f * f * 12000.0);
        Assert.Equal(f * f * 600.0, change.StandardDeviation, 0.045 * f * f * 600.0);
    }

    // Dive = moved load times (1 − what the links carry): a link's share of s ± u leaves (1 − s) ± u of its axle's sinking.
    [Fact]
    public void Links_with_a_doubt_put_the_pitch_in_braking_off()
    {
        var sure = Bare.ToCar() with { Brakes = new BrakeGeometry { FrontBrakeShare = new Amount<Plain>(0.7), WheelRadius = new(0.3) } };
        Car With(double dive) => sure with { Brakes = sure.Brakes! with { AntiDiveFront = new(dive, new Doubt(0.10)) } };
        double Pitch(double dive) => AtRest.Of("braking-pitch-per-g").Of(new CarAtRest(RideModel.Of(With(dive))));
        var result = FirstOrder.Of(With(0.3), null, [AtRest.Of("braking-pitch-per-g")]).Results[0];
        // The pitch is linear in the share, so that any two shares give the slope.
        Assert.Equal(0.05 * Math.Abs(Pitch(0.4) - Pitch(0.2)) / 0.2, result.StandardDeviation, 1e-6 * result.Stated);
        Assert.True(result.StandardDeviation > 0.01 * result.Stated);
    }

    // k ∝ d⁴/D³ and τ ∝ F·D/d³ as the wire is off; rate and stress are off together.
    [Fact]
    public void A_coil_by_its_wire_moves_rate_and_stress_together()
    {
        var coil = new CoilDimensions { Wire = new(0.0124, new Doubt(0.0002)), MeanDiameter = new(0.118), ActiveCoils = new(5.5) };
        var car = Front(
            MeasuredCar.Saloon.ToCar(),
            a => a with { Spring = new Spring { Law = new LinearSpring { Rate = new(coil.Rate, new Doubt(0.07 * coil.Rate)), Dimensions = coil } } });
        var doubts = CarDoubts.Of(car);
        Assert.Contains(doubts.Sources, s => s.Words == "front coil's wire");
        Assert.DoesNotContain(doubts.Sources, s => s.Name == "front spring rate");
        var errors = doubts.Sources.Select(s => s.Name == "front coil's wire" ? 1.0 : 0.0).ToArray();
        var law = Assert.IsType<LinearSpring>(doubts.At(errors).Car.Front.Spring.Law);
        Assert.Equal(coil.Rate * Math.Pow(1.0 + (0.0001 / 0.0124), 4), law.Rate.Si, 1e-6 * law.Rate.Si);
        var slopes = FirstOrder.Of(car, null, [AtRest.Of("front-left-stress"), AxleCatalogue.Frequency(AxleEnd.Front)]);
        var stress = slopes.Results[0];
        // Wahl's factor softens the third power a little.
        Assert.InRange(stress.StandardDeviation / stress.Stated, 2.5 * 0.0001 / 0.0124, 3.0 * 0.0001 / 0.0124);
        Assert.True(slopes.Covariance(0, 1) < 0.0);
    }

    // Where a number runs straight over its doubt: the speed that suits a ratio near one does not, and is left out.
    [Fact]
    public void Slopes_and_draws_agree_on_side_effects_and_the_car_at_rest()
    {
        var car = Measured(MeasuredCar.Saloon with { Ratio = 1.1 });
        var model = RideModel.Of(car);
        Measure<CarAtRest>[] outputs =
        [
            .. AtRest.SideEffects(model), AtRest.Of("mass"), AtRest.Of("sprung-mass"), AtRest.Of("centre"), AtRest.Of("roll-rate"),
            AtRest.Of("front-wheel-rate"), AtRest.Of("rear-deflection"), AxleCatalogue.Damping(AxleEnd.Front), AtRest.Of("rear-hop"),
        ];
        var drawn = JointStudy.Of([CarDoubts.Of(car)], outputs, 4000, 11, degree: 2).Cars[0];
        var slopes = FirstOrder.Of(car, null, outputs).Results;
        Assert.All(drawn.Zip(slopes), pair => Assert.InRange(
            pair.First.StandardDeviation, (0.94 * pair.Second.StandardDeviation) - 1e-9, (1.06 * pair.Second.StandardDeviation) + 1e-9));
        Assert.True(slopes.Count(s => s.StandardDeviation > 1e-6) > 12);
    }

    // Binomial scatter of 400 cases at 90 % is 1.5 %; three of those.
    [Fact]
    public void Nine_in_ten_planted_cars_with_tables_lie_in_the_stated_interval()
    {
        Measure<CarAtRest>[] outputs =
            [AxleCatalogue.Frequency(AxleEnd.Front), AxleCatalogue.Damping(AxleEnd.Front), AtRest.Of("roll-per-g"), AtRest.Of("braking-pitch-per-g")];
        var hits = new int[outputs.Length];
        const int cases = 400;
        for (var i = 0; i < cases; i++)
        {
            var truth = Measured(MeasuredCar.Saloon with { MeanFrequency = 1.1 + (0.5 * SplitMix.Uniform(5, (ulong)i)) });
            var measured = JointDraw.Of(JointDoubts.Of([CarDoubts.Of(truth)]), 98, i).Models[0].Car;
            var study = JointStudy.Of([CarDoubts.Of(measured)], outputs, 100, (ulong)(3000 + i), degree: 2);
            var real = new CarAtRest(RideModel.Of(truth));
            for (var j = 0; j < outputs.Length; j++)
            {
                hits[j] += study.Cars[0][j].Central90.Holds(outputs[j].Of(real)) ? 1 : 0;
            }
        }

        Assert.All(hits, n => Assert.InRange(n / (double)cases, 0.855, 0.945));
    }

    // A spring that stiffens and a damper that bends, each from a rig with a tolerance; bars, links and heights beside them.
    private static Car Measured(SimpleCar simple)
    {
        var car = MeasuredCar.With(simple, 0.05, 0.02, 0.02, 0.1, 0.1);
        var rate = Assert.IsType<LinearSpring>(car.Front.Spring.Law).Rate.Si;
        var carried = 0.25 * 9.80665 * simple.SprungMass;
        var table = new ForceTable(
            [-0.2, 0.05, 0.2], [carried - (0.2 * rate), carried + (0.05 * rate), carried + (0.05 * rate) + (0.15 * 1.4 * rate)]);
        return Front(car, a => a with
        {
            Spring = a.Spring with { Law = new TableSpring(table.Under(new Amount<Plain>(1.0, new Doubt(0.04)))) },
            Damper = new Damper
            {
                Law = new TableDamper(new([0.1, 0.4], [150.0, 400.0]), new([0.1, 0.4], [300.0, 800.0]))
                    .Under(new Amount<Plain>(1.0, new Doubt(0.06))),
            },
            AntiRollBar = new(9000.0, new Doubt(900.0)),
        }) with
        {
            Body = car.Body with
            {
                CentreHeight = new(0.55, new Doubt(0.02)),
                RollAxisHeight = new Amount<Length>(0.08),
                PitchAxisHeight = new Amount<Length>(0.25),
            },
            Brakes = new BrakeGeometry
            {
                FrontBrakeShare = new Amount<Plain>(0.7, new Doubt(0.04)),
                AntiDiveFront = new(0.2, new Doubt(0.1)),
                WheelRadius = new(0.3, new Doubt(0.01)),
            },
        };
    }

    private static Car Front(Car car, Func<Axle, Axle> change) => car with { Front = change(car.Front) };
}
