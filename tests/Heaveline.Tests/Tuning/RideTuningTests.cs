using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Rules;
using Heaveline.Tests.Doubts;
using Heaveline.Tuning;

namespace Heaveline.Tests.Tuning;

public class RideTuningTests
{
    [Fact]
    public void An_axle_that_the_body_hangs_on_has_no_frequency_and_is_refused_by_its_load()
    {
        var car = PlainCar.Saloon with
        {
            Front = PlainCar.Saloon.Front with { BumpStop = null, ReboundStop = null },
            Rear = PlainCar.Saloon.Rear with { BumpStop = null, ReboundStop = null },
        };
        var (behind, empty) = (6.0, RideModel.Of(car));
        var front = empty.Trim.AxleSprungLoad[0] / 9.80665;
        var wheelbase = car.Wheelbase.Si;
        // So much that the front springs are pulled by the weight of 10 kg.
        var load = new LoadState
        {
            Name = "far behind",
            Loads =
            [
                new()
                {
                    Name = "beam", Mass = new((front + 10.0) * wheelbase / (behind - wheelbase)), BehindFrontAxle = new(behind), Height = new(0.5),
                },
            ],
        };
        var refused = Assert.Throws<RefusedValueException>(() => RideTuning.Of(RideModel.Of(car, load)));
        Assert.Equal("front sprung load", refused.What);
        Assert.Contains("'far behind'", refused.Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Any_car_without_a_link_can_be_given_other_frequencies_and_dampings() =>
        Gen.Select(AnyCar.Any, AnyCar.Loads, Gen.Double[0.85, 1.2], Gen.Double[0.7, 1.4], Gen.Bool).Sample((car, load, ratio, damping, rigid) =>
        {
            // A stop that is touched has a rate of its own that no spring can undo.
            var free = car with
            {
                Interconnection = null,
                Front = car.Front with { BumpStop = null, ReboundStop = null },
                Rear = car.Rear with { BumpStop = null, ReboundStop = null },
            };
            var model = RideModel.Of(free, car.Kind == VehicleKind.TwoWheeler ? null : load);
            var now = RideTuning.Of(model, rigid);
            var wanted = now.WithRatio(now.Ratio * ratio).WithDamping(now.MeanDamping * damping);
            RideModel got;
            try
            {
                got = wanted.ApplyTo(model);
            }
            catch (RefusedValueException refused) when (HasTable(free))
            {
                // A table's rate jumps at its kinks: a rate inside the jump exists nowhere.
                Assert.Contains("kink", refused.Message, StringComparison.Ordinal);
                return;
            }

            var has = RideTuning.Of(got, rigid);
            Assert.Equal(wanted.FrontFrequency, has.FrontFrequency, 2e-4 * wanted.FrontFrequency);
            Assert.Equal(wanted.RearFrequency, has.RearFrequency, 2e-4 * wanted.RearFrequency);
            Assert.Equal(wanted.FrontDamping, has.FrontDamping, 1e-3 * wanted.FrontDamping);
            Assert.Equal(wanted.RearDamping, has.RearDamping, 1e-3 * wanted.RearDamping);
        }, iter: 300);

    private static bool HasTable(Car car) => car.Axles.Any(axle => axle.Spring.Law is TableSpring);

    [Fact]
    public void Frequencies_are_those_that_the_axles_report()
    {
        var model = RideModel.Of(PlainCar.Saloon);
        var (front, rear) = (AxleRide.Of(model, AxleEnd.Front), AxleRide.Of(model, AxleEnd.Rear));
        var tuning = RideTuning.Of(model);
        Assert.Equal(front.Rates.Frequency, tuning.FrontFrequency, 1e-12);
        Assert.Equal(rear.Rates.Frequency, tuning.RearFrequency, 1e-12);
        Assert.Equal(rear.Damping.Ratio, tuning.RearDamping, 1e-12);
        Assert.Equal(front.Rates.FrequencyOnRigidTyres, RideTuning.Of(model, onRigidTyres: true).FrontFrequency, 1e-12);
    }

    [Fact]
    public void A_simple_car_has_the_frequencies_and_ratios_it_was_given()
    {
        var simple = MeasuredCar.Saloon with { Ratio = 1.15, FrontDamping = 0.25, RearDamping = 0.35 };
        var back = SimpleCar.From(simple.Model());
        Assert.Equal(simple.MeanFrequency, back.MeanFrequency, 1e-9);
        Assert.Equal(simple.Ratio, back.Ratio, 1e-9);
        Assert.Equal(simple.FrontDamping, back.FrontDamping, 1e-9);
        Assert.Equal(simple.RearDamping, back.RearDamping, 1e-9);
        Assert.Equal(simple.DynamicIndex, back.DynamicIndex, 1e-9);
        Assert.Equal(simple.BehindFrontAxle, back.BehindFrontAxle, 1e-9);
    }

    // Both ends alike: the common spring gives nothing to pitch, so that its stiffness falls to 1 − s. Frequencies of an independent half car in Hz,
    // no published source.
    [Theory]
    [InlineData(0.00, 1.23)]
    [InlineData(0.25, 1.07)]
    [InlineData(0.50, 0.89)]
    [InlineData(0.65, 0.75)]
    public void A_common_spring_softens_pitch_and_leaves_heave(double share, double pitch)
    {
        var modes = BodyModes.Of((MeasuredCar.Saloon with { BehindFrontAxle = 1.3, SharedSprings = share }).Model());
        Assert.Equal(1.20, modes.Bounce.Frequency, 0.005);
        Assert.Equal(pitch, modes.Pitch.Frequency, 0.005);
    }

    [Fact]
    public void A_longer_wheelbase_keeps_the_index_or_the_inertia()
    {
        var model = RideModel.Of(PlainCar.Saloon, PlainCar.With(80.0, 2.2));
        var grown = ModelChange.Wheelbase(model, 2.9, inertiaGrows: true);
        Assert.Equal(ModelChange.DynamicIndexOf(model), ModelChange.DynamicIndexOf(grown), 1e-9);
        var kept = ModelChange.Wheelbase(model, 2.9, inertiaGrows: false);
        Assert.Equal(model.Body.PitchInertia, kept.Body.PitchInertia, 1e-9 * model.Body.PitchInertia);
        Assert.Equal(1.05, ModelChange.DynamicIndexOf(ModelChange.DynamicIndex(model, 1.05)), 1e-9);
    }

    [Fact]
    public void Every_axis_of_a_rule_sets_what_it_says_on_a_loaded_car()
    {
        var model = RideModel.Of(PlainCar.Saloon, PlainCar.With(80.0, 2.2));
        RuleAxis[] axes =
        [
            RuleAxis.FrequencyRatio([1.0, 1.2]), RuleAxis.FrequencyRatio([1.0, 1.2], onRigidTyres: true), RuleAxis.Damping([0.2, 0.35]),
            RuleAxis.DynamicIndex([0.8, 1.1]), RuleAxis.Wheelbase([2.4, 2.9], inertiaGrows: true),
            RuleAxis.Wheelbase([2.4, 2.9], inertiaGrows: false),
        ];
        foreach (var axis in axes)
        {
            Assert.All(axis.Values, v => Assert.Equal(v, axis.Own(axis.Change(model, v)), 1e-6 * v));
        }

        var shared = RuleAxis.SharedSprings([0.0, 0.4]);
        // The ends are not alike, so that heave and pitch couple and the bounce mode shifts a little.
        Assert.Equal(BodyModes.Of(SimpleCar.From(model).Model()).Bounce.Frequency, BodyModes.Of(shared.Change(model, 0.4)).Bounce.Frequency, 0.08);
        Assert.True(BodyModes.Of(shared.Change(model, 0.4)).Pitch.Frequency < 0.85 * BodyModes.Of(shared.Change(model, 0.0)).Pitch.Frequency);
    }

    [Fact]
    public void A_link_taken_out_leaves_heave_as_stiff()
    {
        var joined = (MeasuredCar.Saloon with { SharedSprings = 0.4, Ratio = 1.1 }).Model();
        var apart = ModelChange.WithoutLink(joined);
        var alone = (MeasuredCar.Saloon with { Ratio = 1.1 }).Model();
        var (a, b) = (RideTuning.Of(apart), RideTuning.Of(alone));
        Assert.Equal(b.FrontFrequency, a.FrontFrequency, 1e-6);
        Assert.Equal(b.RearFrequency, a.RearFrequency, 1e-6);
        Assert.Equal(b.FrontDamping, a.FrontDamping, 1e-6);
        Assert.Equal(b.RearDamping, a.RearDamping, 1e-6);
    }
}
