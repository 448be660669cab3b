using CsCheck;
using Heaveline.Elements;
using Heaveline.Numerics;
using Heaveline.Tests.Numerics;

namespace Heaveline.Tests.Elements;

public class LawTests
{
    private static readonly Gen<Hinge[]> Hinges =
        Gen.Select(Gen.Double[-0.1, 0.1], Gen.Double[-3e4, 5e4], (at, bend) => new Hinge(at, bend)).Array[0, 3];

    private static readonly Gen<Law> Straight = Gen.Select(
        Hinges, Hinges, Gen.Double[-500.0, 500.0], Gen.Double[0.0, 4e4], (opening, closing, constant, slope) =>
            (Law)new StraightLaw { Constant = constant, Slope = slope, Opening = opening, Closing = closing });

    private static readonly Gen<Law> Gas = Gen.Select(Gen.Double[1e3, 8e3], Gen.Double[1.0, 5.0], Gen.Double[1.0, 1.7], (force, share, exponent) =>
        (Law)new GasLaw("gas", 4.0) { Reference = force, PerVolume = share, Exponent = exponent });

    private static readonly Gen<Law> Powers = Gen.Select(
        Gen.Double[0.0, 0.05], Gen.Double[1e5, 1e7], Gen.Double[1.2, 3.0], Gen.Bool, (at, c, e, below) =>
            (Law)new PowerLaw("powers") { Clearance = at, Coefficient = c, Exponent = e, Direction = below ? -1.0 : 1.0 });

    private static Gen<Law> Any => Gen.OneOf(Straight, Gas, Powers);

    [Fact]
    public void A_laws_slope_is_that_of_its_force()
    {
        Gen.Select(Any, Gen.Double[-0.12, 0.12]).Sample((law, x) =>
        {
            const double h = 1e-7;
            if (law.Breaks.All(at => Math.Abs(at - x) > 1e-4))
            {
                double At(double place) => law.Force(new ScalarLane(place)).Value;
                var force = law.Force(new DualLane(x, 1.0));
                Assert.Equal(At(x), force.Value, 1e-9 * Math.Max(1.0, Math.Abs(force.Value)));
                Assert.Equal((At(x + h) - At(x - h)) / (2.0 * h), force.Slope, 1e-4 * Math.Max(1e3, Math.Abs(force.Slope)));
            }
        }, iter: 2000);
    }

    [Fact]
    public void A_laws_mean_is_the_sum_over_pieces()
    {
        // Closed forms, and sums eight places at a time, against Gauss sums one place at a time; with a range that cuts in and without.
        var cut = 0;
        Gen.Select(Any, Gen.Double[-0.05, 0.05], Gen.Double[1e-4, 0.02], Gen.Double[0.5, 12.0], Gen.Double[0.5, 12.0])
            .Sample((law, mean, deviation, below, above) =>
            {
                // A gas is asked no further than any run goes: where its volume is gone there is no force.
                var most = law is GasLaw gas ? gas.Most : double.PositiveInfinity;
                var (low, high) = (mean - (below * deviation), Math.Min(most, mean + (above * deviation)));
                cut += below < 8.5 || above < 8.5 ? 1 : 0;
                var (force, slope) = law.Mean(mean, deviation, low, high);
                (double, double) At(double x)
                {
                    var one = law.Force(new DualLane(x, 1.0));
                    return (one.Value, one.Slope);
                }

                double[] near = [0.0, 1e-8, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3, 2e-3, 4e-3, 8e-3, 16e-3, 32e-3];
                double[] breaks = [.. law.Breaks.SelectMany(x => near.SelectMany(apart => new[] { x - apart, x + apart }))];
                var (sum, slopes) = GaussSum.Of(At, mean, deviation, breaks, low, high);
                Assert.Equal(sum, force, 1e-9 * Math.Max(1000.0, Math.Abs(sum)));
                // The slope of a stop of small exponent begins so steeply that sums miss it by a few parts in 1e9.
                Assert.Equal(slopes, slope, 1e-8 * Math.Max(1e5, Math.Abs(slopes)));
            }, iter: 1000);
        Assert.True(cut > 100);
    }

    [Fact]
    public void A_law_at_rest_has_its_own_force_for_a_mean()
    {
        Gen.Select(Any, Gen.Double[-0.1, 0.1]).Sample((law, x) =>
        {
            var (force, slope) = law.Mean(x, 0.0, double.NegativeInfinity, double.PositiveInfinity);
            var at = law.Force(new DualLane(x, 1.0));
            Assert.Equal(at.Value, force, 1e-9 * Math.Max(1.0, Math.Abs(force)));
            Assert.Equal(at.Slope, slope, 1e-9 * Math.Max(1.0, Math.Abs(slope)));
        }, iter: 300);
    }

    [Fact]
    public void Straight_pieces_are_steepest_in_one_of_their_pieces()
    {
        Straight.Sample(law =>
        {
            double[] corners = [.. law.Breaks.Distinct().Order()];
            double[] inside = corners.Length == 0
                ? [0.0]
                : [corners[0] - 1.0, .. corners.Zip(corners.Skip(1), (a, b) => 0.5 * (a + b)), corners[^1] + 1.0];
            var steepest = inside.Max(x => law.Force(new DualLane(x, 1.0)).Slope);
            Assert.Equal(steepest, law.Steepest, 1e-6);
        }, iter: 1000);
    }

    [Fact]
    public void A_rebound_stop_that_softens_is_steepest_where_it_is_first_touched()
    {
        // 100 N/mm over the first 10 mm past a clearance of 50 mm, 60 N/mm after that.
        var stop = new StraightLaw { Closing = [new Hinge(-0.05, 100e3), new Hinge(-0.06, -40e3)] };
        Assert.Equal(100e3, stop.Steepest, 1e-6);
    }

    [Fact]
    public void Steepness_that_a_step_is_chosen_by_is_that_of_the_law_far_in()
    {
        var gas = new GasLaw("gas", 4.0) { Reference = 5000.0, PerVolume = 3.0, Exponent = 1.38 };
        Assert.Equal(4.0 * gas.Force(new DualLane(0.0, 1.0)).Slope, gas.Steepest, 1e-6);
        var stop = new PowerLaw("stop") { Clearance = 0.04, Coefficient = 2e6, Exponent = 2.0, Direction = -1.0 };
        Assert.Equal(stop.Force(new DualLane(-0.09, 1.0)).Slope, stop.Steepest, 1e-3);
    }
}
