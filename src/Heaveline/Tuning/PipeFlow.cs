using System.Numerics;
using Heaveline.Cars;
using Heaveline.Passes;

namespace Heaveline.Tuning;

/// <summary>
/// How the fluid really runs through the line of a side in one pass, against the steady laminar flow (Hagen–Poiseuille) that the pass counts with:
/// when it is turbulent the resistance is larger, and when it swings fast the layer at the wall is thin and the resistance larger too. A check: the
/// pass itself does not hear of it.
/// </summary>
public sealed record PipeFlow
{
    /// <summary>
    /// Reynolds number above which flow in a round pipe can stay turbulent (–): 2040 ± 10, Avila and others, Science 333 (2011) 192, after a review.
    /// </summary>
    public const double Critical = 2040.0;

    /// <summary>How long after the front wheels' first touch the flow is looked at, s. Own choice.</summary>
    public const double Looks = 1.5;

    /// <summary>Speed of the pass, m/s.</summary>
    public required double Speed { get; init; }

    /// <summary>Greatest mean velocity in the pipe, m/s.</summary>
    public required double PeakVelocity { get; init; }

    /// <summary>Reynolds number v·d/ν at that (–).</summary>
    public required double Reynolds { get; init; }

    /// <summary>Part of the first 1.5 s from first touch with a Reynolds number above <see cref="Critical"/> (–).</summary>
    public required double TurbulentShare { get; init; }

    /// <summary>Pressure lost in the pipe at the greatest velocity as the pass counts it, Pa.</summary>
    public required double CountedLoss { get; init; }

    /// <summary>The same by the friction of a smooth pipe at that Reynolds number, Pa; the counted one where the flow stays laminar.</summary>
    public required double SmoothPipeLoss { get; init; }

    /// <summary>What <see cref="SmoothPipeLoss"/> pushes at a front wheel with, N.</summary>
    public required double FrontForce { get; init; }

    /// <summary>How many times the loss is counted too low (–); 1 where the flow stays laminar.</summary>
    public double LossRatio => CountedLoss > 0.0 ? SmoothPipeLoss / CountedLoss : 1.0;

    /// <summary>The flow in a pass; null where the line is no pipe of a known bore full of viscous fluid, or the pass broke off.</summary>
    public static PipeFlow? Of(Pass pass)
    {
        ArgumentNullException.ThrowIfNull(pass);
        if (pass.Outcome != PassOutcome.Completed
            || pass.Model.Car.Interconnection is not FluidLink { Line: { State: LineState.Pipe, Bore: { } bore } } link)
        {
            return null;
        }

        var (d, resistance) = (bore.Si, link.Line.Resistance.Si);
        var viscosity = Viscosity(link.Line, d);
        if (!(viscosity > 0.0))
        {
            return null;
        }

        var area = 0.25 * Math.PI * d * d;
        double Reynolds(double flow) => Math.Abs(flow) / area * d / viscosity;
        var from = (pass.Road.EventStart ?? 0.0) / pass.Speed;
        var (peak, turbulent, looked) = (0.0, 0, 0);
        for (var side = 0; side < 2; side++)
        {
            foreach (var (k, flow) in pass.FlowRate(side).Index())
            {
                peak = Math.Max(peak, Math.Abs(flow));
                if (pass.Time[k] >= from && pass.Time[k] <= from + Looks)
                {
                    looked++;
                    turbulent += Reynolds(flow) > Critical ? 1 : 0;
                }
            }
        }

        var (counted, number) = (resistance * peak, Reynolds(peak));
        // Laminar is Δp = 64/Re·(l/d)·ρ·v²/2: another friction factor at the same velocity changes it in proportion.
        var loss = counted * Math.Max(1.0, Friction(number) * number / 64.0);
        return new PipeFlow
        {
            Speed = pass.Speed,
            PeakVelocity = peak / area,
            Reynolds = number,
            TurbulentShare = looked > 0 ? (double)turbulent / looked : 0.0,
            CountedLoss = counted,
            SmoothPipeLoss = loss,
            FrontForce = loss * link.FrontArea.Si,
        };
    }

    /// <summary>
    /// Darcy's friction factor of steady flow in a smooth round pipe (–): 64/Re up to the critical Reynolds number, above it the greater of that and
    /// Blasius' 0.3164/Re^¼ (1913; within some hundredths up to Re 10⁵). Between 2040 and 4000 the flow changes between both: this is the upper one.
    /// </summary>
    /// <param name="reynolds">Reynolds number, above 0.</param>
    public static double Friction(double reynolds) =>
        reynolds <= Critical ? 64.0 / reynolds : Math.Max(64.0 / reynolds, 0.3164 / Math.Pow(reynolds, 0.25));

    /// <summary>Womersley number (d/2)·√(ω/ν) of a pipe at a frequency (–): below about 1 the flow is that of steady flow at every moment.</summary>
    /// <param name="line">A pipe.</param>
    /// <param name="bore">Its inner diameter, m.</param>
    /// <param name="frequency">Hz.</param>
    public static double Womersley(FluidLine line, double bore, double frequency)
    {
        ArgumentNullException.ThrowIfNull(line);
        return 0.5 * bore * Math.Sqrt(2.0 * Math.PI * frequency / Viscosity(line, bore));
    }

    /// <summary>
    /// What laminar flow that swings makes of a pipe's resistance and inertance, as multiples of 128·μ·l/(π·d⁴) and ρ·l/a: 1 and 4/3 when slow,
    /// growing
    /// without bound and towards 1 when fast. Exact for small motion (Womersley, J. Physiol. 127 (1955) 553): with λ² = −j·α²,
    /// Δp = jω·(ρ·l/a)·q·J₀(λ)/J₂(λ) up to sign.
    /// </summary>
    /// <param name="womersley">α, above 0.</param>
    public static (double Resistance, double Inertance) Swinging(double womersley)
    {
        var alpha = womersley;
        var square = new Complex(0.0, -alpha * alpha);
        // 2·J₁(λ)/(λ·J₀(λ)) by Gauss' continued fraction 2/(2 − λ²/(4 − λ²/(6 − …))), run from its tail: it holds λ² alone.
        var tail = Complex.Zero;
        for (var n = 30 + (int)(3.0 * alpha); n >= 2; n--)
        {
            tail = square / ((2.0 * n) - tail);
        }

        var impedance = Complex.ImaginaryOne / (1.0 - (2.0 / (2.0 - tail)));
        // Of jω·ρl/a; the steady resistance is 8·ω·(ρl/a)/α².
        return (impedance.Real * alpha * alpha / 8.0, impedance.Imaginary);
    }

    // From R/I = 32·ν/d².
    private static double Viscosity(FluidLine line, double bore) => line.Resistance.Si / line.Inertance.Si * bore * bore / 32.0;
}
