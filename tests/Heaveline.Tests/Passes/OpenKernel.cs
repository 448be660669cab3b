using Heaveline.Models;
using Heaveline.Numerics;
using Heaveline.Passes;
using Heaveline.Passes.Steps;

namespace Heaveline.Tests.Passes;

/// <summary>The kernel of the product over one car on a flat road, with its state laid open: it can be put anywhere, at any rate.</summary>
internal sealed unsafe class OpenKernel : IDisposable
{
    private readonly BlockSet<ScalarLane, Apart<ScalarLane>> set;
    private readonly LaneStepper<ScalarLane, ScalarLane, Apart<ScalarLane>, TwoBlocks<ScalarLane>> stepper;

    /// <param name="car">The car.</param>
    /// <param name="rubs">Whether friction acts.</param>
    /// <param name="step">Step, s.</param>
    public OpenKernel(RideNumbers car, bool rubs = true, double step = 1e-6)
    {
        var plan = BlockPlan.Of([car]) with { SidesAlike = false };
        set = new(rubs ? plan : plan with { Needs = plan.Needs & ~Needs.Friction }, 2);
        BlockPacking<ScalarLane, Apart<ScalarLane>>.Write(set, [car]);
        stepper = new(set, 1, step, Channel.Count);
    }

    /// <summary>Holds the wheels where they are and the body from turning: it heaves alone.</summary>
    public void HoldAllButHeave()
    {
        set.Front->Numbers.PerWheel = set.Rear->Numbers.PerWheel = default;
        set.Front->Numbers.AcrossAxle = set.Rear->Numbers.AcrossAxle = default;
        set.Body->PitchPerPitch = set.Body->PitchPerRoll = set.Body->RollPerRoll = default;
    }

    /// <summary>What the kernel makes of places and rates about trim, one sample.</summary>
    /// <param name="place">z, θ, φ, u of the wheels, q of the lines.</param>
    /// <param name="rate">Their rates.</param>
    public double[] At(ReadOnlySpan<double> place, ReadOnlySpan<double> rate)
    {
        Put(place, rate);
        return Step();
    }

    public void Put(ReadOnlySpan<double> place, ReadOnlySpan<double> rate)
    {
        var front = &set.Front->State;
        var rear = &set.Rear->State;
        var body = set.Body;
        var link = set.Link;
        (body->Z, body->Theta, body->Phi) = (new(place[0]), new(place[1]), new(place[2]));
        (body->ZRate, body->ThetaRate, body->PhiRate) = (new(rate[0]), new(rate[1]), new(rate[2]));
        (front->UL, front->UR, rear->UL, rear->UR) = (new(place[3]), new(place[4]), new(place[5]), new(place[6]));
        (front->WL, front->WR, rear->WL, rear->WR) = (new(rate[3]), new(rate[4]), new(rate[5]), new(rate[6]));
        (link->FlowL, link->FlowR) = (new(place[7]), new(place[8]));
        (link->FlowRateL, link->FlowRateR) = (new(rate[7]), new(rate[8]));
    }

    /// <summary>Records where the car is and what acts there, and moves on by a step.</summary>
    public double[] Step()
    {
        Span<ScalarLane> sample = stackalloc ScalarLane[Channel.Count];
        stepper.Run(new(0, default, default), 1, sample);
        var values = new double[Channel.Count];
        for (var k = 0; k < values.Length; k++)
        {
            values[k] = sample[k].Value;
        }

        return values;
    }

    public void Dispose() => stepper.Dispose();
}
