using CsCheck;
using Heaveline.Cars;
using Heaveline.Files.Cars;
using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;
using Heaveline.Roads;
using Heaveline.Tests.House;

namespace Heaveline.Tests.Passes;

/// <summary>
/// The kernel in blocks against <see cref="PlainMotion"/>, the equations of motion as they stand in the books over the list of elements: every demo
/// car, random cars with every element, each over several roads. Both take the same steps, so what may differ is rounding.
/// </summary>
public class KernelTests
{
    // Of the peak of each channel. What a rounding grows to while a stop, a tyre or friction lets go: own choice, the task's own bound.
    private const double Near = 1e-9;

    // A channel that is zero but for rounding counts against so much of its unit.
    private const double Zero = 1e-6;

    private static readonly Road[] Roads =
    [
        Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) }),
        Road.From(new RoundTopHump { Height = new(0.04), Length = new(0.6) }, Tracks.Left),
        Road.From(new Ramp { Height = new(0.09), Length = new(1.5) }),
    ];

    public static TheoryData<string> Demo =>
        [.. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "examples", "garage"), "*.yaml")
            .Where(file => CarFile.Load(file).Value is not null)
            .Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Demo))]
    public void Every_demo_car_moves_as_the_list_of_its_elements_says(string name)
    {
        var model = RideModel.Of(CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", name + ".yaml")).Value!);
        foreach (var (road, speed) in Roads.Zip([6.0, 14.0, 25.0]))
        {
            Same(model, road, speed);
        }
    }

    [Fact]
    public void Every_random_car_moves_as_the_list_of_its_elements_says() =>
        Gen.Select(AnyCar.Any, AnyCar.Loads, Gen.Double[4.0, 30.0], Gen.Int[0, 2]).Sample(
            (car, load, speed, road) => Same(
                RideModel.Of(car, car.Kind == VehicleKind.Car ? load : LoadState.Reference), Roads[road], speed), iter: 200);

    [Fact]
    public void A_sharp_step_moves_a_car_as_the_list_of_its_elements_says()
    {
        foreach (var tracks in new[] { Tracks.Both, Tracks.Left, Tracks.Right })
        {
            var road = Road.From(new Plank { Height = new(0.02), Length = new(0.3), Edge = new(0.0) }, tracks);
            foreach (var car in new[] { ExactCars.OnUndampedTyres, ExactCars.Linear })
            {
                Same(RideModel.Of(car), road, 9.3);
            }
        }
    }

    /// <summary>
    /// Every demo car and random cars in single precision: what its rounding takes away lies below what a pass in single precision states for it.
    /// </summary>
    [Fact]
    public void Single_precision_is_off_by_less_than_it_states()
    {
        List<RideModel> garage = [.. Demo.Select(row => RideModel.Of(
            CarFile.Load(Path.Combine(Checkout.Root, "examples", "garage", row.Data + ".yaml")).Value!))];
        for (var i = 0; i < 60; i++)
        {
            garage.Add(RideModel.Of(AnyCar.Any.Single(_ => true, $"{i:D10}0000")));
        }

        PassRequest[] asked = [.. garage.SelectMany(model => Roads.Zip([6.0, 14.0, 25.0], (road, speed) => new PassRequest(model, road, speed)))];
        var options = new PassOptions { Record = new() { SettlingTime = 1.0 } };
        var wide = PassBatch.Of(asked, options, TestContext.Current.CancellationToken);
        var single = PassBatch.Of(asked, options with { Method = new FixedStep { InSingle = true } }, TestContext.Current.CancellationToken);
        for (var i = 0; i < asked.Length; i++)
        {
            Assert.Equal(wide[i].Outcome, single[i].Outcome);
            Assert.InRange(Miss(wide[i].Pitch, single[i].Pitch), 1e-12, PassError.PitchInSingle);
            for (var wheel = 0; wheel < 4; wheel++)
            {
                Assert.InRange(Miss(wide[i].TyreLoad(wheel), single[i].TyreLoad(wheel)), 0.0, PassError.TyreLoadInSingle);
            }

            Assert.True(single[i].Statistics.PitchError > PassError.PitchInSingle);
            Assert.True(single[i].Statistics.TyreLoadError > PassError.TyreLoadInSingle);
        }
    }

    private static double Miss(IReadOnlyList<double> truth, IReadOnlyList<double> own) =>
        truth.Zip(own, (a, b) => Math.Abs(a - b)).Max() / truth.Max(Math.Abs);

    private static void Same(RideModel model, Road road, double speed)
    {
        var timing = PassTiming.Of(new(model, road, speed), new PassRecord { SettlingTime = 1.0 }, FixedStep.Default);
        var under = RoadUnderWheels.Of(model, road);
        var steps = timing.Samples * timing.StepsPerSample;
        var table = under.Table(speed, timing.Start, timing.Step, steps);
        var jumps = under.Jumps(speed, timing.Start, timing.Step);
        RoadSteps<ScalarLane> All() => new(0, table, default, jumps);
        var truth = Plain(model.Numbers, timing, table, jumps);
        var samples = new ScalarLane[truth.Length];
        using (var scalar = Stepper.Of<ScalarLane>([model.Numbers], timing.StepsPerSample, timing.Step))
        {
            scalar.Run(All(), timing.Samples, samples);
        }

        Compare(truth, Array.ConvertAll(samples, lane => lane.Value), "one car, scalar");
        using (var alone = Stepper.Of(model.Numbers, timing.StepsPerSample, timing.Step))
        {
            // In two goes: a run may be halted and go on.
            var half = timing.Samples / 2;
            var middle = half * timing.StepsPerSample;
            alone.Run(new(0, table.AsSpan(0, 2 * middle), default, jumps), half, samples.AsSpan(0, half * Channel.Count));
            alone.Run(
                new(middle, table.AsSpan(2 * middle), default, jumps), timing.Samples - half, samples.AsSpan(half * Channel.Count));
        }

        Compare(truth, Array.ConvertAll(samples, lane => lane.Value), "one car, axles side by side");
    }

    private static double[] Plain(RideNumbers n, PassTiming timing, Quad<ScalarLane>[] road, RoadJump<ScalarLane>[] jumps)
    {
        var motion = new PlainMotion(n);
        var samples = new double[timing.Samples * Channel.Count];
        for (int step = 0, jumped = 0; step < timing.Samples * timing.StepsPerSample; step++)
        {
            motion.Accelerate(road[2 * step], road[(2 * step) + 1]);
            if (step % timing.StepsPerSample == 0)
            {
                var sample = samples.AsSpan(step / timing.StepsPerSample * Channel.Count, Channel.Count);
                motion.Place.CopyTo(sample);
                motion.Acceleration.CopyTo(sample[Channel.Accelerations..]);
                motion.Tyre.CopyTo(sample[Channel.Tyre..]);
                motion.Rate.CopyTo(sample[Channel.Rates..]);
                for (var i = 0; i < 4; i++)
                {
                    sample[Channel.Force + i] = motion.Force[i] - n.TrimForce[i];
                }
            }

            for (; jumped < jumps.Length && jumps[jumped].At == step; jumped++)
            {
                motion.Jump(jumps[jumped]);
            }

            motion.Advance(timing.Step);
        }

        return samples;
    }

    private static void Compare(double[] truth, double[] samples, string what)
    {
        for (var channel = 0; channel < Channel.Count; channel++)
        {
            var (miss, peak, where) = (0.0, 0.0, 0);
            for (int at = channel, k = 0; at < truth.Length; at += Channel.Count, k++)
            {
                var off = Math.Abs(samples[at] - truth[at]);
                (miss, where) = !(off <= miss) ? (off, k) : (miss, where);
                // A car alike on both sides rolls by rounding only: roll counts against pitch too.
                peak = Math.Max(peak, Math.Max(Math.Abs(truth[at]), IsRoll(channel) ? Math.Abs(truth[at - 1]) : 0.0));
            }

            Assert.True(miss <= Near * Math.Max(peak, Zero), $"{what}: channel {channel} misses by {miss:E1} of {peak:E1} at sample {where}");
        }
    }

    private static bool IsRoll(int channel) =>
        channel is Channel.Roll or Channel.Accelerations + Channel.Roll or Channel.Rates + Channel.Roll;
}
