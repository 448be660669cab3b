using System.Globalization;
using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Quantities;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

public class PassLimitTests
{
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.05), Length = new(20.0) });

    [Fact]
    public void A_pass_of_too_many_steps_is_refused_before_it_begins_and_names_what_forces_them()
    {
        var refused = Assert.Throws<RefusedValueException>(() => Pass.Of(
            Mistyped(62e6), Hump, 10.0, cancellation: TestContext.Current.CancellationToken));
        Assert.Equal("number of steps of the pass", refused.What);
        Assert.Contains("µs, which the front damper forces", refused.Value);
        Assert.Equal("at most 50000000", refused.Limit);
        Assert.Contains("Check the values of the front damper", refused.Message);
        Assert.Throws<RefusedValueException>(() => PassBatch.Of(
            [new PassRequest(Mistyped(62e6), Hump, 10.0)], cancellation: TestContext.Current.CancellationToken));
    }

    [Fact]
    public void A_record_that_no_memory_holds_is_refused_with_its_length()
    {
        var waves = Road.From(new SineRoad { Amplitude = new(0.01), Wavelength = new(900.0), Waves = 100.0, LeadIn = false });
        foreach (var method in new PassMethod[] { FixedStep.Default, new ExactPieces() })
        {
            var refused = Assert.Throws<RefusedValueException>(() => Pass.Of(
                RideModel.Of(ExactCars.Saloon), waves, 0.5, new() { Method = method }, TestContext.Current.CancellationToken));
            Assert.Equal("number of samples of the pass", refused.What);
            Assert.Contains("over 90000 m of road and 2.72 m of wheelbase at 1.8 km/h", refused.Value);
        }
    }

    [Fact]
    public void What_forces_the_step_is_the_part_that_was_made_too_stiff()
    {
        var car = ExactCars.Saloon;
        void Forced(StepCause cause, AxleEnd end, Car changed) =>
            Assert.Equal((cause, end), StepLimit.Of(RideModel.Of(changed)) is var limit ? (limit.Cause, limit.End) : default);

        Forced(StepCause.TyreRate, AxleEnd.Rear, car with { Rear = car.Rear with { Tyre = car.Rear.Tyre with { Rate = new(1e9) } } });
        Forced(StepCause.TyreDamping, AxleEnd.Front, car with { Front = car.Front with { Tyre = car.Front.Tyre with { Damping = new(1e6) } } });
        Forced(StepCause.AntiRollBar, AxleEnd.Front, car with { Front = car.Front with { AntiRollBar = new(1e9) } });
        Forced(StepCause.UnsprungMass, AxleEnd.Rear, car with { Rear = car.Rear with { UnsprungMass = new(1e-6) } });
        Forced(StepCause.Damper, AxleEnd.Front, Stiff(62e6));
    }

    [Fact]
    public void A_stop_is_obeyed_in_the_midst_of_the_steps()
    {
        var model = Mistyped(1e6);
        var timing = PassTiming.Of(new(model, Hump, 10.0), PassRecord.Default, FixedStep.Default);
        Assert.InRange(timing.Steps, 500_000, 5_000_000);
        using var stop = new CancellationTokenSource();
        using var stepper = new StoppedStepper(
            Stepper.Of<ScalarLane>([model.Numbers], timing.StepsPerSample, timing.Step), timing.StepsPerSample, 100_000, stop);
        Assert.ThrowsAny<OperationCanceledException>(
            () => PassRun.Of(stepper, RoadUnderWheels.Of(model, Hump), 10.0, timing, stop.Token));
        // Past the stop not one stretch more is stepped through.
        Assert.InRange(stepper.Stepped, 100_000, 150_000);
        // And the usual run hands its stop on to the steps.
        Assert.ThrowsAny<OperationCanceledException>(
            () => FixedStep.Default.Run(new PassRequest(model, Hump, 10.0), PassRecord.Default, stop.Token));
    }

    [Fact]
    public void A_pass_of_many_steps_needs_no_more_room_than_its_samples()
    {
        var model = Mistyped(1e6);
        var road = RoadUnderWheels.Of(model, Hump);
        var timing = PassTiming.Of(new(model, Hump, 10.0), PassRecord.Default, FixedStep.Default);
        Assert.InRange(timing.Steps, 500_000, 5_000_000);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var samples = PassRun.Of(model, road, 10.0, timing, TestContext.Current.CancellationToken);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, (8L * samples.Length) + 2_000_000);
    }

    [Fact]
    public void Long_records_stand_side_by_side_only_as_far_as_the_room_goes()
    {
        Assert.Equal(8, PassLimit.Width(2000, 8));
        Assert.Equal(4, PassLimit.Width(1_000_000, 8));
        Assert.Equal(1, PassLimit.Width(PassLimit.MostSamples, 8));
    }

    private static RideModel Mistyped(double newtons) => RideModel.Of(Stiff(newtons));

    private static Car Stiff(double newtons)
    {
        var table = (TableDamper)ExactCars.Saloon.Front.Damper.Law;
        var bump = new ForceTable(table.Bump.At, [.. table.Bump.Force.SkipLast(1), newtons]);
        return ExactCars.Saloon with
        {
            Front = ExactCars.Saloon.Front with { Damper = ExactCars.Saloon.Front.Damper with { Law = new TableDamper(bump, table.Rebound) } },
        };
    }

    [Fact]
    public void A_travel_just_past_its_hard_limit_is_written_with_as_many_digits_as_tell_them_apart()
    {
        var model = RideModel.Of(CarFile.Load(Path.Combine(House.Checkout.Root, "examples", "garage", "fern-saloon.yaml")).Value!);
        var travels = PassRange.Travels(model);
        var sample = new double[Channel.Count];
        var still = travels[0].Of(sample);
        sample[Channel.Heave] = 1.0;
        var slope = travels[0].Of(sample) - still;
        var limit = model.Numbers.Elements.BumpLimit[0];
        sample[Channel.Heave] = (limit + 2e-5 - still) / slope;
        var said = PassRange.Leaves(model, travels, sample, 0.1).Sentence;
        var numbers = said.Split(" of ").Skip(1).Select(part => part.Split(' ')[0]).ToList();
        Assert.Equal(2, numbers.Count);
        Assert.NotEqual(numbers[0], numbers[1]);
        Assert.All(numbers, number => Assert.Equal(1000.0 * limit, double.Parse(number, CultureInfo.InvariantCulture), 0.1));
    }
}
