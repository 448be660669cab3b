using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Rules;

namespace Heaveline.Tests.Doubts;

public class DrawnDoubtsTests
{
    private static readonly Measure<CarAtRest>[] Statics = [AxleCatalogue.Frequency(AxleEnd.Front), AxleCatalogue.FrequencyRatio];

    private static readonly Road Bump = Road.From(new Versine { Height = new(0.02), Length = new(1.0) });

    // Binomial scatter of 1000 cases at 90 % is 0.95 %; 3 % are asked for.
    [Fact]
    public void Nine_in_ten_planted_cars_lie_in_the_stated_interval()
    {
        var (drawn, sloped) = (new int[Statics.Length], new int[Statics.Length]);
        const int cases = 1000;
        for (var i = 0; i < cases; i++)
        {
            var (truth, measured) = Planted(i);
            var study = JointStudy.Of([CarDoubts.Of(measured)], Statics, 120, (ulong)(1000 + i), degree: 2);
            var slopes = FirstOrder.Of(measured, null, Statics);
            var real = new CarAtRest(RideModel.Of(truth));
            for (var j = 0; j < Statics.Length; j++)
            {
                drawn[j] += study.Cars[0][j].Central90.Holds(Statics[j].Of(real)) ? 1 : 0;
                sloped[j] += slopes.Results[j].Central90.Holds(Statics[j].Of(real)) ? 1 : 0;
            }
        }

        Assert.All(drawn.Concat(sloped), hits => Assert.InRange(hits / (double)cases, 0.87, 0.93));
    }

    // Fewer cases, since each is a hundred passes: the binomial scatter of 120 cases is 2.7 %; three of those.
    [Fact]
    public void Nine_in_ten_planted_passes_lie_in_the_stated_interval()
    {
        Measure<Pass>[] measures = [SettlingCatalogue.RmsPitch, WholePassCatalogue.PeakPitchAcceleration];
        var options = new PassOptions
        {
            Method = FixedStep.Once with { LargestStep = 1.25e-3 },
            Record = new() { SamplesPerSecond = 200.0, SettlingTime = 1.1 },
        };
        var hits = new int[measures.Length];
        const int cases = 120;
        for (var i = 0; i < cases; i++)
        {
            var (truth, measured) = Planted(i);
            var study = JointStudy.OfPasses([CarDoubts.Of(measured)], Bump, 16.0, measures, 80, (ulong)(2000 + i), options, degree: 2);
            var real = Pass.Of(RideModel.Of(truth), Bump, 16.0, options);
            for (var j = 0; j < measures.Length; j++)
            {
                hits[j] += study.Cars[0][j].Central90.Holds(measures[j].Of(real)) ? 1 : 0;
            }
        }

        Assert.All(hits, n => Assert.InRange(n / (double)cases, 0.82, 0.98));
    }

    [Fact]
    public void Slopes_and_draws_agree_where_the_doubts_are_small()
    {
        var car = MeasuredCar.With(MeasuredCar.Saloon with { Ratio = 1.1 }, 0.05, 0.02, 0.03, 0.1, 0.1);
        var drawn = JointStudy.Of([CarDoubts.Of(car)], RestCatalogue.For(MeasureUse.Doubt), 4000, 11, degree: 2);
        var slopes = FirstOrder.Of(car, null, RestCatalogue.For(MeasureUse.Doubt));
        Assert.All(drawn.Cars[0].Zip(slopes.Results), pair =>
        {
            var (d, s) = pair;
            // 4000 draws: 1.1 % for a standard deviation, four of those and a little curvature.
            Assert.InRange(d.StandardDeviation, (0.95 * s.StandardDeviation) - 1e-9, (1.05 * s.StandardDeviation) + 1e-9);
            foreach (var share in s.Shares.Where(_ => s.StandardDeviation > 1e-9))
            {
                Assert.Equal(share.Share, d.Shares.Single(x => x.Source.Name == share.Source.Name).Share, 0.04);
            }
        });
    }

    [Fact]
    public void One_scale_for_both_axles_leaves_the_ratio_surer_than_two()
    {
        var one = FirstOrder.Of(
            MeasuredCar.With(MeasuredCar.Saloon, 0.0, 0.0, 0.04, scale: "scale A"), null, [AxleCatalogue.FrequencyRatio]).Results[0];
        var two = FirstOrder.Of(MeasuredCar.With(MeasuredCar.Saloon, 0.0, 0.0, 0.04), null, [AxleCatalogue.FrequencyRatio]).Results[0];
        Assert.True(one.StandardDeviation < 0.1 * two.StandardDeviation, $"{one.StandardDeviation:G4} {two.StandardDeviation:G4}");
    }

    [Fact]
    public void Both_frequencies_covary_through_a_shared_scale()
    {
        Measure<CarAtRest>[] ends = [AxleCatalogue.Frequency(AxleEnd.Front), AxleCatalogue.Frequency(AxleEnd.Rear)];
        var shared = FirstOrder.Of(MeasuredCar.With(MeasuredCar.Saloon, 0.0, 0.0, 0.04, scale: "scale A"), null, ends);
        var (f, r) = (shared.Results[0].StandardDeviation, shared.Results[1].StandardDeviation);
        Assert.Equal(f * r, shared.Covariance(0, 1), 1e-6 * f * r);
        var own = FirstOrder.Of(MeasuredCar.With(MeasuredCar.Saloon, 0.0, 0.0, 0.04), null, ends);
        Assert.Equal(0.0, own.Covariance(0, 1), 1e-3 * f * r);
    }

