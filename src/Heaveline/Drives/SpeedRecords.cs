using Heaveline.Drives.Identification;
using Heaveline.Numerics;

namespace Heaveline.Drives;

/// <summary>
/// Speeds by the record of the windows that a car was fitted to beside those that the delay between its axles tells, with all that the windows share.
/// </summary>
/// <remarks>
/// The records lie off the axles' speeds by one scale s and by errors of their own, of variance f/q each; q is what the fit took them for, f the
/// least share of it by which they scatter no more than that [Paule and Mandel, Journal of Research of the National Bureau of Standards 87 (1982)
/// 377]. The fit's mean μ and covariance Σ hold the record's say, so that the axles alone tell with precision Σ⁻¹ − Q; then s by generalized least
/// squares. A hump's length and the speeds over it go together: windows taken for independent would make s surer than it is.
/// </remarks>
internal sealed class SpeedRecords
{
    private const int Shares = 9;

    private readonly int count;
    private readonly double[] precision;
    private readonly double[] covariance;
    private readonly double[] logs;

    /// <param name="car">The car.</param>
    public SpeedRecords(CarFromDrive car)
    {
        (precision, covariance, logs) = ([.. car.SpeedPrecision], [.. car.SpeedCovariance], [.. car.SpeedLog]);
        count = precision.Length;
    }

    /// <summary>How many windows tell a speed beside the record's.</summary>
    /// <param name="own">The share of a speed's variance from which on the record decides it.</param>
    public int Told(double own) => Enumerable.Range(0, count).Count(i => covariance[i * (count + 1)] * precision[i] < own);

    /// <summary>ln of the record over the axles' speeds and its variance; null where they do not tell it.</summary>
    public (double Log, double Variance)? Scale()
    {
        if (PositiveMatrix.Of(covariance, count) is not { } matrix)
        {
            return null;
        }

        var told = matrix.Inverse();
        double[] pulled = [.. matrix.Solve(logs).Select(t => -t)];
        (double Log, double Variance)? found = null;
        for (var k = Shares - 1; k >= 0; k--)
        {
            if (At(Math.Pow(2.0, -k), told, pulled) is not { } by)
            {
                continue;
            }

            found = (by.Log, by.Variance * Math.Max(1.0, by.Apart));
            if (by.Apart <= 1.0)
            {
                break;
            }
        }

        return found;
    }

    // With a share of the records' variance: their differences have the inverse covariance Q/f − Q/f·M⁻¹·Q/f, M = Σ⁻¹ + (1/f − 1)·Q.
    private (double Log, double Variance, double Apart)? At(double share, double[] told, double[] pulled)
    {
        double[] sum = [.. told], q = [.. precision.Select(p => p / share)];
        for (var i = 0; i < count; i++)
        {
            sum[i * (count + 1)] += q[i] - precision[i];
        }

        if (PositiveMatrix.Of(sum, count) is not { } matrix)
        {
            return null;
        }

        var (inner, weights) = (matrix.Inverse(), new double[count * count]);
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < count; j++)
            {
                weights[(i * count) + j] = (i == j ? q[i] : 0.0) - (q[i] * inner[(i * count) + j] * q[j]);
            }
        }

        double[] weighed = [.. matrix.Solve(pulled).Zip(q, (x, by) => x * by)];
        var information = weights.Sum();
        if (!(information > 0.0) || PositiveMatrix.Of(weights, count) is not { } differences)
        {
            return null;
        }

        var log = weighed.Sum() / information;
        var apart = (Dot.Of(weighed, differences.Solve(weighed)) - (log * log * information)) / (count - 1);
        return (log, 1.0 / information, apart);
    }
}
