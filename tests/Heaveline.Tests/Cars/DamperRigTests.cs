using CsCheck;
using Heaveline.Cars;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Tests.Cars;

public class DamperRigTests
{
    private const double Step = 0.005;

    // A damper three times as hard opening as closing, as road dampers are.
    private static readonly TableDamper Uneven = new(new([0.1, 0.3], [100.0, 240.0]), new([0.1, 0.3], [300.0, 720.0]));

    [Fact]
    public void A_known_damper_is_found_again_from_its_run_with_gas_and_friction()
    {
        double[] v = Sine(0.4);
        var rig = DamperRig.TableFrom(v, [.. v.Select(x => Uneven.Whole.ForceAt(x) + 150.0)], Step, gasForce: 150.0, bins: 20);
        Assert.Equal(150.0, rig.GasForce);
        Assert.All(rig.Law.Whole.At, x => Assert.Equal(Uneven.Whole.ForceAt(x), rig.Law.Whole.ForceAt(x), 3.0));
        Assert.Equal(150.0, rig.TurningForce, 4.0);
        Assert.InRange(Math.Abs(rig.HysteresisHalfWidth), 0.0, 4.0);
        Assert.Equal(1.0, rig.TableWork / rig.Work, 0.01);
        Assert.Equal(9, rig.Cycles);
    }

    [Fact]
    public void A_damper_as_hard_both_ways_shows_its_gas_force_as_the_mean_and_its_hysteresis_where_it_turns()
    {
        double[] v = Sine(0.4);
        // Half the width of the loop goes with the acceleration: 60 N while the velocity falls through zero, −60 N while it rises.
        double[] f = [.. v.Select((x, i) => (1500.0 * x) + 120.0 - (60.0 * Math.Cos(2.0 * Math.PI * Step * i)))];
        var rig = DamperRig.TableFrom(v, f, Step);
        Assert.Equal(120.0, rig.GasForce, 0.5);
        Assert.Equal(60.0, rig.HysteresisHalfWidth, 0.5);
        Assert.Equal(1500.0 * 0.3, rig.Law.Whole.ForceAt(0.3), 8.0);
        Assert.Equal(60.0 / Math.Sqrt(2.0), rig.Scatter, 4.0);
    }

    [Fact]
    public void The_mean_force_of_a_damper_harder_one_way_is_not_taken_for_its_gas_force()
    {
        double[] v = Sine(0.4);
        Refused("mean force of the damper run", () => DamperRig.TableFrom(v, [.. v.Select(Uneven.Whole.ForceAt)], Step));
    }

    [Fact]
    public void What_cannot_be_a_damper_is_refused()
    {
        double[] v = Sine(0.4);
        double[] f = [.. v.Select(x => 1000.0 * x)];
        Refused("damper run", () => DamperRig.TableFrom(v[..100], f[..100], Step));
        Refused("damper run", () => DamperRig.TableFrom(v, f[..^1], Step));
        Refused("damper run", () => DamperRig.TableFrom(new double[v.Length], f, Step));
        Refused("damper run", () => DamperRig.TableFrom([.. v.Select(Math.Abs)], f, Step));
        Refused("force while closing", () => DamperRig.TableFrom(v, [.. f.Select(n => -n)], Step));
        Refused("force while opening", () => DamperRig.TableFrom(v, [.. f.Select(n => n + 500.0)], Step, gasForce: 0.0));
        Refused("damper velocity", () => DamperRig.TableFrom([double.NaN, .. v[1..]], f, Step));
        Refused("damper velocity", () => DamperRig.TableFrom([.. v.Select(x => 1000.0 * x)], f, Step));
        Refused("damper force", () => DamperRig.TableFrom(v, [.. f[..^1], double.PositiveInfinity], Step));
        Refused("time step", () => DamperRig.TableFrom(v, f, 0.0));
        Refused("number of bins", () => DamperRig.TableFrom(v, f, Step, bins: 2));
    }

    /// <summary>
    /// The defining properties [Barlow et al., Statistical Inference under Order Restrictions, 1972, theorem 1.2]: g never falls, Σ w (y − g) h is 0
    /// for h = g and h = 1 and is not above 0 for any h that never falls.
    /// </summary>
    [Fact]
    public void Isotonic_regression_meets_the_conditions_that_define_it() =>
        Gen.Select(Gen.Double[-10.0, 10.0], Gen.Double[0.1, 5.0]).Array[1, 30].Sample(points =>
        {
            double[] y = [.. points.Select(p => p.Item1)], w = [.. points.Select(p => p.Item2)];
            var g = Isotonic.Fit(y, w);
            double Against(Func<int, double> h) => Enumerable.Range(0, y.Length).Sum(i => w[i] * (y[i] - g[i]) * h(i));
            Assert.All(Enumerable.Range(1, y.Length - 1), i => Assert.True(g[i] >= g[i - 1]));
            Assert.Equal(0.0, Against(i => g[i]), 1e-8);
            Assert.Equal(0.0, Against(_ => 1.0), 1e-9);
            Assert.All(Enumerable.Range(0, y.Length), from => Assert.True(Against(i => i >= from ? 1.0 : 0.0) <= 1e-9));
        });

    private static double[] Sine(double peak) => [.. Enumerable.Range(0, 2100).Select(i => peak * Math.Sin(2.0 * Math.PI * Step * i))];

    private static void Refused(string what, Action action) => Assert.Equal(what, Assert.Throws<RefusedValueException>(action).What);
}
