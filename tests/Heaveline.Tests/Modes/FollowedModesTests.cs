using System.Globalization;
using CsCheck;
using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Measures;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Tests.Modes;

public class FollowedModesTests
{
    /// <summary>
    /// Past a dynamic index of 1 the name "bounce" leaps from one end to the other. Followed step by step no frequency moves by more than twice what
    /// the index does: ω² of the body's own inertia is at most proportional to it.
    /// </summary>
    [Fact]
    public void A_mode_that_is_followed_past_an_index_of_one_changes_its_frequency_without_a_leap() =>
        AnyCar.Linear.Sample(
            drawn =>
            {
                const double step = 0.001;
                BodyModes? before = null;
                for (var index = 0.97; index < 1.03; index += step)
                {
                    var modes = BodyModes.Of(RideModel.Of(drawn with { Body = drawn.Body with { DynamicIndex = new(index) } }));
                    if (before is not null)
                    {
                        modes = modes.Like(before);
                        Assert.Equal(before.First.Frequency, modes.First.Frequency, 2.0 * step * before.First.Frequency);
                        Assert.Equal(before.Second.Frequency, modes.Second.Frequency, 2.0 * step * before.Second.Frequency);
                    }

                    before = modes;
                }
            },
            iter: 200);

    [Fact]
    public void Small_doubts_leave_a_followed_mode_by_its_frequency() =>
        Gen.Select(AnyCar.Linear, Gen.Double[0.98, 1.02], Gen.Double[-1.0, 1.0], Gen.Double[-1.0, 1.0]).Sample(
            (drawn, index, front, rear) =>
            {
                var car = drawn with { Body = drawn.Body with { DynamicIndex = new(index) } };
                var stated = BodyModes.Of(RideModel.Of(car));
                var near = BodyModes.Of(RideModel.Of(car with
                {
                    Front = car.Front with { Spring = Stiffer(car.Front.Spring, 1.0 + (1e-4 * front)) },
                    Rear = car.Rear with { Spring = Stiffer(car.Rear.Spring, 1.0 + (1e-4 * rear)) },
                })).Like(stated);
                Assert.Equal(stated.First.Frequency, near.First.Frequency, 2e-4 * stated.First.Frequency);
                Assert.Equal(stated.Second.Frequency, near.Second.Frequency, 2e-4 * stated.Second.Frequency);
            },
            iter: 500);

    [Fact]
    public void Following_exchanges_modes_and_makes_none() =>
        Gen.Select(AnyCar.Any, AnyCar.Any).Sample(
            (one, other) =>
            {
                var (own, like) = (BodyModes.Of(RideModel.Of(one)), BodyModes.Of(RideModel.Of(other)));
                var followed = own.Like(like);
                var (first, second) = (followed.First, followed.Second);
                Assert.True((first, second) == (own.First, own.Second) || (first, second) == (own.Second, own.First));
                Assert.Equal((own.First, own.Second), (own.Like(own).First, own.Like(own).Second));
                Assert.Equal((like.First, like.Second), (like.Like(followed).Like(like).First, like.Like(followed).Like(like).Second));
            },
            iter: 200);

    [Fact]
    public void What_moves_agrees_with_the_place_of_the_centre_and_the_place_told_is_the_place() =>
        Gen.Select(AnyCar.Any, Gen.Double[0.9, 1.1]).Sample(
            (drawn, index) =>
            {
                var car = drawn with { Body = drawn.Body with { DynamicIndex = new(index) } };
                var modes = BodyModes.Of(RideModel.Of(car));
                foreach (var mode in new[] { modes.First, modes.Second })
                {
                    var (n, length) = (mode.NodeBehindFrontAxle, car.Wheelbase.Si);
                    // From an axle inwards a fifth of the wheelbase, outwards a third: there the other end moves four times as far.
                    bool Near(double outwards) => outwards > -length / 5.0 && outwards < length / 3.0;
                    var expected = Near(n - length) ? BodySwing.FrontEnd
                        : Near(-n) ? BodySwing.RearEnd
                        : n >= 0.0 && n <= length ? BodySwing.Pitch : BodySwing.Bounce;
                    Assert.Equal(expected, mode.Swing);
                    Assert.Equal(n >= 0.0 && n <= length, mode.NodeBetweenAxles);
                    Assert.Equal(n, Told(BodySwings.Clause(mode), length), 0.00501);
                }
            },
            iter: 500);

