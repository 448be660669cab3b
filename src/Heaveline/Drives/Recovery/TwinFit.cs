using Heaveline.Drives.Identification;

namespace Heaveline.Drives.Recovery;

/// <summary>
/// The numbers of windows by the estimator of a drive, from where that drive's fit ended: both frequencies, both dampings and the index.
/// </summary>
/// <remarks>
/// Tried and left: the gentle half of the windows against the violent half, in which friction should show. At 9 windows a half their chance was so
/// large that friction was told no better and the dampers worse (2026-11-27).
/// </remarks>
internal sealed class TwinFit
{
    /// <summary>How many numbers there are: ln of each.</summary>
    public const int Count = 5;

    private readonly CarFromDrive found;
    private readonly IdentificationKnown known;
    private readonly CancellationToken stop;

    /// <param name="found">The car identified from the drive.</param>
    /// <param name="known">What was known.</param>
    /// <param name="stop">Stops it.</param>
    public TwinFit(CarFromDrive found, IdentificationKnown known, CancellationToken stop) =>
        (this.found, this.known, this.stop) = (found, known, stop);

    /// <summary>Which number of the car each of them is.</summary>
    public static CarNumber Number(int i) => i switch
    {
        0 => CarNumber.FrontFrequency,
        1 => CarNumber.RearFrequency,
        2 => CarNumber.FrontDamping,
        3 => CarNumber.RearDamping,
        _ => CarNumber.PitchIndex,
    };

    /// <summary>The numbers of windows; null where the fit fails.</summary>
    /// <param name="windows">The windows.</param>
    /// <param name="start">Where the fit begins; null: at the drive's own end.</param>
    /// <param name="most">Most steps.</param>
    /// <param name="covariance">Receives the numbers' covariance, shape (n, n); null: not wanted.</param>
    public (double[] Numbers, double[] At, CarProblem Problem)? Of(
        IReadOnlyList<DriveWindow> windows, double[]? start, int most, double[,]? covariance = null)
    {
        var problem = CarProblem.Of(windows, known);
        var (at, value) = new CarFit(problem.Likelihood, stop).Solve(start ?? Start(problem), double.PositiveInfinity, most, _ => false);
        if (!double.IsFinite(value))
        {
            return null;
        }

        if (covariance is not null)
        {
            if (CarPosterior.Of(new CarFit(problem.Likelihood, stop), problem.Likelihood, at) is not { } posterior)
            {
                return null;
            }

            var raised = posterior.Raised();
            for (var k = 0; k < Count * Count; k++)
            {
                covariance[k / Count, k % Count] = raised[(k / Count * problem.Likelihood.Count) + (k % Count)];
            }
        }

        return (at[..Count], at, problem);
    }

    private double[] Start(CarProblem problem)
    {
        var likelihood = problem.Likelihood;
        var x = likelihood.Centre.ToArray();
        found.Mean.AsSpan(0, CarParameter.Shared).CopyTo(x);
        foreach (var (h, site) in problem.Sites.Index())
        {
            var (_, at, splines, _) = found.Splines.First(s => s.Site == site);
            found.Mean.AsSpan(at, splines.Count).CopyTo(x.AsSpan(likelihood.HumpAt[h]));
        }

        return x;
    }
}
