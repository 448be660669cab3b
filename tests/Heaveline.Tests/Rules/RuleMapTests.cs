using Heaveline.Measures;
using Heaveline.Modes;
using Heaveline.Passes;
using Heaveline.Roads;
using Heaveline.Rules;
using Heaveline.Tests.Doubts;
using Heaveline.Tuning;

namespace Heaveline.Tests.Rules;

/// <summary>
/// Maps against numbers that were computed beforehand by two independent programs (linear half cars stepped by matrix exponentials), printed to two
/// digits; no published source. Those cars cannot lift a wheel, so the bumps are a hundredth as high here and the results multiplied.
/// </summary>
public class RuleMapTests
{
    private const double Scale = 100.0;

    private static readonly Road Versine = Road.From(new Versine { Height = new(0.05 / Scale), Length = new(1.0) });
    private static readonly Road Hump = Road.From(new RoundTopHump { Height = new(0.075 / Scale), Length = new(3.7) });
    private static readonly Road Short = Road.From(new HalfSine { Height = new(0.03 / Scale), Length = new(0.5) });
    private static readonly double[] Ratios = [0.8, 0.9, 1.0, 1.1, 1.2, 1.3];
    private static readonly double[] Speeds = [8.0, 14.0, 22.0, 30.0];
    private static readonly double[] Four = [40.0 / 3.6, 60.0 / 3.6, 80.0 / 3.6, 100.0 / 3.6];

    // Late pitch in mrad·s^0.5, printed to 0.01; peak pitch acceleration in rad/s² over the whole pass, printed to 0.01: the peak is sharp, and the
    // other programs take the largest sample, which lies up to 0.6 % below it and never above.
    [Fact]
    public void Late_pitch_and_peak_acceleration_over_ratio_and_speed_are_those_of_an_independent_half_car()
    {
        double[][] late =
        [
            [0.76, 0.89, 0.84, 0.66, 0.44, 0.32], [0.52, 0.47, 0.33, 0.17, 0.16, 0.28], [0.34, 0.26, 0.14, 0.06, 0.15, 0.24],
            [0.25, 0.18, 0.08, 0.05, 0.13, 0.20],
        ];
        double[][] peak =
        [
            [4.20, 4.29, 4.37, 4.46, 4.55, 4.64], [5.53, 5.56, 5.68, 5.78, 5.87, 5.96], [5.08, 5.33, 5.55, 5.76, 5.96, 6.14],
            [4.56, 4.36, 4.19, 4.03, 3.89, 3.77],
        ];
        var maps = RuleMap.Of(
            MeasuredCar.Saloon.Model(),
            Versine,
            RuleAxis.FrequencyRatio(Ratios, onRigidTyres: true),
            Speeds,
            [SettlingCatalogue.LatePitch, WholePassCatalogue.PeakPitchAcceleration],
            degree: 2);
        for (var i = 0; i < Speeds.Length; i++)
        {
            for (var j = 0; j < Ratios.Length; j++)
            {
                Assert.Equal(late[i][j], 1000.0 * Scale * maps[0].Measured[i][j], 0.0075);
                Assert.InRange(Scale * maps[1].Measured[i][j], peak[i][j] - 0.007, (1.006 * peak[i][j]) + 0.005);
            }
        }
    }

    // The peak over the whole pass comes after the rear wheels have left; until then a larger ratio lowers it, up to 1.2: at 1.3 the rise to the
    // later peak stands higher at the window's end than the hit's own peak.
    [Fact]
    public void At_50_kilometres_an_hour_the_hit_itself_falls_with_the_ratio()
    {
        var map = RuleMap.Of(
            MeasuredCar.Saloon.Model(),
            Versine,
            RuleAxis.FrequencyRatio(Ratios, onRigidTyres: true),
            [14.0],
            [HitCatalogue.PeakPitchAcceleration])[0];
        Assert.Equal(map.Measured[0].Take(5).OrderDescending(), map.Measured[0].Take(5));
        Assert.InRange(map.Measured[0][5], map.Measured[0][4], map.Measured[0][3]);
    }

