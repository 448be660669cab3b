using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Rides;
using Heaveline.Roads;
using Heaveline.Rules;

namespace Heaveline.Tests.Doubts;

public class JointStudyTests
{
    private static readonly Measure<CarAtRest>[] Ends = [AxleCatalogue.Frequency(AxleEnd.Front), AxleCatalogue.Frequency(AxleEnd.Rear)];

    private static SimpleCar Bare { get; } =
        MeasuredCar.Saloon with { FrontUnsprung = 0.01, RearUnsprung = 0.01, FrontTyreRate = 1e10, RearTyreRate = 1e10, Ratio = 1.10 };

    [Fact]
    public void A_car_and_itself_differ_by_nothing_in_every_draw()
    {
        var car = CarDoubts.Of(MeasuredCar.With(MeasuredCar.Saloon, 0.1, 0.06, 0.04, 0.2, 0.15));
        var study = JointStudy.Of(
            [car, car], [.. RestCatalogue.For(MeasureUse.Doubt), .. AtRest.SideEffects(RideModel.Of(car.Car))], 50, 3, degree: 2);
        Assert.Equal(car.Sources, study.Doubts.Sources);
        Assert.All(study.Changes[0], change => Assert.All(change.Values, v => Assert.Equal(0.0, v)));
        Assert.Contains(study.Cars[0], result => result.StandardDeviation > 0.0);
    }

    [Fact]
    public void The_first_car_is_drawn_as_it_is_alone()
    {
        var car = MeasuredCar.With(MeasuredCar.Saloon, 0.1, 0.06, 0.04);
        var alone = JointStudy.Of([CarDoubts.Of(car)], Ends, 40, 8);
        var joint = JointStudy.Of([CarDoubts.Of(car), CarDoubts.Of(Softer(car, 0.9, null))], Ends, 40, 8, degree: 2);
        Assert.Equal(alone.Cars[0][0].Values, joint.Cars[0][0].Values);
        Assert.Equal(
            alone.Cars[0][0].Shares[0].PerDeviation,
            joint.Cars[0][0].Shares[0].PerDeviation,
            0.02 * Math.Abs(alone.Cars[0][0].Shares[0].PerDeviation));
    }

    // f ∝ √k: one press for both springs puts both frequencies off by the same share, so that of their difference too; two presses by √(f₁² + f₂²).
    [Fact]
    public void One_spring_press_makes_a_change_of_springs_surer_than_two()
    {
        var before = MeasuredCar.With(Bare, 0.10, 0.0, 0.0);
        var after = Softer(before, 0.81, null);
        var (f, g) = (FirstOrder.Of(before, null, Ends).Results[1], FirstOrder.Of(after, null, Ends).Results[1]);
        Assert.Equal(0.9, g.Stated / f.Stated, 1e-6);
        var own = Change(before, after);
        Assert.Equal(
            Math.Sqrt((f.StandardDeviation * f.StandardDeviation) + (g.StandardDeviation * g.StandardDeviation)),
            own.StandardDeviation,
            0.05 * own.StandardDeviation);
        var pressed = Change(Pressed(before, "press"), Pressed(after, "press"));
        Assert.Equal(0.1 * f.StandardDeviation, pressed.StandardDeviation, 0.05 * pressed.StandardDeviation);
        Assert.Equal(own.Stated, pressed.Stated, 1e-12);

        static DoubtResult Change(Car one, Car other) =>
            JointStudy.Of([CarDoubts.Of(one), CarDoubts.Of(other)], Ends, 4000, 5, degree: 2).Changes[0][1];
    }

    [Fact]
    public void A_changed_part_has_its_own_error_with_the_cars_name_in_it()
    {
        var before = MeasuredCar.With(MeasuredCar.Saloon, 0.1, 0.06, 0.04);
        var after = Softer(before, 0.9, null) with { Name = "softer" };
        var doubts = JointDoubts.Of([CarDoubts.Of(before), CarDoubts.Of(after)]);
        Assert.Equal("rear spring rate of softer", Assert.Single(doubts.Sources.Skip(doubts.Cars[0].Sources.Count)).Words);
    }

    [Fact]
    public void Two_tables_of_one_doubt_are_two_measurements()
    {
        Car With(double force) => MeasuredCar.Saloon.ToCar() with
        {
            Rear = MeasuredCar.Saloon.ToCar().Rear with
            {
                Damper = new Damper
                {
                    Law = new TableDamper(new([0.1, 0.3], [force, 2.0 * force]), new([0.1, 0.3], [force, 2.0 * force]))
                        .Under(new Amount<Plain>(1.0, new Doubt(0.05))),
                },
            },
        };
        int Sources(params Car[] cars) =>
            JointDoubts.Of([.. cars.Select(c => CarDoubts.Of(c))]).Sources.Count(s => s.Name.Contains("damper table", StringComparison.Ordinal));
        Assert.Equal(1, Sources(With(200.0), With(200.0)));
        Assert.Equal(2, Sources(With(200.0), With(250.0)));
    }

