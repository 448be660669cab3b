using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes.Steps;

/// <summary>The stepper that suits some cars: with one number for both sides of an axle where they are alike.</summary>
internal static class Stepper
{
    /// <summary>As many cars as a lane holds, or fewer.</summary>
    /// <param name="cars">The cars.</param>
    /// <param name="perOutput">Steps from one recorded sample to the next.</param>
    /// <param name="step">Step, s.</param>
    /// <param name="channels">How much is recorded: one of the lengths that <see cref="Channel"/> names.</param>
    public static BlockStepper<T> Of<T>(ReadOnlySpan<RideNumbers> cars, int perOutput, double step, int channels = Channel.Count)
        where T : unmanaged, ILane<T>
    {
        var plan = BlockPlan.Of(cars);
        return plan.SidesAlike
            ? Of<T, Alike<T>>(plan, cars, perOutput, step, channels)
            : Of<T, Apart<T>>(plan, cars, perOutput, step, channels);
    }

    /// <summary>One car, its front and rear axle side by side.</summary>
    /// <param name="car">The car.</param>
    /// <param name="perOutput">Steps from one recorded sample to the next.</param>
    /// <param name="step">Step, s.</param>
    public static BlockStepper<ScalarLane> Of(RideNumbers car, int perOutput, double step)
    {
        var plan = BlockPlan.Of([car]);
        return plan.SidesAlike
            ? Of<Alike<Lane128>>(plan, car, perOutput, step)
            : Of<Apart<Lane128>>(plan, car, perOutput, step);
    }

    private static LaneStepper<T, T, TSides, TwoBlocks<T>> Of<T, TSides>(
        BlockPlan plan, ReadOnlySpan<RideNumbers> cars, int perOutput, double step, int channels)
        where T : unmanaged, ILane<T>
        where TSides : unmanaged, ISides<TSides, T>
    {
        var set = new BlockSet<T, TSides>(plan, 2);
        BlockPacking<T, TSides>.Write(set, cars);
        return new(set, perOutput, step, channels);
    }

    private static LaneStepper<Lane128, ScalarLane, TSides, OneBlock> Of<TSides>(
        BlockPlan plan, RideNumbers car, int perOutput, double step)
        where TSides : unmanaged, ISides<TSides, Lane128>
    {
        var set = new BlockSet<Lane128, TSides>(plan, 1);
        BlockPacking<Lane128, TSides>.Write(set, car);
        return new(set, perOutput, step, Channel.Count);
    }
}
