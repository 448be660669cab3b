using System.Buffers;
using Heaveline.Numerics;

namespace Heaveline.Passes;

/// <summary>
/// The road of a group of passes, read stretch by stretch into a borrowed table: one number for all lanes where all cars meet the same road.
/// </summary>
internal sealed class RoadTable<TLane> : IDisposable
    where TLane : unmanaged, ILane<TLane>
{
    private readonly PassTiming timing;
    private readonly LaneRoads<TLane> road;
    private readonly RoadJump<Quad<TLane>>[] jumps;
    private readonly double[] shared;
    private readonly Quad<TLane>[] apart;

    public RoadTable(PassGroup group, PassTiming timing)
    {
        this.timing = timing;
        road = new(group);
        jumps = road.Jumps(timing.Start, timing.Step);
        var (first, last) = road.Moving(timing.Start, timing.Step, timing.Samples * timing.StepsPerSample);
        Blocks = RoadBlock.Of(timing, first, last);
        // Of no use after the run: borrowed, since clearing and collecting it would cost more than the run (measured 2026-11-25).
        var quads = RoadBlock.TableLength(timing);
        shared = road.LanesAlike ? ArrayPool<double>.Shared.Rent(4 * quads) : [];
        apart = road.LanesAlike ? [] : ArrayPool<Quad<TLane>>.Shared.Rent(quads);
    }

    /// <summary>The stretches, one after the other.</summary>
    public IEnumerable<RoadBlock> Blocks { get; }

    /// <summary>Reads one stretch: good until the next is read.</summary>
    public RoadSteps<Quad<TLane>, TLane> Read(RoadBlock block)
    {
        if (road.LanesAlike)
        {
            var table = shared.AsSpan(0, 8 * block.Length);
            road.Read(table, timing.Start, block.First, timing.Step);
            return new(block.First, default, road.After, jumps) { Shared = table };
        }

        var moving = apart.AsSpan(0, 2 * block.Length);
        road.Read(moving, timing.Start, block.First, timing.Step);
        return new(block.First, moving, road.After, jumps);
    }

    public void Dispose()
    {
        if (road.LanesAlike)
        {
            ArrayPool<double>.Shared.Return(shared);
        }
        else
        {
            ArrayPool<Quad<TLane>>.Shared.Return(apart);
        }
    }
}
