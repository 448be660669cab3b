using Heaveline.Cars;
using Heaveline.Elements;
using Heaveline.Models;

namespace Heaveline.Passes;

/// <summary>
/// The longest step that a car allows. The fourth-order Adams–Bashforth formula is stable on the negative real axis down to λh = −0.3 (Hairer,
/// Wanner, Solving Ordinary Differential Equations II, V.1), and beside the imaginary one to |λh| = 0.43 (its root locus). A fifth and more is left
/// for what the bounds on λ leave out, and so that what a kink sets ringing dies away within a few steps.
/// </summary>
internal static class StepChoice
{
    private const double Real = 0.24;
    private const double Oscillating = 0.34;

    // So many elements are looked at without room of their own.
    private const int Usual = 32;

    // No wheel with its hub weighs less, kg: below this it is the mass that is told, whatever acts on it.
    private const double Lightest = 1.0;

    public static StepLimit Of(RideModel model, double limit) => Of(model.Numbers, limit);

    public static StepLimit Of(RideNumbers n, double limit)
    {
        var elements = n.Elements;
        var longest = new StepLimit(limit, StepCause.None, AxleEnd.Front);
        var stable = double.PositiveInfinity;
        var all = elements.Each();
        Span<(double Rate, double Damping)> slopes = all.Length <= Usual ? stackalloc (double, double)[all.Length] : new (double, double)[all.Length];
        for (var k = 0; k < slopes.Length; k++)
        {
            // Laws that two have in common are asked once.
            var (e, before) = (all[k], k > 0 ? all[k - 1] : null);
            slopes[k] = before is not null && before.HasLawsOf(e) ? slopes[k - 1] : (e.Stiffest, e.MostDamped);
        }

        for (var i = 0; i < 4; i++)
        {
            var perMass = n.PerWheel[i] + Math.Abs(n.AcrossAxle[i]) + (1.0 / n.Body.Mass);
            var (damping, common) = (new Greatest(StepCause.TyreDamping, n.TyreDamping[i]), 0.0);
            var stiffness = new Greatest(StepCause.TyreRate, n.TyreRate[i]);
            for (var k = 0; k < slopes.Length; k++)
            {
                var element = all[k];
                var (stiffest, mostDamped) = slopes[k];
                var felt = element.FeltAt(i);
                stiffness.Add(element.Cause, felt * stiffest);
                if (element.Joins)
                {
                    common += felt * mostDamped;
                }
                else
                {
                    damping.Add(element.Cause, felt * mostDamped);
                }

                if (element.Slider is { } slider && felt > 0.0)
                {
                    Shorten(slider.LongestStep, element.Cause, false, i, isStability: false);
                }
            }

            // A common damper works at four wheels at once, and the body gives way to all of them.
            common *= perMass + (3.0 / n.Body.Mass);
            var light = 1.0 / perMass < Lightest;
            var own = damping.Sum * perMass;
            Shorten(Real / Math.Max(own + common, 1e-9), common > own ? StepCause.Interconnection : damping.Cause, light, i);
            Shorten(Oscillating / Math.Sqrt(stiffness.Sum * perMass), stiffness.Cause, light, i);
        }

        if (elements.Line is { } line)
        {
            var ends = elements.Accumulators[0].Stiffest + elements.Accumulators[2].Stiffest;
            if (line.Resists)
            {
                Shorten(Real * line.Resistance / ends, StepCause.Interconnection, false, 0);
                return longest with { Stable = stable };
            }

            Shorten(Oscillating / Math.Sqrt(ends / line.Inertance), StepCause.Interconnection, false, 0);
            if (line.Resistance > 0.0)
            {
                Shorten(Real * line.Inertance / line.Resistance, StepCause.Interconnection, false, 0);
            }
        }

        return longest with { Stable = stable };

        void Shorten(double step, StepCause cause, bool light, int corner, bool isStability = true)
        {
            stable = isStability ? Math.Min(stable, step) : stable;
            if (step < longest.Step)
            {
                longest = new StepLimit(step, light ? StepCause.UnsprungMass : cause, corner < 2 ? AxleEnd.Front : AxleEnd.Rear);
            }
        }
    }

    // A sum and what adds most to it.
    private struct Greatest(StepCause cause, double value)
    {
        private double most = value;

        public StepCause Cause { get; private set; } = cause;

        public double Sum { get; private set; } = value;

        public void Add(StepCause cause, double value)
        {
            Sum += value;
            if (value > most)
            {
                (most, Cause) = (value, cause);
            }
        }
    }
}
