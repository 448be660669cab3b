using System.Buffers;
using Heaveline.Models;
using Heaveline.Numerics;

namespace Heaveline.Passes;

/// <summary>Runs a group of passes side by side and hands on its samples as they come: nothing is kept.</summary>
internal static class PassFlight<TLane>
    where TLane : struct, ILane<TLane>
{
    /// <summary>Samples handed on at a time: few enough for them to be still in the nearest cache.</summary>
    public const int Outputs = 64;

    /// <summary>Runs from the clock's start to its end, or until no more is wanted.</summary>
    /// <param name="group">The passes.</param>
    /// <param name="timing">The clock that covers all of theirs.</param>
    /// <param name="channels">How much of a sample is recorded.</param>
    /// <param name="fold">Is given the samples.</param>
    /// <param name="cancellation">Stops the run.</param>
    public static void Run(
        PassGroup group, PassTiming timing, int channels, ISampleFold<TLane> fold, CancellationToken cancellation)
    {
        if (group.Requests.Length > TLane.Count)
        {
            throw new ArgumentException($"{group.Requests.Length} passes do not fit in {TLane.Count} lanes.", nameof(group));
        }

        var constants = RidePacking.Pack<Quad<TLane>, TLane>(Array.ConvertAll(group.Requests, r => r.Model.Numbers));
        var road = new LaneRoads<TLane>(group);
        var (first, last) = road.Moving(timing.Start, timing.Step, timing.Samples * timing.StepsPerSample);
        var jumps = road.Jumps(timing.Start, timing.Step);
        var stepper = new PassStepper<Quad<TLane>, TLane>(constants, timing.StepsPerSample, TLane.Of(timing.Step), channels);
        var table = ArrayPool<Quad<TLane>>.Shared.Rent(RoadBlock.TableLength(timing));
        var samples = ArrayPool<TLane>.Shared.Rent(Outputs * channels);
        try
        {
            foreach (var block in RoadBlock.Of(timing, first, last))
            {
                var moving = table.AsSpan(0, 2 * block.Length);
                road.Read(moving, timing.Start, block.First, timing.Step);
                var steps = new RoadSteps<Quad<TLane>, TLane>(block.First, moving, road.After, jumps);
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
            ArrayPool<Quad<TLane>>.Shared.Return(table);
            ArrayPool<TLane>.Shared.Return(samples);
        }
    }
}
