using System.Globalization;
using System.Text.RegularExpressions;
using Heaveline.Cars;
using Heaveline.Causes;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Quantities;
using Heaveline.Roads;
using Heaveline.Rules;
using Heaveline.Tests.Doubts;

namespace Heaveline.Tests.Causes;

public class WhyTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.06), Length = new(3.7) });

    private static readonly Road Short = Road.From(new HalfSine { Height = new(0.02), Length = new(0.5) });

    [Fact]
    public void A_planted_cause_comes_first()
    {
        var missed = new List<string>();
        const int cars = 120;
        for (var i = 0; i < cars; i++)
        {
            var kind = (PitchCauseKind)(i % 10);
            var why = Planted(i, kind);
            // Delay and lever both shrink with the wheelbase and cancel in the settling, and on a long hump in the hit too: a short one shows in the
            // hit of a short bump, which meets one axle at a time.
            var ranking = kind == PitchCauseKind.Wheelbase ? why.Hit : why.Settling;
            if (ranking.Causes[0].Kind != kind)
            {
                missed.Add($"{i} {kind}: {string.Join(", ", ranking.Causes.Take(3).Select(c => $"{c.Kind} {c.Relative:F2}"))} of "
                    + $"{ranking.Causes.Single(c => c.Kind == kind).Relative:F2}");
            }
        }

        Assert.True(missed.Count <= 0.05 * cars, string.Join('\n', missed));
    }

    [Fact]
    public void Shares_add_up_to_the_difference_from_the_neutral_car()
    {
        var why = Planted(3, PitchCauseKind.DampingLevel);
        foreach (var ranking in new[] { why.Settling, why.Hit })
        {
            Assert.Equal(ranking.Value - ranking.NeutralValue, ranking.Causes.Sum(c => c.Share), 1e-9 * ranking.Value);
        }

        Assert.Equal(0, why.Missing);
    }

    [Fact]
    public void Drawn_orders_come_near_to_all_orders()
    {
        var (model, speed) = Car(12, PitchCauseKind.DampingLevel);
        var all = Why.Of(model, Hump, speed, degree: 2);
        var some = Why.Of(model, Hump, speed, WhyOptions.Default with { MostExact = 1, Permutations = 16 }, degree: 2);
        Assert.Equal(all.Settling.Causes[0].Kind, some.Settling.Causes[0].Kind);
        foreach (var cause in all.Settling.Causes)
        {
            Assert.Equal(cause.Relative, some.Settling.Causes.Single(c => c.Kind == cause.Kind).Relative, 0.05);
            Assert.Equal(cause.Alone, some.Settling.Causes.Single(c => c.Kind == cause.Kind).Alone, 1e-6 * all.Settling.Value);
        }
    }

    // Two players who share a prize equally, one who adds 1 to any set: the textbook properties of a fair share.
    [Fact]
    public void Fair_shares_are_symmetric_and_give_a_lone_player_his_own()
    {
        double[] value = [.. Enumerable.Range(0, 8).Select(set => 10.0 - ((set & 3) == 3 ? 4.0 : 0.0) - ((set & 4) != 0 ? 1.0 : 0.0))];
        Assert.All(FairShares.Of(value, 3).Zip([2.0, 2.0, 1.0]), p => Assert.Equal(p.Second, p.First, 1e-12));
        var orders = FairShares.Orders(3, 40, 1);
        Assert.All(
            FairShares.Of(value.Select((v, i) => (v, i)).ToDictionary(p => p.i, p => p.v), orders, 3).Zip([2.0, 2.0, 1.0]),
            p => Assert.Equal(p.Second, p.First, 0.4));
    }

    [Fact]
    public void Every_cause_has_a_sentence_with_its_size()
    {
        var why = Planted(0, PitchCauseKind.Load);
        foreach (var ranking in new[] { why.Settling, why.Hit })
        {
            Assert.All(ranking.Causes, c =>
            {
                Assert.Equal(c.Share / ranking.Value, c.Relative, 1e-12);
                var size = Regex.Match(
                    c.Sentence,
                    "^.+ instead of .+: it (?:(hardly changes)|makes ([0-9.]+)(?:°| rad/s²)(?: [(]([0-9]+) %[)])? of|"
                    + $"takes ([0-9.]+)(?:°| rad/s²) off) the {Regex.Escape(ranking.Measure.Name)}[.]$");
                Assert.True(size.Success, c.Sentence);
                // The number in the sentence is the cause's own, and says which way it works; what helps is never a share of the whole.
                double Number(int group) => double.Parse(size.Groups[group].Value, CultureInfo.InvariantCulture);
                Assert.Equal(Math.Abs(c.Relative) < 0.005, size.Groups[1].Success);
                if (!size.Groups[1].Success)
                {
                    var told = size.Groups[2].Success ? Number(2) : -Number(4);
                    Assert.Equal(ranking.Measure.Unit.Of(c.Share), told, 0.5 * Math.Pow(10.0, -ranking.Measure.Digits) + 1e-9);
                }

                if (size.Groups[3].Success)
                {
                    Assert.Equal(100.0 * c.Relative, Number(3), 0.5 + 1e-9);
                    Assert.InRange(Number(3), 0.0, 100.0);
                }
            });
        }

        Assert.StartsWith("Load, ", why.Settling.Causes[0].Sentence, StringComparison.Ordinal);
        Assert.Matches("it makes 0[.][0-9]+° [(][1-9][0-9] %[)] of", why.Settling.Causes[0].Sentence);
    }

    // Friction alone taken away is the same car without it.
    [Fact]
    public void What_a_cause_makes_alone_is_the_car_less_the_car_without_it()
    {
        var (model, speed) = Car(7, PitchCauseKind.Friction);
        Axle Smooth(Axle axle) => axle with { Friction = Friction.None };
        var smooth = RideModel.Of(model.Car with { Front = Smooth(model.Car.Front), Rear = Smooth(model.Car.Rear) }, model.Load);
        var why = Why.Of(model, Hump, speed, degree: 2);
        foreach (var (ranking, measure) in new[] { (why.Settling, SettlingCatalogue.RmsPitch), (why.Hit, HitCatalogue.PeakPitchAcceleration) })
        {
            double Of(RideModel car) => measure.Of(Pass.Of(car, Hump, speed));
            Assert.Equal(Of(model), ranking.Value, 1e-8 * ranking.Value);
            var alone = ranking.Causes.Single(c => c.Kind == PitchCauseKind.Friction).Alone;
            Assert.True(Math.Abs(alone) > 0.01 * ranking.Value);
            Assert.Equal(Of(model) - Of(smooth), alone, 1e-8 * ranking.Value);
        }
    }

    [Fact]
    public void Of_a_car_that_does_not_get_across_it_is_said_over_what_how_fast_and_where()
    {
        var wall = Road.From(new RoundTopHump { Height = new(0.9), Length = new(3.7) });
        var model = MeasuredCar.Saloon.Model();
        var none = Assert.Throws<RunFailedException>(() => Why.Of(model, wall, 30.0));
        var own = Pass.Of(model, wall, 30.0);
        Assert.Contains($"{model.Load.Name}, does not get across round-top hump, 900 mm high", none.Reason, StringComparison.Ordinal);
        Assert.Contains(", at 108 km/h: with the front wheels ", none.Reason, StringComparison.Ordinal);
        Assert.Matches(@" \d+\.\d\d m past where the obstacle begins, ", none.Reason);
        Assert.Equal(own.OutcomeSentence, none.Advice);
        Assert.DoesNotContain("it must be", none.Message, StringComparison.Ordinal);
    }

    private static Why Planted(int i, PitchCauseKind kind)
    {
        var (model, speed) = Car(i, kind);
        return Why.Of(model, kind == PitchCauseKind.Wheelbase ? Short : Hump, speed, degree: 2);
    }

    // A car near to neutral in everything, drawn at random, with one thing far from it.
    private static (RideModel Model, double Speed) Car(int i, PitchCauseKind kind)
    {
        double Draw(ulong k, double low, double high) => low + ((high - low) * SplitMix.Uniform(31, (16UL * (ulong)i) + k));
        var speed = Draw(0, 50.0, 100.0) / 3.6;
        var mean = Draw(1, 1.15, 1.45);
        var simple = new SimpleCar
        {
            SprungMass = Draw(2, 900.0, 1800.0), Wheelbase = Draw(3, 2.6, 2.8), BehindFrontAxle = Draw(4, 1.2, 1.5),
            DynamicIndex = Draw(5, 0.96, 1.04),
            FrontUnsprung = 80.0, RearUnsprung = 78.0, FrontTyreRate = 1.0, RearTyreRate = 1.0, MeanFrequency = mean,
            Ratio = Math.Min(1.3, RatioRule.InStep(2.7, 0.95 * mean, speed, 0.7)) * Draw(6, 0.97, 1.03), FrontDamping = Draw(7, 0.28, 0.32),
            RearDamping = Draw(8, 0.28, 0.32),
        };
        simple = kind switch
        {
            PitchCauseKind.FrequencyRatio => simple with { Ratio = 0.75 },
            PitchCauseKind.DampingLevel => simple with { FrontDamping = 0.12, RearDamping = 0.12 },
            PitchCauseKind.DampingSplit => simple with { FrontDamping = 0.30 * 2.2, RearDamping = 0.30 / 2.2 },
            PitchCauseKind.DynamicIndex => simple with { DynamicIndex = 1.6 },
            PitchCauseKind.Wheelbase => simple with { Wheelbase = 1.8, BehindFrontAxle = 0.9 },
            PitchCauseKind.Interconnection => simple with { SharedSprings = 0.5 },
            _ => simple,
        };
        var tyres = kind == PitchCauseKind.Tyre ? 2.0 : Draw(9, 9.5, 10.5);
        double Tyre(double mass, double frequency) => tyres * mass * Math.Pow(2.0 * Math.PI * frequency, 2);
        simple = simple with
        {
            FrontTyreRate = Tyre(simple.FrontMass, mean / Math.Sqrt(simple.Ratio)),
            RearTyreRate = Tyre(simple.RearMass, mean * Math.Sqrt(simple.Ratio)),
        };
        var car = simple.ToCar();
        Car Both(Func<Axle, Axle> change) => car with { Front = change(car.Front), Rear = change(car.Rear) };
        car = kind switch
        {
            PitchCauseKind.Friction => Both(a => a with { Friction = new Friction { HalfWidth = new(500.0) } }),
            PitchCauseKind.Stops => Both(a => a with { BumpStop = new Stop { Clearance = new(0.01), Rate = new Amount<Stiffness>(80e3) } }),
            _ => car,
        };
        var load = kind == PitchCauseKind.Load ? PlainCar.With(0.3 * simple.SprungMass, simple.Wheelbase + 0.4) : null;
        return (RideModel.Of(car, load), speed);
    }
}
