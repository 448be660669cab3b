using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Rides;

/// <summary>
/// A damper table under a Gaussian motion. Its force r·f(r·ṡ) has the mean r·E[f] and the equivalent damping r²·E[f′], both in closed form for
/// straight pieces [Roberts and Spanos, Random Vibration and Statistical Linearization: E[F′] for Gaussian motion, after Kazakov; derived]. Where
/// the ratio r varies with travel the mean over the travel follows, and the equivalent rate by parts, E[∂F/∂s] = E[(s − μ)·F]/σ².
/// </summary>
internal static class RandomDamper
{
    // Scatter put in place of none where a rate is taken by parts, m.
    private const double Least = 1e-8;

    private static readonly double[] NoBreaks = [];

    /// <param name="laws">The car's elements.</param>
    /// <param name="i">Corner.</param>
    /// <param name="travel">Mean travel at the damper's place, m.</param>
    /// <param name="deviation">Its deviation, m.</param>
    /// <param name="speed">Deviation of its rate, m/s.</param>
    public static ElementMean Of(CornerLaws laws, int i, double travel, double deviation, double speed)
    {
        var ratio = laws.DamperRatio;
        if (ratio[1][i] == 0.0 && ratio[2][i] == 0.0)
        {
            var (force, damping) = At(laws, i, ratio[0][i], speed);
            return new(force, 0.0, damping);
        }

        double Ratio(double s) => ratio[0][i] + (s * (ratio[1][i] + (s * ratio[2][i])));
        var scatter = Math.Max(deviation, Least);
        var (mean, equivalent) = Gaussian.Of(
            s => At(laws, i, Ratio(s), speed), travel, scatter, NoBreaks, double.NegativeInfinity, double.PositiveInfinity);
        var (byParts, _) = Gaussian.Of(
            s => ((s - travel) * At(laws, i, Ratio(s), speed).Force, 0.0),
            travel,
            scatter,
            NoBreaks,
            double.NegativeInfinity,
            double.PositiveInfinity);
        return new(mean, byParts / (scatter * scatter), equivalent);
    }

    private static (double Force, double Damping) At(CornerLaws laws, int i, double ratio, double speed)
    {
        var force = laws.DamperConstant[i] + laws.DamperGas[i];
        var slope = laws.DamperSlope[i];
        for (var j = 0; j < laws.DamperHinges.Count; j++)
        {
            var bend = laws.DamperHinges.Bend[j][i];
            var (mean, share) = Gaussian.Max(0.0, ratio * speed, laws.DamperHinges.At[j][i]);
            force += bend * mean;
            slope += bend * share;
        }

        return (ratio * force, ratio * ratio * slope);
    }
}
