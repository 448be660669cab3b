using Heaveline.Numerics;
using Heaveline.Passes;

namespace Heaveline.Tests.Twin;

/// <summary>
/// Steps the equations of motion at a fixed step h: Adams–Bashforth of fourth order on the velocities, with the position update that integrates the
/// same cubic through the last four accelerations twice (Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, III.1 and III.10):
/// v += h(55a₀ − 59a₁ + 37a₂ − 9a₃)/24, x += h·v + h²(323a₀ − 264a₁ + 159a₂ − 38a₃)/360.
/// It starts from rest at trim on a flat road, where the past accelerations are exactly zero.
/// </summary>
/// <param name="c">The cars.</param>
/// <param name="perOutput">Steps from one recorded sample to the next.</param>
/// <param name="h">Step, s, one per lane (lanes may differ).</param>
/// <param name="channels">How much is recorded: one of the lengths that <see cref="Channel"/> names.</param>
internal sealed class PassStepper<TQuad, TLane>(RideConstants<TQuad, TLane> c, int perOutput, TLane h, int channels = Channel.Count)
    where TQuad : struct, IQuad<TQuad, TLane>
    where TLane : struct, ILane<TLane>
{
    // Whoever stops a run waits for so many steps at most, a few milliseconds.
    private const int StepsBetweenLooks = 16_384;

    private readonly RideState<TQuad, TLane> s = new();
    private readonly AdamsUpdate<TQuad, TLane> update = new(h, c.Needs);
    private readonly int samplesBetweenLooks = Math.Max(1, StepsBetweenLooks / perOutput);
    private int steps;
    private int jumped;

    /// <summary>Goes on from where the run stands.</summary>
    /// <param name="road">Road heights and rates for these steps, and the sharp steps of the whole run.</param>
    /// <param name="outputs">Number of recorded samples.</param>
    /// <param name="samples">Receives as many lanes per output as there are channels.</param>
    /// <param name="cancellation">Stops the run.</param>
    public void Run(RoadSteps<TQuad, TLane> road, int outputs, Span<TLane> samples, CancellationToken cancellation = default)
    {
        var at = steps - road.First;
        var jumps = road.Jumps[jumped..];
        for (var k = 0; k < outputs; k++)
        {
            if (k % samplesBetweenLooks == 0)
            {
                cancellation.ThrowIfCancellationRequested();
            }

            for (var n = 0; n < perOutput; n++, at++)
            {
                if ((uint)at < (uint)road.Moving.Length / 2)
                {
                    RideKernel<TQuad, TLane>.Accelerations(c, s, in road.Moving[2 * at], in road.Moving[(2 * at) + 1]);
                }
                else
                {
                    RideKernel<TQuad, TLane>.Accelerations(c, s, at < 0 ? road.Before : road.After, road.Still);
                }

                if (n == 0)
                {
                    Record(c, s, samples.Slice(k * channels, channels));
                }

                while (jumps.Length > 0 && jumps[0].At == at + road.First)
                {
                    Share(c, s, jumps[0], road.Still);
                    jumps = jumps[1..];
                }

                update.Advance(s);
            }
        }

        steps = at + road.First;
        jumped = road.Jumps.Length - jumps.Length;
    }

    // What the tyres' jump gives the wheels on its far side, by its share of this step.
    private static void Share(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s, in RoadJump<TQuad> jump, in TQuad still)
    {
        RideKernel<TQuad, TLane>.TyreForce(c, s, jump.Near, still);
        var near = s.Tyre;
        RideKernel<TQuad, TLane>.TyreForce(c, s, jump.Far, still);
        RideKernel<TQuad, TLane>.AddTyreForce(c, s, jump.Share * (s.Tyre - near));
    }

    private static void Record(RideConstants<TQuad, TLane> c, RideState<TQuad, TLane> s, Span<TLane> sample)
    {
        Set(sample, 0, s.Z, s.Theta, s.Phi, s.U, s.Flow);
        if (sample.Length == Channel.BodyAccelerations)
        {
            sample[Channel.Accelerations] = s.ZDot;
            sample[Channel.Accelerations + Channel.Pitch] = s.ThetaDot;
            sample[Channel.Accelerations + Channel.Roll] = s.PhiDot;
        }
        else if (sample.Length >= Channel.TyreLoads)
        {
            Set(sample, Channel.Accelerations, s.ZDot, s.ThetaDot, s.PhiDot, s.UDot, s.FlowDot);
            Corners(sample, Channel.Tyre, s.Tyre);
        }

        if (sample.Length == Channel.Count)
        {
            Set(sample, Channel.Rates, s.ZRate, s.ThetaRate, s.PhiRate, s.URate, s.FlowRate);
            Corners(sample, Channel.Force, s.Force - c.TrimForce);
        }
    }

    private static void Set(Span<TLane> sample, int from, TLane z, TLane theta, TLane phi, TQuad wheels, TQuad flow)
    {
        sample[from] = z;
        sample[from + 1] = theta;
        sample[from + 2] = phi;
        Corners(sample, from + Channel.Wheel, wheels);
        sample[from + Channel.Flow] = flow.At(0);
        sample[from + Channel.Flow + 1] = flow.At(1);
    }

    private static void Corners(Span<TLane> sample, int from, TQuad values)
    {
        sample[from] = values.At(0);
        sample[from + 1] = values.At(1);
        sample[from + 2] = values.At(2);
        sample[from + 3] = values.At(3);
    }
}
