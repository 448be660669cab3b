using CsCheck;
using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Models;

namespace Heaveline.Tests.Elements;

public class ElementTests
{
    [Fact]
    public void Without_motion_the_means_are_what_stands_at_rest()
    {
        AnyCar.Any.Sample(car =>
        {
            var n = RideModel.Of(car).Numbers;
            foreach (var element in n.Elements.All.Where(element => element.Slider is null))
            {
                var (rest, mean) = (element.AtRest(n.AtTrim(element.Sight)), element.Mean(n.AtTrim(element.Sight), 0.0, 0.0, element.Breaks()));
                Assert.Equal(rest.Force, mean.Force, 1e-9 * Math.Max(1.0, Math.Abs(rest.Force)));
                // By parts over next to no scatter a damper's rate keeps four digits.
                Assert.Equal(rest.Rate, mean.Rate, 1e-6 * Math.Max(1e5, Math.Abs(rest.Rate)));
                Assert.Equal(rest.Damping, mean.Damping, 1e-9 * Math.Max(1.0, rest.Damping));
            }
        }, iter: 60);
    }

    [Fact]
    public void The_means_are_those_of_a_great_many_moments()
    {
        // A spring whose ratio varies, sampled evenly over a normal travel: E[F] and E[F′], to the sampling's 1e-4.
        var place = CornerPlace.Of(CarOf(MotionRatio.Constant(0.8) with { PerTravel = new(1.2) }), 0);
        var spring = SpringElement.Of(place, 4000.0, null, (double.NegativeInfinity, double.PositiveInfinity));
        var (force, rate, count) = (0.0, 0.0, 20000);
        for (var k = 0; k < count; k++)
        {
            var s = 0.01 + (0.02 * MathNet.Numerics.Distributions.Normal.InvCDF(0.0, 1.0, (k + 0.5) / count));
            var at = spring.AtRest(s);
            force += at.Force / count;
            rate += at.Rate / count;
        }

        var mean = spring.Mean(0.01, 0.02, 0.3, spring.Breaks());
        Assert.Equal(force, mean.Force, 1e-4 * force);
        Assert.Equal(rate, mean.Rate, 1e-4 * rate);
    }

    [Fact]
    public void What_an_element_moves_is_what_its_force_works_on()
    {
        // Virtual work: the row per position is the derivative of what is seen, so the push on each is row·F.
        AnyCar.FourWheeled.Sample(car =>
        {
            var n = RideModel.Of(car).Numbers;
            double[] place = [0.01, 0.002, -0.003, 0.004, -0.002, 0.003, 0.001];
            double[] travel = [.. Enumerable.Range(0, 4).Select(i => place[3 + i] - (place[0] - (n.X[i] * place[1]) + (n.Y[i] * place[2])))];
            foreach (var element in n.Elements.All)
            {
                var row = n.Row(element.Sight, 7);
                Assert.Equal(element.Sight.Of(travel, [0.0, 0.0]), row.Zip(place, (a, b) => a * b).Sum(), 1e-15);
            }
        }, iter: 50);
    }

    [Fact]
    public void A_friction_is_without_force_at_the_middle_of_its_band_and_damps_in_the_mean()
    {
        var axle = PlainCar.FrontAxle with { Friction = new Friction { HalfWidth = new(80.0) } };
        var friction = FrictionElement.Of(CornerPlace.Of(PlainCar.Saloon with { Front = axle }, 0))!;
        Assert.Equal(default, friction.AtRest(0.02));
        // Sliding far faster than its scale: √(2/π)·F/σ [Roberts and Spanos: E[F′] of a sign under Gaussian motion].
        Assert.Equal(Math.Sqrt(2.0 / Math.PI) * 80.0 / 0.5, friction.Mean(0.0, 0.01, 0.5, []).Damping, 0.1);
        Assert.Equal(["friction"], friction.CurvedLaws);
    }

    private static Car CarOf(MotionRatio ratio) => PlainCar.Saloon with
    {
        Front = PlainCar.FrontAxle with { Spring = new Spring { Law = new LinearSpring { Rate = new(30000.0) }, MotionRatio = ratio } },
    };
}
