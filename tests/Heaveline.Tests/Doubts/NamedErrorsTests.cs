using Heaveline.Cars;
using Heaveline.Doubts;
using Heaveline.Numerics;
using Heaveline.Quantities;

namespace Heaveline.Tests.Doubts;

public class NamedErrorsTests
{
    private static readonly Car Doubtful = PlainCar.Saloon with
    {
        Wheelbase = new(2.6, new Doubt(0.01)),
        Front = PlainCar.FrontAxle with { UnsprungMass = new(70.0, new Doubt(4.0)) },
    };

    [Fact]
    public void An_error_belongs_to_its_name_whatever_else_is_doubtful()
    {
        var few = CarDoubts.Of(Doubtful);
        // One doubt more, before the others in the car's order and behind them.
        var more = CarDoubts.Of(
            Doubtful with { Weighing = Doubtful.Weighing with { FrontLeft = Doubtful.Weighing.FrontLeft with { Doubt = new Doubt(5.0) } } },
            PlainCar.With(75.0, 1.3) with
            {
                Loads = [PlainCar.With(75.0, 1.3).Loads[0] with { Mass = new(75.0, new Doubt(5.0)) }],
            });
        Assert.True(more.Sources.Count > few.Sources.Count);
        var known = more.Sources.Zip(NamedErrors.Of(more, 7, 3)).ToDictionary(one => one.First.Name, one => one.Second);
        foreach (var (source, error) in few.Sources.Zip(NamedErrors.Of(few, 7, 3)))
        {
            Assert.Equal(known[source.Name], error);
        }
    }

    [Fact]
    public void Other_seeds_draws_and_attempts_have_other_errors_and_the_same_ones_the_same()
    {
        var doubts = CarDoubts.Of(Doubtful);
        var first = NamedErrors.Of(doubts, 1, 0);
        Assert.Equal(first, NamedErrors.Of(doubts, 1, 0));
        Assert.All(
            new[] { NamedErrors.Of(doubts, 2, 0), NamedErrors.Of(doubts, 1, 1), NamedErrors.Of(doubts, 1, 0, 1) },
            other => Assert.All(first.Zip(other), pair => Assert.NotEqual(pair.First, pair.Second)));
    }

    [Fact]
    public void Errors_are_normal_with_unit_variance_and_of_different_names_independent()
    {
        var doubts = CarDoubts.Of(Doubtful);
        const int Draws = 20_000;
        double[][] errors = [.. Enumerable.Range(0, Draws).Select(draw => NamedErrors.Of(doubts, 5, draw))];
        for (var k = 0; k < doubts.Sources.Count; k++)
        {
            double[] own = [.. errors.Select(e => e[k])];
            // Four standard errors of each.
            Assert.InRange(DrawnNumbers.Mean(own), -4.0 / Math.Sqrt(Draws), 4.0 / Math.Sqrt(Draws));
            Assert.InRange(DrawnNumbers.Deviation(own), 1.0 - (4.0 / Math.Sqrt(2.0 * Draws)), 1.0 + (4.0 / Math.Sqrt(2.0 * Draws)));
            Assert.InRange(DrawnNumbers.Quantile(own, 0.9), 1.25, 1.32);
        }

        Assert.InRange(errors.Average(e => e[0] * e[^1]), -4.0 / Math.Sqrt(Draws), 4.0 / Math.Sqrt(Draws));
    }
}
