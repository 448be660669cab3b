using Heaveline.Drives.Identification;

namespace Heaveline.Tests.Drives.Identification;

public class CarLikelihoodTests
{
    private static (CarProblem Problem, double[] At) Planted(ulong seed, int each = 1, double[]? speeds = null)
    {
        var (car, known, windows) = new PlantedCrossings { Seed = seed, Each = each, Speeds = speeds ?? [4.2, 9.5] }.Drawn();
        var problem = CarProblem.Of(windows, known);
        var x = problem.Likelihood.Centre.ToArray();
        CarNumbers.Parameters(car).CopyTo(x, 0);
        for (var i = 0; i < x.Length; i++)
        {
            // Off every symmetric place, the hump too.
            x[i] += 0.01 * Math.Sin(1.0 + i);
        }

        return (problem, x);
    }

    [Fact]
    public void The_score_is_the_slope_of_the_likelihood()
    {
        var (problem, x) = Planted(3);
        var likelihood = problem.Likelihood;
        var (information, score) = (new double[x.Length * x.Length], new double[x.Length]);
        likelihood.Score(x, double.PositiveInfinity, information, score, CancellationToken.None);
        for (var i = 0; i < x.Length; i++)
        {
            var step = 1e-5;
            double At(double by)
            {
                var y = x.ToArray();
                y[i] += by;
                return likelihood.Value(y, double.PositiveInfinity, CancellationToken.None);
            }

            // Fourth-order central difference.
            var slope = ((8.0 * (At(step) - At(-step))) - (At(2.0 * step) - At(-2.0 * step))) / (12.0 * step);
            var expected = (likelihood.Precision[i] * (x[i] - likelihood.Centre[i])) - score[i];
            Assert.True(
                Math.Abs(slope - expected) <= 2e-5 * (Math.Abs(expected) + Math.Sqrt(information[(i * x.Length) + i])),
                FormattableString.Invariant($"parameter {i}: {slope} by differences, {expected} by hand"));
        }
    }
}
