using CsCheck;
using Heaveline.Cars;
using Heaveline.Models;
using Heaveline.Passes;
using Heaveline.Roads;

namespace Heaveline.Tests.Passes;

public class FrictionTests
{
    private const double Force = 60.0;
    private const double PreSliding = 0.0003;
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075), Length = new(3.7) });

    /// <summary>
    /// A body on springs K and sliders of F in all, let go at x₀: every half-swing falls by 2F/K, so a cycle by 4F/K, until it is within F/K (Coulomb
    /// friction; Rao, Mechanical Vibrations). With the travel 2d over which friction turns round: ½K(x₀² − x₁²) = F·(x₀ + x₁ − 2d).
    /// </summary>
    [Fact]
    public void A_free_swing_dies_out_by_4F_over_K_a_cycle_and_stops_within_F_over_K()
    {
        const double start = 0.05;
        var (stiffness, friction) = (2.0 * (21000.0 + 24000.0), 4.0 * Force);
        var turns = Swing(Undamped(), start, seconds: 12.0);
        var expected = start;
        for (var n = 1; expected > 2.0 * friction / stiffness; n++)
        {
            // The positive root of ½K·x₁² + F·x₁ = ½K·x₀² − F·(x₀ − 2d).
            var right = (0.5 * stiffness * expected * expected) - (friction * (expected - (2.0 * PreSliding)));
            expected = (Math.Sqrt((friction * friction) + (2.0 * stiffness * right)) - friction) / stiffness;
            Assert.Equal(expected, Math.Abs(turns[n]), 1e-5);
            Assert.Equal(start - (2.0 * n * friction / stiffness), Math.Abs(turns[n]), n * 0.1 * friction / stiffness);
            Assert.Equal(n % 2 == 0, turns[n] < 0.0);
        }

        Assert.True(Math.Abs(turns[^1]) <= (friction / stiffness) + PreSliding, $"it stops {turns[^1]} m from balance");
    }

    /// <summary>
    /// After a bump the car stands where friction holds it, not where the springs would: at rest for ten seconds, away from its balance and within
    /// the band that the trim states.
    /// </summary>
    [Fact]
    public void A_car_comes_to_real_rest_away_from_its_balance()
    {
        var model = RideModel.Of(Rubbing(new Friction { HalfWidth = new(250.0) }));
        var pass = Pass.Of(model, Hump, 30.0 / 3.6, new() { Record = new() { SettlingTime = 16.0 } });
        Assert.Equal(PassOutcome.Completed, pass.Outcome);
        double Front(int k) => pass.Heave[k] - (model.X[0] * pass.Pitch[k]);
        double Rear(int k) => pass.Heave[k] - (model.X[2] * pass.Pitch[k]);
        var last = pass.Count - 1;
        var tenBefore = last - (int)Math.Round(10.0 / (pass.Time[1] - pass.Time[0]));
        for (var k = tenBefore; k <= last; k++)
        {
            Assert.Equal(Front(last), Front(k), 1e-6);
            Assert.Equal(Rear(last), Rear(k), 1e-6);
        }

        Assert.True(Math.Abs(Front(last)) + Math.Abs(Rear(last)) > 1e-3, $"front {Front(last)}, rear {Rear(last)} m");
        Assert.InRange(Math.Abs(Front(last)), 0.0, model.Trim.FrictionBand[0]);
        Assert.InRange(Math.Abs(Rear(last)), 0.0, model.Trim.FrictionBand[1]);
    }

    [Fact]
    public void Any_car_with_friction_ends_within_the_band_that_its_trim_states_and_stands_still() =>
        Gen.Select(Gen.Double[40.0, 400.0], Gen.Double[0.0001, 0.001], Gen.Double[5.0, 20.0], Gen.Double[0.02, 0.07]).Sample(
            (force, give, speed, height) =>
            {
                var model = RideModel.Of(Rubbing(new Friction { HalfWidth = new(force), PreSliding = new(give) }));
                var road = Road.From(new Versine { Height = new(height), Length = new(2.0) });
                var pass = Pass.Of(model, road, speed, new() { Record = new() { SettlingTime = 8.0 } });
                Assert.Equal(PassOutcome.Completed, pass.Outcome);
                var last = pass.Count - 1;
                foreach (var (x, band) in new[] { (model.X[0], model.Trim.FrictionBand[0]), (model.X[2], model.Trim.FrictionBand[1]) })
                {
                    double At(int k) => pass.Heave[k] - (x * pass.Pitch[k]);
                    Assert.InRange(Math.Abs(At(last)), 0.0, 1.0001 * band);
                    Assert.Equal(At(last), At(last - 100), 1e-6);
                }
            },
            iter: 40);

    /// <summary>Whatever way the wheel goes, friction stays within F_c and its slider only takes energy out.</summary>
    [Fact]
    public void Friction_makes_no_energy() =>
        Gen.Double[-0.002, 0.002].Array[2, 200].Sample(ways =>
        {
            var numbers = RideModel.Of(Undamped()).Numbers;
            using var kernel = new OpenKernel(numbers);
            using var smooth = new OpenKernel(numbers, rubs: false);
            var place = new double[9];
            var still = new double[9];
            double Friction() => kernel.At(place, still)[Channel.Force] - smooth.At(place, still)[Channel.Force];

            // Where the slider stands, from what its spring holds.
            double Slider(double force) => place[Channel.Wheel] - (force * PreSliding / Force);

            var (before, stored, work) = (0.0, 0.0, 0.0);
            foreach (var way in ways)
            {
                // In parts so short that the trapezium rule holds.
                for (var part = 0; part < 50; part++)
                {
                    var slider = Slider(before);
                    for (var i = 0; i < 4; i++)
                    {
                        place[Channel.Wheel + i] += way / 50.0;
                    }

                    var now = Friction();
                    Assert.InRange(now, -Force * (1.0 + 1e-9), Force * (1.0 + 1e-9));
                    // But for the rounding of the difference of two forces.
                    Assert.True(now * (Slider(now) - slider) >= -1e-12, "the slider gave energy out");
                    work += 0.5 * (before + now) * way / 50.0;
                    stored = 0.5 * now * now * PreSliding / Force;
                    before = now;
                }
            }

            Assert.True(work >= stored - (1e-3 * ways.Length * Force * 0.002), $"{work} J in, {stored} J held");
        }, iter: 200);

    [Fact]
    public void Half_the_step_brings_a_pass_with_friction_nearer_to_its_limit()
    {
        var model = RideModel.Of(Rubbing(new Friction { HalfWidth = new(Force) }));
        double[] Run(double step) =>
            [.. Pass.Of(model, Hump, 12.0, new() { Method = FixedStep.Once with { LargestStep = step }, Record = new() { Duration = 3.0 } }).Pitch];
        var limit = Run(0.00002);
        double Miss(double step) => Run(step).Zip(limit, (a, b) => Math.Abs(a - b)).Max() / limit.Max(Math.Abs);
        var (coarse, fine) = (Miss(0.000625), Miss(0.000156));
        Assert.True(coarse < 1e-3, $"{coarse:E2}");
        Assert.True(fine < coarse / 2.0, $"{coarse:E2} to {fine:E2}");
    }

    // Tyres that damp well: on stuck suspensions a car goes on swinging on its tyres alone, for long where they hardly damp. No tilting moment, which
    // would widen the band.
    private static Car Rubbing(Friction friction)
    {
        Axle On(Axle axle) => axle with { Friction = friction, Tyre = axle.Tyre with { Damping = new(1000.0) } };
        return ExactCars.Saloon with
        {
            Body = ExactCars.Saloon.Body with { PitchAxisHeight = null, RollAxisHeight = null },
            Front = On(ExactCars.Saloon.Front),
            Rear = On(ExactCars.Saloon.Rear),
        };
    }

    private static Car Undamped()
    {
        Axle Bare(Axle axle) => axle with
        {
            Damper = new Damper { Law = new RatioDamper { Ratio = new(0.0) } },
            Friction = new Friction { HalfWidth = new(Force), PreSliding = new(PreSliding) },
        };
        return PlainCar.Saloon with { Front = Bare(PlainCar.FrontAxle), Rear = Bare(PlainCar.RearAxle) };
    }

    // The body alone, up and down on wheels that do not move: where it turns round, from the place where it is let go, m below balance.
    private static List<double> Swing(Car car, double start, double seconds)
    {
        const double step = 0.00005;
        using var kernel = new OpenKernel(RideModel.Of(car).Numbers, step: step);
        kernel.HoldAllButHeave();
        kernel.Put([-start, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0], new double[9]);
        var turns = new List<double> { -start };
        var rate = 0.0;
        for (var k = 0; k < seconds / step; k++)
        {
            var sample = kernel.Step();
            if (rate * sample[Channel.Rates] < 0.0)
            {
                turns.Add(sample[Channel.Heave]);
            }

            rate = sample[Channel.Rates];
        }

        return turns;
    }
}
