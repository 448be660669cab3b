using System.Buffers;
using Heaveline.Numerics;
using Heaveline.Passes.Steps;

namespace Heaveline.Passes;

/// <summary>Runs a group of passes side by side and hands on its samples as they come: nothing is kept.</summary>
internal static class PassFlight<TLane>
    where TLane : unmanaged, ILane<TLane>
{
    /// <summary>Samples handed on at a time: few enough for them to be still in the nearest cache.</summary>
    public const int Outputs = 64;

    /// <summary>Runs from the clock's start to its end, or until no more is wanted.</summary>
    /// <param name="flown">The passes.</param>
    /// <param name="memory">Of the road that the group before has met; null for none.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static void Run(FlownGroup<TLane> flown, RoadMemory? memory, CancellationToken cancellation)
    {
        using var road = new RoadTable<TLane>(flown.Group, flown.Timing, memory);
        Over(flown, road, cancellation);
    }

    private static void Over(FlownGroup<TLane> flown, RoadTable<TLane> road, CancellationToken cancellation)
    {
        using var stepper = flown.Stepper();
        var samples = ArrayPool<TLane>.Shared.Rent(Outputs * flown.Channels);
        try
        {
            foreach (var block in road.Blocks)
            {
                var steps = road.Read(block);
                for (var at = 0; at < block.Outputs; at += Outputs)
                {
                    if (!Alone(flown, stepper, steps, Math.Min(Outputs, block.Outputs - at), samples, cancellation))
                    {
                        return;
                    }
                }
            }
        }
        finally
        {
            ArrayPool<TLane>.Shared.Return(samples);
        }
    }

    /// <summary>
    /// Two groups beside each other where they meet the same road at the same times, one after the other elsewhere: the same bits either way.
    /// </summary>
    /// <param name="first">The passes of one.</param>
    /// <param name="second">Those of the other.</param>
    /// <param name="memory">Of the road that the group before has met; null for none.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static void Run(FlownGroup<TLane> first, FlownGroup<TLane> second, RoadMemory? memory, CancellationToken cancellation)
    {
        using var road = new RoadTable<TLane>(first.Group, first.Timing, memory);
        using var other = new RoadTable<TLane>(second.Group, second.Timing, memory);
        if (road.IsMetBy(other))
        {
            Together(first, second, road, cancellation);
            return;
        }

        Over(first, road, cancellation);
        Over(second, other, cancellation);
    }

    private static void Together(FlownGroup<TLane> first, FlownGroup<TLane> second, RoadTable<TLane> road, CancellationToken cancellation)
    {
        using var one = first.Stepper();
        using var two = second.Stepper();
        var samples = ArrayPool<TLane>.Shared.Rent(Outputs * first.Channels);
        var others = ArrayPool<TLane>.Shared.Rent(Outputs * second.Channels);
        try
        {
            // Whether more is wanted of either.
            var (on, also) = (true, true);
            foreach (var block in road.Blocks)
            {
                if (!on && !also)
                {
                    return;
                }

                var steps = road.Read(block);
                for (var at = 0; at < block.Outputs && (on || also); at += Outputs)
                {
                    var here = Math.Min(Outputs, block.Outputs - at);
                    if (on && also)
                    {
                        var (mine, theirs) = (here * first.Channels, here * second.Channels);
                        one.RunBeside(two, steps, here, samples.AsSpan(0, mine), others.AsSpan(0, theirs), cancellation);
                        on = first.Fold.Fold(samples.AsSpan(0, mine), here);
                        also = second.Fold.Fold(others.AsSpan(0, theirs), here);
                    }
                    else if (on)
                    {
                        on = Alone(first, one, steps, here, samples, cancellation);
                    }
                    else
                    {
                        also = Alone(second, two, steps, here, others, cancellation);
                    }
                }
            }
        }
        finally
        {
            ArrayPool<TLane>.Shared.Return(samples);
            ArrayPool<TLane>.Shared.Return(others);
        }
    }

    private static bool Alone(
        FlownGroup<TLane> flown, BlockStepper<TLane> stepper, RoadSteps<TLane> steps, int outputs, TLane[] samples, CancellationToken cancellation)
    {
        var chunk = samples.AsSpan(0, outputs * flown.Channels);
        stepper.Run(steps, outputs, chunk, cancellation);
        return flown.Fold.Fold(chunk, outputs);
    }
}
