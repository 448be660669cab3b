using Heaveline.Models;
using Heaveline.Modes;
using Heaveline.Quantities;
using Heaveline.Tuning;

namespace Heaveline.Rules;

/// <summary>
/// The closed forms for the best rear/front frequency ratio of one car: linear, a dynamic index near 1, each about one window of time.
/// </summary>
public sealed record RatioForms
{
    /// <summary>When the ends fall into step.</summary>
    public required Coincidence Ends { get; init; }

    /// <summary>Mean frequency of the axles √(f_f·f_r), Hz, kept while the ratio is turned.</summary>
    public required double MeanFrequency { get; init; }

    /// <summary>Mean damped frequency 1/√(T_f·T_r), Hz.</summary>
    public required double DampedFrequency { get; init; }

    /// <summary>
    /// Frequency ratio over the ratio of the damped periods (–): 1 where both ends are damped alike; kept while the ratio is turned.
    /// </summary>
    public required double RatioPerPeriods { get; init; }

    /// <summary>The closed forms of a car.</summary>
    /// <exception cref="RefusedValueException">An end is damped so heavily that it does not swing.</exception>
    public static RatioForms Of(RideModel model)
    {
        var ends = Coincidence.Of(model);
        var tuning = RideTuning.Of(model);
        return ends is { FrontPeriod: { } front, RearPeriod: { } rear }
            ? new RatioForms
            {
                Ends = ends,
                MeanFrequency = tuning.MeanFrequency,
                DampedFrequency = 1.0 / Math.Sqrt(front * rear),
                RatioPerPeriods = tuning.Ratio * rear / front,
            }
            : throw new RefusedValueException(
                "damping", ends.WhyNot ?? "too heavy", "below critical", "Without a period there is no falling into step.");
    }

    /// <summary>1 + 0.6·L·f/V (–): least pitch later than 0.8 s after the rear has left.</summary>
    /// <param name="speed">V, m/s.</param>
    public double Late(double speed) => RatioRule.LatePitch(Ends.Wheelbase, MeanFrequency, speed);

    /// <summary>Frequency ratio at which the ends fall into step after n cycles (–): least pitch in the first second at n from 0.6 to 0.8.</summary>
    /// <param name="speed">V, m/s.</param>
    /// <param name="cycles">n (–).</param>
    public double InStep(double speed, double cycles) => RatioPerPeriods * RatioRule.InStep(Ends.Wheelbase, DampedFrequency, speed, cycles);
}