    // A scale weighs every car wrong; a rule misses every car in its own way.
    [Fact]
    public void Of_two_vehicles_only_a_named_instrument_is_common()
    {
        var one = MeasuredCar.With(MeasuredCar.Saloon, 0.1, 0.06, 0.04, scale: "scale A") with { Body = new Body { CentreHeight = new(0.55) } };
        var other = one with { Name = "other", Wheelbase = new(2.7) };
        var doubts = JointDoubts.Of([CarDoubts.Of(one), CarDoubts.Of(other)]);
        Assert.Single(doubts.Sources, s => s.Name == "scale A");
        Assert.Single(doubts.Sources, s => s.Name == "inertia database");
        Assert.Single(doubts.Sources, s => s.Name == "inertia database of other");
    }

    [Fact]
    public void Shares_of_a_changes_variance_name_the_changed_part()
    {
        var before = MeasuredCar.With(MeasuredCar.Saloon, 0.1, 0.02, 0.04);
        var change = JointStudy.Of([CarDoubts.Of(before), CarDoubts.Of(Softer(before, 0.9, null))], Ends, 1000, 2, degree: 2).Changes[0][1];
        Assert.Equal(["rear spring rate", "rear spring rate of linear car"], change.Shares.Take(2).Select(s => s.Source.Name).Order());
        Assert.InRange(change.Shares.Sum(s => s.Share), 0.95, 1.02);
    }

    [Fact]
    public void Passes_and_rides_repeat_whatever_the_degree_of_parallelism()
    {
        var before = CarDoubts.Of(MeasuredCar.With(MeasuredCar.Saloon, 0.1, 0.06, 0.04, 0.2));
        var after = CarDoubts.Of(Softer(before.Car, 0.9, null));
        var bump = Road.From(new Versine { Height = new(0.02), Length = new(1.0) });
        var options = new PassOptions { Method = FixedStep.Once, Record = new() { SettlingTime = 1.1 } };
        JointStudy Passes(int degree) => JointStudy.OfPasses([before, after], bump, 16.0, [SettlingCatalogue.RmsPitch], 30, 9, options, degree);
        JointStudy Rides(int degree) =>
            JointStudy.OfRides([before, after], RoadSpectrum.Of(RoadClass.C), 16.0, [RideCatalogue.PitchAcceleration], 20, 9, degree: degree);
        Assert.Equal(Passes(1).Changes[0][0].Values, Passes(3).Changes[0][0].Values);
        Assert.Equal(Rides(1).Changes[0][0].Values, Rides(3).Changes[0][0].Values);
        Assert.Equal(0, Rides(1).Unfinished);
    }

    // JCGM 100 5.1.2 with central differences of the response itself, against the spread of drawn responses.
    [Fact]
    public void A_rides_interval_agrees_with_its_slopes()
    {
        var doubts = CarDoubts.Of(MeasuredCar.With(MeasuredCar.Saloon, 0.05, 0.02, 0.02, 0.1, 0.05));
        Measure<CarOnRoad>[] measures = [RideCatalogue.PitchAcceleration, RideCatalogue.HeaveAcceleration, RideCatalogue.LoadVariation(AxleEnd.Rear)];
        var spectrum = RoadSpectrum.Of(RoadClass.C);
        var study = JointStudy.OfRides([doubts], spectrum, 16.0, measures, 400, 4, degree: 2);
        double[] Numbers(int source, double error)
        {
            var errors = new double[doubts.Sources.Count];
            errors[source] = error;
            var (car, load) = doubts.At(errors);
            var ride = new CarOnRoad(RandomResponse.Of(RideModel.Of(car, load), spectrum, 16.0));
            return [.. measures.Select(m => m.Of(ride))];
        }

        double[][] slopes = [.. doubts.Sources.Select((_, s) => Numbers(s, 0.2).Zip(Numbers(s, -0.2), (up, down) => (up - down) / 0.4).ToArray())];
        for (var j = 0; j < measures.Length; j++)
        {
            var expected = Math.Sqrt(slopes.Sum(s => s[j] * s[j]));
            // 400 draws give a standard deviation to 1/√800 = 3.5 %: four of those.
            Assert.InRange(study.Cars[0][j].StandardDeviation, 0.86 * expected, 1.14 * expected);
        }
    }

    private static Car Softer(Car car, double factor, string? press)
    {
        var law = Assert.IsType<LinearSpring>(car.Rear.Spring.Law);
        var rate = law.Rate.Times(factor);
        return car with
        {
            Rear = car.Rear with
            {
                Spring = car.Rear.Spring with { Law = law with { Rate = rate with { Doubt = rate.Doubt with { Shared = press } } } },
            },
        };
    }

    private static Car Pressed(Car car, string press) => Softer(car, 1.0, press);
}