    // Best ratios for late pitch on a grid of 0.05; the parabola between grid points may be half a step off theirs.
    [Theory]
    [InlineData(0.95, 1.30, 1.15, 1.10, 1.05)]
    [InlineData(1.25, 1.35, 1.20, 1.15, 1.10)]
    [InlineData(0.60, 0.80, 1.00, 1.00, 1.00)]
    public void The_best_ratio_falls_with_speed_and_depends_on_the_dynamic_index(double index, double v8, double v14, double v22, double v30)
    {
        double[] fine = [.. Enumerable.Range(14, 14).Select(k => 0.05 * k)];
        var map = RuleMap.Of(
            (MeasuredCar.Saloon with { DynamicIndex = index }).Model(),
            Versine,
            RuleAxis.FrequencyRatio(fine, onRigidTyres: true),
            Speeds,
            [SettlingCatalogue.LatePitch],
            degree: 2)[0];
        double[] expected = [v8, v14, v22, v30];
        Assert.All(expected.Zip(map.Best), p => Assert.Equal(p.First, p.Second!.Value, 0.026));
    }

    [Fact]
    public void Both_closed_forms_lie_near_the_best_ratio_of_their_own_window()
    {
        double[] fine = [.. Enumerable.Range(0, 31).Select(k => 0.9 + (0.02 * k))];
        double[] speeds = [18.0, 22.0, 26.0, 30.0];
        var maps = RuleMap.Of(
            (MeasuredCar.Saloon with { DynamicIndex = 1.0 }).Model(),
            Versine,
            RuleAxis.FrequencyRatio(fine),
            speeds,
            [SettlingCatalogue.LatePitch, SettlingCatalogue.RmsPitch],
            degree: 2);
        Assert.All(RatioRule.Of(maps[0]), r => Assert.Equal(r.Computed!.Value, r.Late, 0.03));
        Assert.All(RatioRule.Of(maps[1]), r => Assert.Equal(r.Computed!.Value, r.Step, 0.04));
    }

    [Fact]
    public void The_step_rule_is_the_inverse_of_the_coincidence_speed()
    {
        var model = (MeasuredCar.Saloon with { Ratio = 1.18, DynamicIndex = 1.0 }).Model();
        var ends = Coincidence.Of(model);
        var damped = 1.0 / Math.Sqrt(ends.FrontPeriod!.Value * ends.RearPeriod!.Value);
        var ratio = RatioRule.InStep(ends.Wheelbase, damped, ends.SuitedSpeed!.Value, Coincidence.SuitedCycles);
        Assert.Equal(ends.FrontPeriod.Value / ends.RearPeriod.Value, ratio, 1e-9);
    }

    // Unequal damping makes periods and frequencies part; the form speaks of frequencies, as the map does.
    [Theory]
    [InlineData(0.6)]
    [InlineData(0.7)]
    [InlineData(1.0)]
    public void At_a_coincidence_speed_the_in_step_form_gives_the_cars_own_ratio_however_the_ends_are_damped(double cycles)
    {
        var model = (MeasuredCar.Saloon with { Ratio = 1.18, FrontDamping = 0.15, RearDamping = 0.4 }).Model();
        var forms = RatioForms.Of(model);
        Assert.Equal(RideTuning.Of(model).Ratio, forms.InStep(forms.Ends.SpeedFor(cycles)!.Value, cycles), 1e-9);
        Assert.True(Math.Abs(forms.RatioPerPeriods - 1.0) > 0.02);
        Assert.Equal(1.0 + (0.6 * forms.Ends.Wheelbase * forms.MeanFrequency / 20.0), forms.Late(20.0), 1e-12);
    }

