using System.Buffers;
using Heaveline.Numerics;
using Heaveline.Roads;

namespace Heaveline.Passes;

/// <summary>
/// The road of a group of passes, read stretch by stretch into a borrowed table: one number for all lanes where all cars meet the same road.
/// </summary>
internal sealed class RoadTable<TLane> : IDisposable
    where TLane : unmanaged, ILane<TLane>
{
    // Heights and rates of four wheels.
    private const int PerStep = 8;

    private readonly PassTiming timing;
    private readonly LaneRoads<TLane> road;
    private readonly RoadMemory? memory;
    private readonly (Profile Profile, double Behind, double Speed)[] tracks;
    private readonly RoadJump<TLane>[] jumps;
    private readonly double[] shared;
    private readonly Quad<TLane>[] apart;
    private readonly (int First, int Last) moving;

    /// <param name="group">The passes.</param>
    /// <param name="timing">The clock that covers all of theirs.</param>
    /// <param name="memory">Keeps what is read for a group that meets the same; null: no other does.</param>
    public RoadTable(PassGroup group, PassTiming timing, RoadMemory? memory = null)
    {
        this.timing = timing;
        road = new(group);
        this.memory = road.LanesAlike ? memory : null;
        tracks = this.memory is null ? [] : road.First;
        jumps = road.Jumps(timing.Start, timing.Step);
        moving = road.Moving(timing.Start, timing.Step, timing.Samples * timing.StepsPerSample);
        Blocks = RoadBlock.Of(timing, moving.First, moving.Last);
        // Of no use after the run: borrowed, since clearing and collecting it would cost more than the run (measured 2026-11-25).
        var quads = RoadBlock.TableLength(timing);
        shared = road.LanesAlike && this.memory is null ? ArrayPool<double>.Shared.Rent(4 * quads) : [];
        apart = road.LanesAlike ? [] : ArrayPool<Quad<TLane>>.Shared.Rent(quads);
    }

    /// <summary>The stretches, one after the other.</summary>
    public IEnumerable<RoadBlock> Blocks { get; }

    /// <summary>Whether all cars of another group meet what all of this one meet, at the same times, and no sharp step.</summary>
    public bool IsMetBy(RoadTable<TLane> other) =>
        road.LanesAlike && other.road.LanesAlike && timing == other.timing && moving == other.moving && jumps.Length == 0 && other.jumps.Length == 0
        && road.First.AsSpan().SequenceEqual(other.road.First);

    /// <summary>Reads one stretch: good until the next is read.</summary>
    public RoadSteps<TLane> Read(RoadBlock block)
    {
        if (memory is not null)
        {
            var known = memory.Table(
                tracks,
                timing.Start,
                timing.Step,
                block,
                PerStep,
                (table, length) => road.Read(table.AsSpan(0, length), timing.Start, block.First, timing.Step));
            return new(block.First, default, road.After, jumps) { Shared = known };
        }

        if (road.LanesAlike)
        {
            var table = shared.AsSpan(0, PerStep * block.Length);
            road.Read(table, timing.Start, block.First, timing.Step);
            return new(block.First, default, road.After, jumps) { Shared = table };
        }

        var moving = apart.AsSpan(0, 2 * block.Length);
        road.Read(moving, timing.Start, block.First, timing.Step);
        return new(block.First, moving, road.After, jumps);
    }

    public void Dispose()
    {
        if (shared.Length > 0)
        {
            ArrayPool<double>.Shared.Return(shared);
        }
        else if (!road.LanesAlike)
        {
            ArrayPool<Quad<TLane>>.Shared.Return(apart);
        }
    }
}