    // f ∝ r·√(k/m): relative variances (u_k/2)² + u_r² + (u_m/2)², and twice that for a ratio of two independent ends; the chance that a ratio
    // measured as 1.10 is below one is Φ(−ln 1.10/u). Rigid tyres and wheels without weight leave nothing else.
    [Theory]
    [InlineData(0.05, 0.03, 0.04, 0.044, 0.062, 0.06, 0.01)]
    [InlineData(0.10, 0.08, 0.06, 0.099, 0.140, 0.25, 0.03)]
    public void Standard_uncertainties_of_spring_ratio_and_mass_make_those_of_the_frequencies(
        double spring, double ratio, double mass, double frequency, double ends, double chance, double allowed)
    {
        // A stated half-width is two standard deviations.
        var car = MeasuredCar.With(Bare, 2.0 * spring, 2.0 * ratio, 2.0 * mass);
        var slopes = FirstOrder.Of(car, null, Statics);
        Assert.Equal(frequency, slopes.Results[0].StandardDeviation / slopes.Results[0].Stated, 0.0005);
        Assert.Equal(ends, slopes.Results[1].StandardDeviation / slopes.Results[1].Stated, 0.0006);
        var drawn = JointStudy.Of([CarDoubts.Of(car)], Statics, 4000, 42, degree: 2);
        Assert.Equal(chance, drawn.Cars[0][1].ChanceBelow(1.0), allowed);
    }

    [Fact]
    public void The_same_numbers_written_as_half_widths_leave_the_rear_the_stiffer_end()
    {
        var drawn = JointStudy.Of([CarDoubts.Of(MeasuredCar.With(Bare, 0.05, 0.03, 0.04))], Statics, 4000, 42, degree: 2);
        Assert.InRange(drawn.Cars[0][1].ChanceBelow(1.0), 0.0, 0.004);
        Assert.Contains("less than", DoubtSentences.SofterEnd(drawn.Cars[0][1]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_study_repeats_whatever_the_degree_of_parallelism()
    {
        var car = MeasuredCar.With(MeasuredCar.Saloon, 0.1, 0.06, 0.04, 0.2);
        var options = new PassOptions { Method = FixedStep.Once, Record = new() { SettlingTime = 1.1 } };
        var one = JointStudy.OfPasses([CarDoubts.Of(car)], Bump, 16.0, [SettlingCatalogue.RmsPitch], 50, 9, options, degree: 1);
        var many = JointStudy.OfPasses([CarDoubts.Of(car)], Bump, 16.0, [SettlingCatalogue.RmsPitch], 50, 9, options, degree: 4);
        Assert.Equal(one.Cars[0][0].Values, many.Cars[0][0].Values);
        Assert.Equal(9UL, many.Seed);
        var rest = JointStudy.Of([CarDoubts.Of(car)], Statics, 50, 9, degree: 3);
        Assert.Equal(JointStudy.Of([CarDoubts.Of(car)], Statics, 50, 9).Cars[0][1].Values, rest.Cars[0][1].Values);
    }

    [Fact]
    public void The_measurement_to_improve_is_the_one_with_the_greatest_share()
    {
        var car = MeasuredCar.With(MeasuredCar.Saloon, 0.02, 0.0, 0.0);
        var law = Assert.IsType<LinearSpring>(car.Rear.Spring.Law);
        car = car with { Rear = car.Rear with { Spring = car.Rear.Spring with { Law = law with { Rate = law.Rate.WithDoubt(0.1 * law.Rate.Si) } } } };
        var result = JointStudy.Of([CarDoubts.Of(car)], [AxleCatalogue.FrequencyRatio], 500, 1).Cars[0][0];
        Assert.StartsWith("Measure the rear spring rate next", DoubtSentences.MeasureNext(result), StringComparison.Ordinal);
        Assert.Equal(25.0 / 26.0, result.Shares[0].Share, 0.02);
    }

    private static SimpleCar Bare { get; } =
        MeasuredCar.Saloon with { FrontUnsprung = 0.01, RearUnsprung = 0.01, FrontTyreRate = 1e10, RearTyreRate = 1e10, Ratio = 1.10 };

    // A car of random size, and the same car as a garage would measure it: each value off by a normal error of its stated doubt.
    private static (Car Truth, Car Measured) Planted(int i)
    {
        double Draw(ulong k, double low, double high) => low + ((high - low) * SplitMix.Uniform(77, (16UL * (ulong)i) + k));
        var simple = MeasuredCar.Saloon with
        {
            SprungMass = Draw(0, 900.0, 1900.0),
            Wheelbase = 2.9,
            BehindFrontAxle = Draw(1, 1.2, 1.7),
            MeanFrequency = Draw(2, 1.1, 1.6),
            Ratio = Draw(3, 0.85, 1.3),
            FrontDamping = Draw(4, 0.2, 0.4),
            RearDamping = Draw(5, 0.2, 0.4),
        };
        var truth = MeasuredCar.With(simple, 0.10, 0.06, 0.04, 0.2, 0.15);
        return (truth, JointDraw.Of(JointDoubts.Of([CarDoubts.Of(truth)]), 99, i).Models[0].Car);
    }
}
