using Heaveline.Modes;
using Heaveline.Quantities;

namespace Heaveline.Rules;

/// <summary>The best rear/front frequency ratio at one speed: as computed, and by two closed forms.</summary>
public sealed record RatioRule
{
    /// <summary>
    /// Coefficient of <see cref="LatePitch(double, double, double)"/>: found by running half cars over a short
    /// bump, read off a grid; no published source.
    /// </summary>
    public const double LateCoefficient = 0.6;

    /// <summary>Speed, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>The best ratio of the map; null where nothing was computed.</summary>
    public required BestValue? Computed { get; init; }

    /// <summary>1 + 0.6·L·f/V (–): least pitch later than 0.8 s after the rear has left, for a dynamic index near 1.</summary>
    public required double Late { get; init; }

    /// <summary>Ratio at which the ends fall into step after 0.7 cycles (–): least pitch in the first second, for a dynamic index near 1.</summary>
    public required double Step { get; init; }

    /// <summary>The same after 0.8 and 0.6 cycles: the band.</summary>
    public required (double Least, double Most) StepBand { get; init; }

    /// <summary>The closed form for late pitch.</summary>
    /// <param name="wheelbase">L, m.</param>
    /// <param name="frequency">Mean frequency f, Hz.</param>
    /// <param name="speed">V, m/s.</param>
    public static double LatePitch(double wheelbase, double frequency, double speed) => 1.0 + (LateCoefficient * wheelbase * frequency / speed);

    /// <summary>
    /// Ratio of the damped periods r = T_f/T_r at which n·T_f = L/V + n·T_r about a kept mean: with T_f = √r/f
    /// and T_r = 1/(f√r), √r − 1/√r = L·f/(n·V).
    /// </summary>
    /// <param name="wheelbase">L, m.</param>
    /// <param name="frequency">Mean damped frequency f = 1/√(T_f·T_r), Hz.</param>
    /// <param name="speed">V, m/s.</param>
    /// <param name="cycles">n (–).</param>
    public static double InStep(double wheelbase, double frequency, double speed, double cycles)
    {
        var a = wheelbase * frequency / (cycles * speed);
        var root = 0.5 * (a + Math.Sqrt((a * a) + 4.0));
        return root * root;
    }

    /// <summary>All speeds of a map over the frequency ratio.</summary>
    /// <exception cref="RefusedValueException">An end is damped so heavily that it does not swing.</exception>
    public static IReadOnlyList<RatioRule> Of(RuleMap map)
    {
        ArgumentNullException.ThrowIfNull(map);
        var forms = RatioForms.Of(map.Model);
        var best = map.Best;
        return [.. map.Speeds.Select((v, i) => new RatioRule
        {
            Speed = v,
            Computed = best[i],
            Late = forms.Late(v),
            Step = forms.InStep(v, Coincidence.SuitedCycles),
            StepBand = (forms.InStep(v, Coincidence.MostCycles), forms.InStep(v, Coincidence.FewestCycles)),
        })];
    }
}
