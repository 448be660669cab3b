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
    /// <param name="group">The passes.</param>
    /// <param name="timing">The clock that covers all of theirs.</param>
    /// <param name="channels">How much of a sample is recorded.</param>
    /// <param name="fold">Is given the samples.</param>
    /// <param name="memory">Of the road that the group before has met; null for none.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static void Run(
        PassGroup group, PassTiming timing, int channels, ISampleFold<TLane> fold, RoadMemory? memory, CancellationToken cancellation)
    {
        if (group.Requests.Length > TLane.Count)
        {
            throw new ArgumentException($"{group.Requests.Length} passes do not fit in {TLane.Count} lanes.", nameof(group));
        }

        using var road = new RoadTable<TLane>(group, timing, memory);
        using var stepper = Stepper.Of<TLane>(Array.ConvertAll(group.Requests, r => r.Model.Numbers), timing.StepsPerSample, timing.Step, channels);
        var samples = ArrayPool<TLane>.Shared.Rent(Outputs * channels);
        try
        {
            foreach (var block in road.Blocks)
            {
                var steps = road.Read(block);
                for (var at = 0; at < block.Outputs; at += Outputs)
                {
                    var here = Math.Min(Outputs, block.Outputs - at);
                    var chunk = samples.AsSpan(0, here * channels);
                    stepper.Run(steps, here, chunk, cancellation);
                    if (!fold.Fold(chunk, here))
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
}