    [Fact]
    public void A_map_tells_how_far_it_is()
    {
        var told = new Listener(_ => { });
        RuleMap.Of(
            MeasuredCar.Saloon.Model(),
            Versine,
            RuleAxis.FrequencyRatio(Ratios),
            Speeds,
            [SettlingCatalogue.RmsPitch],
            degree: 2,
            progress: told,
            cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(1.0, told.Shares.Max());
        Assert.Equal(told.Shares.Count, told.Shares.Distinct().Count());
        Assert.All(told.Shares, share => Assert.InRange(share, double.Epsilon, 1.0));
        Assert.True(told.Shares.Count > 2);
    }

    [Fact]
    public void A_map_that_is_cancelled_begins_no_further_passes()
    {
        using var stop = new CancellationTokenSource();
        var told = new Listener(_ => stop.Cancel());
        double[] speeds = [.. Enumerable.Range(0, 40).Select(i => 8.0 + (0.5 * i))];
        Assert.ThrowsAny<OperationCanceledException>(() =>
            RuleMap.Of(
                MeasuredCar.Saloon.Model(),
                Versine,
                RuleAxis.FrequencyRatio(Ratios),
                speeds,
                [SettlingCatalogue.RmsPitch],
                degree: 1,
                progress: told,
                cancellation: stop.Token));
        // One thread tells and cancels in turn, so that nothing is left to chance.
        Assert.True(Assert.Single(told.Shares) < 0.1);
    }

    // RMS pitch of the first second after the rear has left, relative to ratio 1, at 40, 60, 80 and 100 km/h; damping 0.3, index 0.9.
    [Theory]
    [InlineData("both ends 9 % lower", false, 0.97, 0.90, 0.88, 0.87)]
    [InlineData("mean kept", false, 0.80, 0.76, 0.76, 0.76)]
    [InlineData("front softer", false, 0.76, 0.68, 0.66, 0.67)]
    [InlineData("rear stiffer", false, 0.82, 0.85, 0.87, 0.88)]
    [InlineData("both ends 9 % lower", true, 0.89, 0.87, 0.87, 0.87)]
    [InlineData("mean kept", true, 0.88, 0.83, 0.80, 0.80)]
    [InlineData("front softer", true, 0.77, 0.71, 0.70, 0.70)]
    [InlineData("rear stiffer", true, 1.00, 0.95, 0.93, 0.92)]
    public void Ratio_and_softness_change_the_settling_as_in_an_independent_study(
        string change, bool shorter, double at40, double at60, double at80, double at100)
    {
        var root = Math.Sqrt(1.2);
        var car = change switch
        {
            "mean kept" => Study with { Ratio = 1.2 },
            "front softer" => Study with { Ratio = 1.2, MeanFrequency = 1.3 / root },
            "rear stiffer" => Study with { Ratio = 1.2, MeanFrequency = 1.3 * root },
            _ => Study with { MeanFrequency = 1.3 / root },
        };
        var road = shorter ? Short : Hump;
        double[] expected = [at40, at60, at80, at100];
        Assert.All(expected.Zip(Four), p => Assert.Equal(p.First, Settling(car, road, p.Second) / Settling(Study, road, p.Second), 0.0125));
    }

    // Medians from 40 to 120 km/h on the hump against damping 0.2 at index 0.9: damping 0.3, index 1, a common spring of 40 %, both.
    [Theory]
    [InlineData(0.3, 0.9, 0.0, 1.0, 0.83)]
    [InlineData(0.4, 0.9, 0.0, 1.0, 0.76)]
    [InlineData(0.2, 1.0, 0.0, 1.0, 0.94)]
    [InlineData(0.2, 0.9, 0.4, 1.0, 0.61)]
    [InlineData(0.2, 0.9, 0.4, 1.2, 0.43)]
    [InlineData(0.3, 0.9, 0.0, 1.2, 0.63)]
    public void Damping_inertia_and_a_common_spring_count_as_in_an_independent_study(
        double damping, double index, double share, double ratio, double median)
    {
        var start = Study with { FrontDamping = 0.2, RearDamping = 0.2 };
        var car = Study with { FrontDamping = damping, RearDamping = damping, DynamicIndex = index, SharedSprings = share, Ratio = ratio };
        var quotients = Enumerable.Range(0, 17)
            .Select(i => (40.0 + (5.0 * i)) / 3.6).Select(v => Settling(car, Hump, v) / Settling(start, Hump, v)).Order().ToList();
        Assert.Equal(median, quotients[8], 0.0125);
    }

    [Fact]
    public void Verdicts_say_where_the_rule_holds_and_where_it_fails()
    {
        var map = RuleMap.Of(
            (Study with { FrontDamping = 0.2, RearDamping = 0.2 }).Model(),
            Hump,
            RuleAxis.FrequencyRatio([0.85, 1.0, 1.2, 1.4], onRigidTyres: true),
            [80.0 / 3.6, 120.0 / 3.6],
            [SettlingCatalogue.RmsPitch])[0];
        Assert.Equal(
            [RuleVerdict.Fails, RuleVerdict.NoDifference, RuleVerdict.Holds, RuleVerdict.Holds],
            Enumerable.Range(0, 4).Select(j => map.Verdict(0, j)));
        Assert.Equal(RuleVerdict.Fails, map.Verdict(1, 3));
    }

    [Fact]
    public void A_ratio_suits_the_speed_at_which_it_is_the_best()
    {
        double[] fine = [.. Enumerable.Range(0, 21).Select(k => 1.0 + (0.02 * k))];
        double[] speeds = [.. Enumerable.Range(0, 8).Select(k => (60.0 + (10.0 * k)) / 3.6)];
        var model = (Study with { FrontDamping = 0.2, RearDamping = 0.2, Ratio = 1.2 }).Model();
        var map = RuleMap.Of(model, Hump, RuleAxis.FrequencyRatio(fine, onRigidTyres: true), speeds, [SettlingCatalogue.RmsPitch], degree: 2)[0];
        var suited = Assert.NotNull(Assert.Single(RuleStanding.Of(map).Passings).Near);
        var there = RuleMap.Of(model, Hump, map.Axis, [suited], [SettlingCatalogue.RmsPitch])[0].Best[0];
        Assert.Equal(1.2, there!.Value, 0.01);
    }

    [Fact]
    public void A_wheel_that_leaves_the_ground_leaves_far_more_late_pitch_than_a_linear_car_says()
    {
        var real = Road.From(new Versine { Height = new(0.05), Length = new(1.0) });
        var car = (MeasuredCar.Saloon with { Ratio = 1.1 }).Model();
        var pass = Pass.Of(car, real, 22.0);
        Assert.Contains(pass.TyreLoad(0), n => n == 0.0);
        Assert.True(SettlingCatalogue.LatePitch.Of(pass) > 2.0 * Scale * SettlingCatalogue.LatePitch.Of(Pass.Of(car, Versine, 22.0)));
    }

    [Fact]
    public void A_value_without_a_car_is_refused_in_words_and_left_out()
    {
        var map = RuleMap.Of(
            MeasuredCar.Saloon.Model(), Versine, RuleAxis.FrequencyRatio([1.0, 1.1, 200.0]), [14.0], [SettlingCatalogue.RmsPitch])[0];
        Assert.Equal(RuleVerdict.NotComputed, map.Verdict(0, 2));
        Assert.NotEmpty(map.Refusals[2]);
        Assert.Empty(map.Refusals[1]);
        Assert.NotNull(map.Best[0]);
    }

    private static SimpleCar Study { get; } = new()
    {
        SprungMass = 1300.0, Wheelbase = 2.7, BehindFrontAxle = 1.3, DynamicIndex = 0.9, FrontUnsprung = 80.0, RearUnsprung = 76.0,
        FrontTyreRate = 400e3, RearTyreRate = 400e3, MeanFrequency = 1.30,
    };

    private static double Settling(SimpleCar car, Road road, double speed) =>
        SettlingCatalogue.RmsPitch.Of(Pass.Of(car.Model(), road, speed, new() { Method = FixedStep.Once, Record = new() { SettlingTime = 1.1 } }));

    private sealed class Listener(Action<double> then) : IProgress<double>
    {
        private readonly Lock turn = new();

        public List<double> Shares { get; } = [];

        public void Report(double value)
        {
            lock (turn)
            {
                Shares.Add(value);
            }

            then(value);
        }
    }
}