    /// <summary>
    /// A saloon whose index is doubtful about 1: half its draws call the front end's mode bounce, half pitch. Its interval is that of one mode where
    /// the spread of the draws is what the slopes of one mode make of it.
    /// </summary>
    [Fact]
    public void An_interval_of_a_mode_holds_one_mode()
    {
        var car = PlainCar.Saloon with
        {
            Body = PlainCar.Saloon.Body with { DynamicIndex = new(1.0, new Doubt(0.03)) },
            Rear = PlainCar.RearAxle with { Spring = new Spring { Law = new LinearSpring { Rate = new(32000.0, new Doubt(1000.0)) } } },
        };
        var model = RideModel.Of(car);
        var measures = RestCatalogue.Body;
        var drawn = JointStudy.Of([CarDoubts.Of(car)], measures, 1000, 1).Cars[0];
        var slopes = FirstOrder.Of(car, null, measures).Results;
        foreach (var key in new[] { "first-mode", "first-mode-centre", "second-mode", "second-mode-centre" })
        {
            var (draws, slope) = (drawn.Single(r => r.Measure.Key == key), slopes.Single(r => r.Measure.Key == key));
            Assert.Equal(slope.StandardDeviation, draws.StandardDeviation, 0.1 * slope.StandardDeviation);
        }

        // The first mode is the softer front end's, about a point near the rear axle in every draw.
        Assert.Equal(BodySwing.FrontEnd, BodyModes.Of(model).First.Swing);
        var centre = drawn.Single(r => r.Measure.Key == "first-mode-centre").Central90;
        Assert.InRange(centre.Low, 2.6 - 0.3, 2.6);
        Assert.InRange(centre.High, 2.6, 2.6 + 0.3);
    }

    [Fact]
    public void A_variant_is_compared_mode_by_mode_of_like_shape()
    {
        // Springs exchanged: the front end, slower before, is the faster one after.
        var car = PlainCar.Saloon with
        {
            Body = PlainCar.Saloon.Body with { DynamicIndex = new(1.0) },
            Rear = PlainCar.RearAxle with { Spring = new Spring { Law = new LinearSpring { Rate = new(32000.0) } } },
        };
        var variant = car with { Front = car.Front with { Spring = new Spring { Law = new LinearSpring { Rate = new(40000.0) } } } };
        var measures = RestCatalogue.Body;
        var study = JointStudy.Of([CarDoubts.Of(car), CarDoubts.Of(variant)], measures, 10, 1);
        double Change(string key) => study.Changes[0].Single(r => r.Measure.Key == key).Stated;
        var (before, after) = (AxleRide.Of(RideModel.Of(car)), AxleRide.Of(RideModel.Of(variant)));
        Assert.True(before[0].Rates.Frequency < before[1].Rates.Frequency && after[0].Rates.Frequency > after[1].Rates.Frequency);
        // At an index of 1 each mode is an axle's own: the front one gains what its springs do, the rear one nothing.
        Assert.Equal(after[0].Rates.Frequency - before[0].Rates.Frequency, Change("first-mode"), 1e-9);
        Assert.Equal(0.0, Change("second-mode"), 1e-9);
        Assert.Equal(0.0, Change("first-mode-centre"), 1e-6);
    }

    // "… about a point 0.10 m ahead of the rear axle", "… about the front axle": m behind the front axle.
    private static double Told(string clause, double wheelbase)
    {
        var from = clause.EndsWith("rear axle", StringComparison.Ordinal) ? wheelbase : 0.0;
        var words = clause.Split(' ');
        var at = Array.IndexOf(words, "point");
        return at < 0
            ? from
            : from + ((words[at + 3] == "behind" ? 1.0 : -1.0) * double.Parse(words[at + 1], CultureInfo.InvariantCulture));
    }

    private static Spring Stiffer(Spring spring, double times) =>
        spring with { Law = new LinearSpring { Rate = new(((LinearSpring)spring.Law).Rate.Si * times) } };
}
